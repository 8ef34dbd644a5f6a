#pragma once

#include "core/indicators/product.h"

#include <QString>
#include <QStringList>

namespace loadwarden::ui {

// What instructions for use say of a product, in words for a label or a row.

[[nodiscard]] QString responseText(Response response);
[[nodiscard]] QString speciesText(Species species);
[[nodiscard]] QString reachText(ControlReach reach);
[[nodiscard]] QString methodsText(const MethodSet& methods);

/// "Chemical indicator, type 5, steam"
[[nodiscard]] QString productText(const IndicatorProduct& product);

/// Everything of it, a line each, for who signs it.
[[nodiscard]] QStringList linesOf(const IndicatorProduct& product);

} // namespace loadwarden::ui
