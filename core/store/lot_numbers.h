#pragma once

#include "core/quantities/date.h"
#include "core/quantities/instant.h"
#include "core/quantities/zone.h"
#include "core/store/write_transaction.h"

#include <cstdint>
#include <string>

namespace loadwarden {

/// A lot control number, given for one cycle and never again: common practice, no source.
struct LotReservation {
    std::string sterilizer;    ///< its short name on labels, ASCII letters and digits
    Date day;                  ///< local date
    std::int64_t sequence = 0; ///< of that sterilizer on that day, from 1; may have gaps
};

/// As it stands on labels: "3-2031-063-07" is the 7th of sterilizer 3 on the 63rd day of 2031.
[[nodiscard]] std::string lotNumberText(const LotReservation& lot);

/// Gives the next number; given for good when the transaction is committed. Throws
/// StoreFault::misuse for a name that cannot stand on a label.
[[nodiscard]] LotReservation reserveLot(WriteTransaction& transaction,
                                        const std::string& sterilizer, Date day);

/// For a journal restored from a backup whose newest entry is of `backup`: skips the numbers that
/// may have been given since and may be on labels. Further ahead the later it is, so that what is
/// given after one restore is skipped by the next, even of the same backup. Relies on a sterilizer
/// running no more than a hundred cycles and one a minute from midnight on.
void skipLots(WriteTransaction& transaction, Instant backup, Instant now, const Zone& zone);

} // namespace loadwarden
