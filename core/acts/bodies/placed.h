#pragma once

#include "core/acts/bodies/io.h"

namespace loadwarden::body_format {

template <class Io>
void members(Io& io, Ref<Io, PlacedIndicator> indicator)
{
    io.must("id", indicator.id, IdOf{});
    io.may("product", indicator.product, IdOf{"pr"});
    io.may("lot", indicator.lot, IdOf{"pl"});
    io.may("place", indicator.place, aName);
}

/// Whether all are chemical indicators ("ci") or vials ("bv").
[[nodiscard]] inline bool areAll(std::string_view prefix, const std::vector<PlacedIndicator>& list)
{
    return std::ranges::all_of(
        list, [prefix](const PlacedIndicator& each) { return each.id.starts_with(prefix); });
}

} // namespace loadwarden::body_format
