#pragma once

#include "core/indicators/front.h"
#include "core/indicators/product.h"
#include "core/indicators/sheet_pattern.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// A check in which somebody reads indicators that are drawn for them. It trains and is evidence of
// nothing: it depends on products and a seed alone, and is the same on every machine.

namespace loadwarden {

/// A registered product as far as its indicators can be drawn.
struct CheckProduct {
    std::string id;
    std::string name;
    int type = 0; ///< ISO 11140-1; 0: unknown
    Response response = Response::colour;
    std::optional<ReadingDirections> directions;

    friend bool operator==(const CheckProduct&, const CheckProduct&) = default;
};

/// An indicator to read. Which of the last four tells how it looks follows from the response; the
/// others stay as they are here.
struct Drawn {
    std::string product; ///< id
    Response response = Response::colour;
    Seen truth = Seen::unclear; ///< never unclear once drawn
    int front = 0;              ///< thousandths of the strip
    int boundary = 0;           ///< the same
    int changed = 0;            ///< thousandths of the patch that have their end colour
    SheetPattern pattern = SheetPattern::unclear;

    friend bool operator==(const Drawn&, const Drawn&) = default;
};

inline constexpr std::size_t drawnInCheck = 20;

/// How far a front is from the boundary, in thousandths of the strip, that is near it. What is
/// nearer than the least, and not on the boundary to the thousandth, could be argued about and is
/// never drawn. Common practice, no source.
inline constexpr int nearestFront = 2 * readingTolerance;
inline constexpr int nearFront = 6 * readingTolerance;

/// A patch that has changed in part has so many thousandths at least, and at most, so that nobody
/// takes it for one that has not changed, or has to its end.
inline constexpr int leastChanged = 250;
inline constexpr int mostChanged = 750;

/// Whether indicators of a product can be drawn so that nobody can argue about them: no vial, and
/// room for a front on either side of its boundary.
[[nodiscard]] bool canBeDrawn(const CheckProduct& product);

/// Twenty indicators of the products that can be drawn, each product as often as any other, or once
/// more; of more than twenty products some. Empty where there is none. The order of the products
/// does not matter. What can be seen on a kind of product comes in turn, the hard before the plain.
[[nodiscard]] std::vector<Drawn> drawCheck(std::vector<CheckProduct> products, std::uint64_t seed);

} // namespace loadwarden
