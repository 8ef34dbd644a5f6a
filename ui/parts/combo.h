#pragma once

#include <QComboBox>

namespace loadwarden::ui {

/// A box to choose from that is as wide as its place: what is long is cut in it, not let out of the
/// page, and its list shows it whole.
[[nodiscard]] QComboBox* makeCombo(const QStringList& entries = {});

} // namespace loadwarden::ui
