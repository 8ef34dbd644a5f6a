#pragma once

#include "core/indicators/reading_check.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace loadwarden {

enum class ReadAs : std::uint8_t { accept, reject, unclear };

/// What a reader said of a drawn indicator, and how long they looked at it.
struct CheckAnswer {
    ReadAs readAs = ReadAs::unclear;
    std::int64_t tookMs = 0;

    friend bool operator==(const CheckAnswer&, const CheckAnswer&) = default;
};

enum class AnswerMark : std::uint8_t {
    right,
    acceptedWhatFails,  ///< dangerous
    rejectedWhatPasses, ///< costly
    notSure             ///< to be read by somebody else, in earnest
};

/// The rule by which a seen answer passes or fails; core/words says it.
enum class ReadingRule : std::uint8_t {
    frontEntered, ///< passes: it need not fill the zone
    frontOnBoundary,
    frontShort,
    endColourReached, ///< passes
    endColourPartly,
    unchanged,
    uniformComplete, ///< passes
    uniformIncomplete,
    notUniform,
    absent,
    unclear ///< also of vials, which no check draws
};

inline constexpr ReadingRule everyReadingRule[] = {
    ReadingRule::frontEntered,    ReadingRule::frontOnBoundary,
    ReadingRule::frontShort,      ReadingRule::endColourReached,
    ReadingRule::endColourPartly, ReadingRule::unchanged,
    ReadingRule::uniformComplete, ReadingRule::uniformIncomplete,
    ReadingRule::notUniform,      ReadingRule::absent,
    ReadingRule::unclear};

[[nodiscard]] ReadingRule ruleOf(Seen seen);

/// What to say of an indicator that looks so.
[[nodiscard]] ReadAs readAsOf(Seen seen);

[[nodiscard]] AnswerMark markOf(const Drawn& drawn, ReadAs readAs);

/// An answer that was not right.
struct Misread {
    std::size_t drawn = 0; ///< its place in the check
    AnswerMark mark = AnswerMark::notSure;
    ReadingRule rule = ReadingRule::unclear;

    friend bool operator==(const Misread&, const Misread&) = default;
};

/// A check that was answered to its end.
struct CheckResult {
    std::uint64_t seed = 0;
    std::vector<Drawn> drawn;
    std::vector<CheckAnswer> answers; ///< as many
    std::vector<Misread> misread;     ///< in the order of the check
    std::int64_t right = 0;
    std::int64_t acceptedWhatFails = 0;
    std::int64_t rejectedWhatPasses = 0;
    std::int64_t notSure = 0;
    std::int64_t tookMs = 0;

    friend bool operator==(const CheckResult&, const CheckResult&) = default;
};

/// nullopt: not as many answers as indicators, or none.
[[nodiscard]] std::optional<CheckResult> resultOf(std::uint64_t seed, std::vector<Drawn> drawn,
                                                  std::vector<CheckAnswer> answers);

/// How far readers agree who took the same check.
struct CheckAgreement {
    std::size_t readers = 0;
    std::int64_t alike = 0; ///< indicators of which all said the same
    /// Beyond chance: Cohen's of two, Fleiss' of more (agreement.h); nullopt where it is not
    /// defined.
    std::optional<double> kappa;
};

/// nullopt: fewer than two readers, or they did not take the same check.
[[nodiscard]] std::optional<CheckAgreement> agreementOf(const std::vector<CheckResult>& readers);

} // namespace loadwarden
