#pragma once

#include "core/acts/fold/folding.h"
#include "core/indicators/indicator.h"

#include <string>
#include <string_view>

namespace loadwarden {

/// A name for a product as it was when an indicator was read: the id, `@` and the seq of the
/// revision that is bound; the id alone where it is in no register.
[[nodiscard]] std::string boundProduct(Folding& folding, std::string_view product,
                                       std::int64_t firstRead);

/// An indicator with all that was said of it, whatever load that was said to be about.
[[nodiscard]] ChemicalIndicator foldChemical(Folding& folding, const PlacedIndicator& placed,
                                             std::string_view cycle, bool own);

[[nodiscard]] Vial foldVial(Folding& folding, const PlacedIndicator& placed, std::string_view cycle,
                            bool own);

/// A control; its product, lot and load are ids.
[[nodiscard]] Control foldControl(Folding& folding, std::string_view id, bool own);

} // namespace loadwarden
