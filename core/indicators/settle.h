#pragma once

#include "core/indicators/indicator.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What one reading says once it has been looked at in its place; ignored ones do not count.
enum class Answer : std::uint8_t { ignored, good, bad, unclear };

enum class SettledState : std::uint8_t { none, accepted, unclear, rejected };

/// What the readings of one indicator come to (RULES.md, 3, Settling).
struct Settled {
    SettledState state = SettledState::none;
    bool bySecondReader = false;
    const Act* rejectedBy = nullptr; ///< the act that made it rejected; null unless rejected
    const Act* firstUnclear = nullptr;
};

/// Takes readings in turn, in the order in which they stand (by recordedAt after assemble).
/// `answerOf` says what each reading counts as; `lost` rejects what is unclear, as `unsettled` does
/// (nullopt where being lost means something else).
template <class AnswerOf>
[[nodiscard]] Settled settle(const std::vector<IndicatorReading>& readings,
                             const std::optional<Act>& unsettled, const std::optional<Act>& lost,
                             AnswerOf answerOf)
{
    Settled settled;
    const auto reject = [&settled](const Act& act) {
        settled.state = SettledState::rejected;
        settled.rejectedBy = &act;
    };
    const auto isAnother = [&settled](const Act& act) {
        return isAnotherPerson(act.by, settled.firstUnclear->by);
    };
    for (const IndicatorReading& reading : readings) {
        const Answer answer = answerOf(reading);
        if (answer == Answer::ignored) {
            continue;
        }
        if (answer == Answer::bad) {
            reject(reading.act);
        } else if (settled.state == SettledState::none || settled.state == SettledState::accepted) {
            if (answer == Answer::good) {
                settled.state = SettledState::accepted;
            } else if (settled.bySecondReader && isAnother(reading.act)) {
                reject(reading.act);
            } else {
                settled.state = SettledState::unclear;
                if (!settled.bySecondReader) {
                    settled.firstUnclear = &reading.act;
                }
            }
        } else if (settled.state == SettledState::unclear && isAnother(reading.act)) {
            if (answer == Answer::good) {
                settled.state = SettledState::accepted;
                settled.bySecondReader = true;
            } else {
                reject(reading.act);
            }
        }
        if (settled.state == SettledState::rejected) {
            return settled;
        }
    }
    if (settled.state == SettledState::unclear && (unsettled || lost)) {
        reject(unsettled ? *unsettled : *lost);
    }
    return settled;
}

/// Whether a bad answer was voided: by a standing act of a lead who is not its reader, recorded not
/// before the reading. A good answer is voided by any act.
[[nodiscard]] inline bool isBadVoided(const IndicatorReading& reading, Instant now)
{
    return reading.voided && standsAs(*reading.voided, Role::lead, now)
           && isAnotherPerson(reading.voided->by, reading.act.by)
           && reading.voided->recordedAt >= reading.act.recordedAt;
}

/// Whether a person took a bad answer of an indicator out, or tried to; `isBad` says which answers
/// are bad ones. The same person does not also give the good one.
template <class IsBad>
[[nodiscard]] bool isVoider(const std::vector<IndicatorReading>& readings, std::string_view by,
                            IsBad isBad)
{
    return std::any_of(readings.begin(), readings.end(), [&](const IndicatorReading& reading) {
        return reading.voided && isBad(reading) && isSamePerson(reading.voided->by, by);
    });
}

/// Puts readings into the order in which they are taken.
inline void sortReadings(std::vector<IndicatorReading>& readings)
{
    std::stable_sort(readings.begin(), readings.end(),
                     [](const IndicatorReading& a, const IndicatorReading& b) {
                         return a.act.recordedAt < b.act.recordedAt;
                     });
}

} // namespace loadwarden
