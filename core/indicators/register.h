#pragma once

#include "core/indicators/indicator.h"
#include "core/indicators/product.h"

#include <vector>

namespace loadwarden {

/// The products, lots and incubators that the evidence's indicators point into.
struct IndicatorRegister {
    std::vector<IndicatorProduct> products;
    std::vector<IndicatorLot> lots;
    std::vector<Incubator> incubators;
    std::vector<Control> controls;
    /// The controls by product, lot and incubator, as indices. Set by assemble.
    std::vector<std::int32_t> controlOrder;

    /// The linked product, or null.
    [[nodiscard]] const IndicatorProduct* productOf(ProductLink link) const
    {
        return link.product < 0 ? nullptr : &products[static_cast<std::size_t>(link.product)];
    }
    /// The linked lot, or null.
    [[nodiscard]] const IndicatorLot* lotOf(ProductLink link) const
    {
        return link.lot < 0 ? nullptr : &lots[static_cast<std::size_t>(link.lot)];
    }
};

} // namespace loadwarden
