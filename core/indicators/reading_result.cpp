#include "core/indicators/reading_result.h"

#include "core/indicators/agreement.h"
#include "core/indicators/chemical.h"

#include <algorithm>
#include <utility>

namespace loadwarden {
namespace {

constexpr std::size_t answerCount = 3;

std::size_t indexOf(const CheckAnswer& answer)
{
    return static_cast<std::size_t>(answer.readAs);
}

/// How often the first said the one and the second the other.
std::optional<double> kappaOfTwo(const CheckResult& first, const CheckResult& second)
{
    std::vector<std::vector<std::int64_t>> table(answerCount,
                                                 std::vector<std::int64_t>(answerCount));
    for (std::size_t i = 0; i < first.answers.size(); ++i) {
        ++table[indexOf(first.answers[i])][indexOf(second.answers[i])];
    }
    return cohensKappa(table);
}

/// How many said what of each indicator.
std::vector<std::vector<std::int64_t>> countsOf(const std::vector<CheckResult>& readers)
{
    std::vector<std::vector<std::int64_t>> counts(readers.front().answers.size(),
                                                  std::vector<std::int64_t>(answerCount));
    for (const CheckResult& reader : readers) {
        for (std::size_t i = 0; i < reader.answers.size(); ++i) {
            ++counts[i][indexOf(reader.answers[i])];
        }
    }
    return counts;
}

} // namespace

ReadingRule ruleOf(Seen seen)
{
    switch (seen) {
    case Seen::frontInAcceptZone: return ReadingRule::frontEntered;
    case Seen::frontOnBoundary: return ReadingRule::frontOnBoundary;
    case Seen::frontShortOfBoundary: return ReadingRule::frontShort;
    case Seen::endColourReached: return ReadingRule::endColourReached;
    case Seen::endColourPartly: return ReadingRule::endColourPartly;
    case Seen::unchanged: return ReadingRule::unchanged;
    case Seen::uniformComplete: return ReadingRule::uniformComplete;
    case Seen::uniformIncomplete: return ReadingRule::uniformIncomplete;
    case Seen::notUniform: return ReadingRule::notUniform;
    case Seen::absent: return ReadingRule::absent;
    case Seen::growth:
    case Seen::noGrowth:
    case Seen::unclear: return ReadingRule::unclear;
    }
    return ReadingRule::unclear;
}

ReadAs readAsOf(Seen seen)
{
    return isGoodAnswer(seen)  ? ReadAs::accept
           : isBadAnswer(seen) ? ReadAs::reject
                               : ReadAs::unclear;
}

AnswerMark markOf(const Drawn& drawn, ReadAs readAs)
{
    if (readAs == ReadAs::unclear) {
        return AnswerMark::notSure;
    }
    if (readAs == readAsOf(drawn.truth)) {
        return AnswerMark::right;
    }
    return readAs == ReadAs::accept ? AnswerMark::acceptedWhatFails
                                    : AnswerMark::rejectedWhatPasses;
}

std::optional<CheckResult> resultOf(std::uint64_t seed, std::vector<Drawn> drawn,
                                    std::vector<CheckAnswer> answers)
{
    if (drawn.empty() || drawn.size() != answers.size()) {
        return std::nullopt;
    }
    CheckResult result{.seed = seed, .drawn = std::move(drawn), .answers = std::move(answers)};
    for (std::size_t i = 0; i < result.drawn.size(); ++i) {
        const AnswerMark mark = markOf(result.drawn[i], result.answers[i].readAs);
        result.tookMs += result.answers[i].tookMs;
        result.right += mark == AnswerMark::right ? 1 : 0;
        result.acceptedWhatFails += mark == AnswerMark::acceptedWhatFails ? 1 : 0;
        result.rejectedWhatPasses += mark == AnswerMark::rejectedWhatPasses ? 1 : 0;
        result.notSure += mark == AnswerMark::notSure ? 1 : 0;
        if (mark != AnswerMark::right) {
            result.misread.push_back({i, mark, ruleOf(result.drawn[i].truth)});
        }
    }
    return result;
}

std::optional<CheckAgreement> agreementOf(const std::vector<CheckResult>& readers)
{
    if (readers.size() < 2) {
        return std::nullopt;
    }
    const CheckResult& first = readers.front();
    for (const CheckResult& reader : readers) {
        if (reader.drawn.empty() || reader.drawn != first.drawn
            || reader.answers.size() != first.drawn.size()) {
            return std::nullopt;
        }
    }
    const std::vector<std::vector<std::int64_t>> counts = countsOf(readers);
    const auto all = static_cast<std::int64_t>(readers.size());
    return CheckAgreement{
        .readers = readers.size(),
        .alike = std::ranges::count_if(
            counts, [all](const auto& row) { return std::ranges::max(row) == all; }),
        .kappa = readers.size() == 2 ? kappaOfTwo(first, readers.back()) : fleissKappa(counts)};
}

} // namespace loadwarden
