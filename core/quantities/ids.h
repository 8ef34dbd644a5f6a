#pragma once

#include <compare>
#include <cstddef>
#include <functional>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace loadwarden {

/// A name of one kind of thing; ids of different kinds do not mix. Never empty: where there may be
/// none, use std::optional. What it is made of is not asked (lengths are the reader's matter).
template <class Tag>
class Id {
public:
    /// Throws std::invalid_argument when the text is empty.
    static Id fromString(std::string text)
    {
        if (text.empty()) {
            throw std::invalid_argument("an id must not be empty");
        }
        return Id(std::move(text));
    }

    static std::optional<Id> tryFromString(std::string_view text)
    {
        if (text.empty()) {
            return std::nullopt;
        }
        return Id(std::string(text));
    }

    const std::string& str() const noexcept { return text_; }

    friend auto operator<=>(const Id&, const Id&) = default;

private:
    explicit Id(std::string text) noexcept : text_(std::move(text)) {}

    std::string text_;
};

using LoadId = Id<struct LoadTag>;
using SterilizerId = Id<struct SterilizerTag>;
using PersonId = Id<struct PersonTag>;
using LotNumber = Id<struct LotNumberTag>; ///< lot control number of a load
using ItemLabel = Id<struct ItemLabelTag>; ///< the label of one packed item
using ProductId = Id<struct ProductTag>;
using ProductLot = Id<struct ProductLotTag>; ///< a maker's lot of an indicator or a pack
using PackagingId = Id<struct PackagingTag>;
using PcdId = Id<struct PcdTag>;
using VialId = Id<struct VialTag>;
using ControlId = Id<struct ControlTag>;
using IncubatorId = Id<struct IncubatorTag>;

} // namespace loadwarden

template <class Tag>
struct std::hash<loadwarden::Id<Tag>> {
    std::size_t operator()(const loadwarden::Id<Tag>& id) const noexcept
    {
        return std::hash<std::string>{}(id.str());
    }
};
