#pragma once

#include "core/desk/records.h"
#include "ui/parts/glyph_view.h"

#include <QString>

namespace loadwarden::ui {

/// The mark beside the words of signedText().
struct SignedMark {
    Glyph glyph;
    ToneOf tone;
};

/// What it was run for: "Load", "Leak test", "Imported".
[[nodiscard]] QString whatText(const RecordRow& row);

/// "Release", "Release, more since", "Not signed", "Not ended".
[[nodiscard]] QString signedText(const RecordRow& row);

/// A mark only for a verdict; what is not signed has a dot.
[[nodiscard]] SignedMark signedMark(const RecordRow& row);

} // namespace loadwarden::ui
