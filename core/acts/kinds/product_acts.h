#pragma once

#include "core/acts/kinds/values.h"
#include "core/indicators/directions.h"
#include "core/quantities/date.h"

#include <cstdint>
#include <optional>
#include <string>

// Products and lots, what is known of them beside what is decided by (ACTS.md, 2).

namespace loadwarden {

/// How a product is read; the newest counts.
struct DirectionsRecorded {
    ReadingDirections directions;
};

/// What the maker of a lot of biological indicators certifies.
struct LotCertificate {
    std::string document;
    std::int64_t population = 0; ///< N0, spores of one indicator
    TypedNumber dMinutes;        ///< D value at `celsius`
    TypedNumber celsius;
    std::optional<TypedNumber> zKelvin;
};

/// What became of a lot; the newest counts.
struct LotDescribed {
    std::optional<Date> received;
    std::optional<Date> opened;
    std::optional<Date> usedUp;
    std::optional<LotCertificate> certificate;
};

/// A lot that its maker recalls, or that the facility takes out: no indicator of it counts, also
/// where it was read before.
struct LotRecalled {
    std::string why;
};

} // namespace loadwarden
