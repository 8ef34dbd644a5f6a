#pragma once

#include "core/quantities/date.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// A colour as the facility names it and as its own sample looks. Makers' colours differ, and print
/// and screens show them falsely: the name counts, the sample helps.
struct ColourSample {
    std::string name;
    std::string rgb; ///< "#rrggbb" in small letters; empty: no sample taken

    friend bool operator==(const ColourSample&, const ColourSample&) = default;
};

/// How a product is read, in the facility's words after the maker's instructions for use. It helps
/// whoever reads and decides nothing.
struct ReadingDirections {
    std::string text;
    std::string document;         ///< the maker's, as it is called
    std::string revision;         ///< of the document
    std::optional<Date> dated;    ///< of the document
    std::optional<Date> reviewBy; ///< by when the facility looks again for a newer one
    std::string storage;
    std::optional<bool> isStable; ///< whether the answer stays as it is afterwards

    // Of a moving front: where its strip ends and its accept zone begins, from where the front
    // starts, in tenths of a millimetre. 0 < boundary < strip.
    std::optional<std::int64_t> stripTenthsMm;
    std::optional<std::int64_t> boundaryTenthsMm;

    // Of what changes its colour.
    std::optional<ColourSample> startColour;
    std::optional<ColourSample> endColour;

    friend bool operator==(const ReadingDirections&, const ReadingDirections&) = default;
};

} // namespace loadwarden
