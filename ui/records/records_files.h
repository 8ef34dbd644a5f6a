#pragma once

#include <QString>

namespace loadwarden::ui {

class DeskLink;

/// Where somebody would look for a file of this journal: in the user's documents, named after the
/// journal, `what` (may be empty) and the facility's day.
[[nodiscard]] QString suggestedFile(const DeskLink& desk, const QString& what,
                                    const QString& suffix);

} // namespace loadwarden::ui
