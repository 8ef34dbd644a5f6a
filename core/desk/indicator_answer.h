#pragma once

#include "core/indicators/chemical.h"
#include "core/indicators/directions.h"
#include "core/quantities/date.h"
#include "core/release/policy.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// "Is this indicator acceptable?": one reading, answered by the rules, without a load.

namespace loadwarden {

/// A lot of a chemical indicator product as it stands in the registers.
struct ReadableLot {
    std::string lot;  ///< pl-
    std::string name; ///< of its product
    IndicatorProduct product;
    IndicatorLot number;
    std::optional<ReadingDirections> directions; ///< nullopt: none are registered
};

/// The lots that bear a maker's number now, or have that id; of products of any kind. Throws
/// StoreError.
[[nodiscard]] std::vector<ReadableLot> readableLots(ReadSnapshot& snapshot,
                                                    std::string_view number);
/// All of them.
[[nodiscard]] std::vector<ReadableLot> readableLots(ReadSnapshot& snapshot);

/// Where a moving front stands, in tenths of a millimetre from where it starts; nullopt where that
/// is not on the strip, or the directions do not say where strip and accept zone are. It need only
/// have passed the boundary: that it fills the zone is not asked.
[[nodiscard]] std::optional<Seen> seenAt(const ReadingDirections& directions,
                                         std::int64_t tenthsMm);

enum class IndicatorUsedAt : std::uint8_t { pcd, inside, outside };

struct IndicatorAnswer {
    ChemicalState state = ChemicalState::unread; ///< never unread once answered
    Cause cause = Cause::none;                   ///< of invalid: why it does not count
};

/// What a reading says of an indicator of a lot, used on a day in a cycle of a method at a place
/// (nullopt: any), read in time.
[[nodiscard]] IndicatorAnswer answerIndicator(const ReadableLot& lot, Seen seen, Method method,
                                              std::optional<IndicatorUsedAt> place,
                                              const Policy& policy, Date day);

} // namespace loadwarden
