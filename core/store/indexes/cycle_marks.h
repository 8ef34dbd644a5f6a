#pragma once

#include "core/store/indexes/indexed_entry.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The marks of p_mark. Those of times stand at their own time; the others at every time at which
/// the cycle was said to have been reserved (recordedAt) or to have begun (as shown).
namespace mark {
inline constexpr std::string_view reserved = "reserved";
inline constexpr std::string_view start = "start";
inline constexpr std::string_view end = "end";
inline constexpr std::string_view counter = "counter"; ///< `at` is the counter
inline constexpr std::string_view test = "test";       ///< detail: its purpose
inline constexpr std::string_view vials = "vials";
inline constexpr std::string_view specification = "specification"; ///< `at` is 0; detail: sp-
/// By which revision it was begun; `at` is 0; detail: sp-, `@` and the seq of the newest entry
/// about that specification itself before the start (0: none).
inline constexpr std::string_view bound = "bound";
/// Something of it may have failed; detail: what; time: when that was recorded.
inline constexpr std::string_view trouble = "trouble";
/// A chemical indicator that is unclear, lost or unsettled: of a test that may be a failure.
inline constexpr std::string_view doubt = "doubt";
/// Positive, or a failed test that holds a sterilizer; time: when that was recorded.
inline constexpr std::string_view grave = "grave";
/// A failure was resolved; time: when that was recorded.
inline constexpr std::string_view resolved = "resolved";
/// Resolved with a known cause by a lead, after everything that was said of it; time: how much
/// later than the latest of its times, in ms; detail: empty, or, where the resolution reaches the
/// sterilizer, when it was recorded, in ms.
inline constexpr std::string_view right = "right";
/// Resolved in any other way, or something was said or struck after a resolution: nothing frees it
/// any more.
inline constexpr std::string_view unfree = "unfree";

/// Before the code of an alarm in the detail of trouble.
inline constexpr std::string_view alarm = "alarm:";
} // namespace mark

/// A mark that an entry makes.
struct SaidMark {
    std::string_view mark;
    std::string detail;
    std::int64_t time = 0; ///< ms; of `right` when it happened
};

/// A time of a cycle that an entry says, or its counter.
struct SaidTime {
    std::string_view mark; ///< reserved, start, end or counter
    std::int64_t at = 0;
};

/// What one entry says of a cycle among its subjects.
struct SaidOfCycle {
    std::string sterilizer;    ///< sz-; empty: not said
    std::string specification; ///< sp-; empty: not said
    std::vector<SaidTime> times;
    std::vector<SaidMark> marks;
    bool strikes = false; ///< it strikes something that was said of it

    [[nodiscard]] bool isNothing() const
    {
        return sterilizer.empty() && specification.empty() && times.empty() && marks.empty()
               && !strikes;
    }
    /// Whether it says that something may have failed.
    [[nodiscard]] bool isTrouble() const;
};

[[nodiscard]] SaidOfCycle saidOfCycle(const IndexedEntry& entry);

} // namespace loadwarden
