#include "core/release/judge_test.h"

#include "core/release/cycle_contexts.h"
#include "core/release/settings.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// What the finding of a load says of a test that was void for a reason; the causes stand in their
/// order.
Cause voidingCause(Key key)
{
    switch (key) {
    case Key::testItemsInside: return Cause::itemsInside;
    case Key::testAborted: return Cause::aborted;
    case Key::testNotSteam: return Cause::notSteam;
    case Key::testSheetSpoiled: return Cause::sheetSpoiled;
    case Key::testChamberNotEmpty: return Cause::chamberNotEmpty;
    case Key::testOutsideDirections: return Cause::outsideDirections;
    case Key::testDryingRun: return Cause::dryingRun;
    default: return Cause::none;
    }
}

/// Collects reasons and keeps the worst of them, in the order failed, void, pending, passed.
class TestReasons {
public:
    TestReasons(FindingSink* sink, std::pmr::vector<const Act*>* failureActs)
        : m_sink(sink), m_failureActs(failureActs)
    {
    }

    void failed(Key key, Instant since, const Act* by = nullptr)
    {
        worsen(TestResult::failed);
        if (key != Key::testBiPositive) {
            m_since = std::min(m_since.value_or(since), since);
        }
        if (m_failureActs != nullptr && by != nullptr) {
            m_failureActs->push_back(by);
        }
        say(key, Outcome::fails);
    }
    void voided(Key key, Cause cause = Cause::none)
    {
        worsen(TestResult::voided);
        const Cause by = voidingCause(key);
        m_voidedBy = m_voidedBy == Cause::none ? by : std::min(m_voidedBy, by);
        say(key, Outcome::waits, cause);
    }
    void pending(Key key)
    {
        worsen(TestResult::pending);
        say(key, Outcome::waits);
    }
    void note(Key key) { say(key, Outcome::note); }

    [[nodiscard]] bool wantsNotes() const { return m_sink != nullptr; }
    [[nodiscard]] TestOutcome outcome() const { return {m_result, m_since, m_voidedBy}; }

private:
    void worsen(TestResult result) { m_result = std::min(m_result, result); }
    void say(Key key, Outcome outcome, Cause cause = Cause::none)
    {
        if (m_sink != nullptr) {
            m_sink->addOnce(key, outcome, {}, cause);
        }
    }

    FindingSink* m_sink;
    std::pmr::vector<const Act*>* m_failureActs;
    TestResult m_result = TestResult::passed;
    std::optional<Instant> m_since;
    Cause m_voidedBy = Cause::none;
};

struct Judge {
    const HistoryCycle& cycle;
    const CycleTimes& times;
    const TestSurroundings& around;
    const IndicatorRegister& known;
    const Policy& policy;
    Instant now;
    TestReasons reasons;

    [[nodiscard]] Instant endForOrder() const { return times.endForOrder().value_or(cycle.start); }

    void warmUp()
    {
        if (cycle.outcome == CycleOutcome::aborted) {
            reasons.failed(Key::testAborted, endForOrder());
        }
    }

    void bowieDick()
    {
        if (cycle.outcome == CycleOutcome::aborted) {
            reasons.voided(Key::testAborted);
        }
        if (cycle.method != Method::unknown && cycle.method != Method::steam) {
            reasons.voided(Key::testNotSteam);
        }
        if (cycle.chamberEmpty && !*cycle.chamberEmpty) {
            reasons.voided(Key::testChamberNotEmpty);
        }
        if (!cycle.sheet) {
            reasons.pending(Key::testNotRead);
        } else {
            sheet(*cycle.sheet);
        }
        if (!cycle.chamberEmpty) {
            reasons.pending(Key::testExposureUnknown);
        }
        if (reasons.wantsNotes() && !hasWarmUp()) {
            reasons.note(Key::testNoWarmUp);
        }
    }

    void sheet(const ChemicalIndicator& sheet)
    {
        const ChemicalJudgement judged = judgeChemical(sheet, TypeSet{2}, now);
        if (judged.state == ChemicalState::rejected) {
            reasons.failed(Key::testSheetFailed, judged.rejectedBy->recordedAt, judged.rejectedBy);
        } else if (judged.state == ChemicalState::unclear) {
            reasons.pending(Key::testUnclear);
        } else if (judged.state != ChemicalState::accepted) {
            reasons.pending(Key::testNotRead);
        }
        if (isLost(sheet, judged.state, now)) {
            reasons.failed(Key::testSheetLost, sheet.lost->recordedAt, &*sheet.lost);
        }
        if (judged.spoiled) {
            reasons.voided(Key::testSheetSpoiled, judged.cause);
        }
        if (const IndicatorProduct* product = known.productOf(sheet.link)) {
            directions(product->sheet);
        }
        if (reasons.wantsNotes()) {
            readLate(sheet);
        }
    }

    void directions(const SheetDirections& asked)
    {
        const auto outside = [](const std::optional<std::int64_t>& value,
                                const std::optional<std::int64_t>& least,
                                const std::optional<std::int64_t>& most) {
            return value && ((least && *value < *least) || (most && *value > *most));
        };
        if (outside(cycle.exposureMs, asked.leastMs, asked.mostMs)
            || outside(cycle.exposureCelsiusHundredths, asked.leastCelsiusHundredths,
                       asked.mostCelsiusHundredths)) {
            reasons.voided(Key::testOutsideDirections);
        }
        const bool asksTime = asked.leastMs || asked.mostMs;
        const bool asksTemperature = asked.leastCelsiusHundredths || asked.mostCelsiusHundredths;
        if (!asksTime || !asksTemperature) {
            reasons.pending(Key::testDirectionsMissing);
        }
        if ((asksTime && !cycle.exposureMs) || (asksTemperature && !cycle.exposureCelsiusHundredths)
            || (asked.dryingForbidden && !cycle.dryingRun)) {
            reasons.pending(Key::testExposureUnknown);
        }
        if (asked.dryingForbidden && cycle.dryingRun && *cycle.dryingRun) {
            reasons.voided(Key::testDryingRun);
        }
    }

    void readLate(const ChemicalIndicator& sheet)
    {
        if (!times.end) {
            return;
        }
        for (const IndicatorReading& reading : sheet.readings) {
            if (counts(reading, now)
                && reading.act.happenedAt > *times.end + policy.sheetReadWithin) {
                reasons.note(Key::testReadLate);
            }
        }
    }

    [[nodiscard]] bool hasWarmUp() const
    {
        for (std::size_t i = 0; i < around.cycles.size(); ++i) {
            const HistoryCycle& other = around.cycles[i];
            if (other.kind == CycleKind::warmUp && other.outcome == CycleOutcome::ended
                && &other != &cycle && around.times[i].period == times.period
                && isBefore(around.times[i], times)) {
                return true;
            }
        }
        return false;
    }

    void leak()
    {
        if (cycle.outcome == CycleOutcome::aborted) {
            reasons.voided(Key::testAborted);
        }
        const LeakReading* reading = cycle.leak ? &*cycle.leak : nullptr;
        if (reading != nullptr) {
            if (reading->riseThousandthsMbar && reading->testMs && *reading->testMs > 0
                && tooHigh(*reading->riseThousandthsMbar, *reading->testMs)) {
                reasons.failed(Key::testLeakTooHigh, reading->act.recordedAt, &reading->act);
            }
            if (reading->riseThousandthsMbar && *reading->riseThousandthsMbar < 0) {
                reasons.pending(Key::testLeakImplausible);
            }
            if ((reading->settledMs && *reading->settledMs < policy.leakSettle.ms)
                || (reading->testMs && *reading->testMs < policy.leakTest.ms)) {
                reasons.voided(Key::testLeakTooShort);
            }
        }
        if (reading == nullptr || !reading->settledMs || !reading->testMs
            || !reading->riseThousandthsMbar || *reading->testMs <= 0
            || !stands(reading->act, now)) {
            reasons.pending(Key::testNotRead);
        }
    }

    /// Whether rise over time is above the policy's rate; exact in integers.
    [[nodiscard]] bool tooHigh(std::int64_t riseThousandths, std::int64_t testMs) const
    {
        return riseThousandths * 60'000 > policy.leakMostThousandthsMbarPerMinute * testMs;
    }

    void qualification()
    {
        if (cycle.outcome == CycleOutcome::aborted) {
            reasons.failed(Key::testAborted, endForOrder());
        }
        if (cycle.physical && !cycle.physical->good) {
            reasons.failed(Key::testPhysicalFailed, cycle.physical->act.recordedAt,
                           &cycle.physical->act);
        }
        if (!cycle.physical || !stands(cycle.physical->act, now)) {
            reasons.pending(Key::testPhysicalMissing);
        }
        indicators();
        vials();
    }

    void indicators()
    {
        const TypeSet types = pcdTypes(policy, cycle.method, cycle.vials, known);
        bool allAccepted = !cycle.indicators.empty();
        for (const ChemicalIndicator& indicator : cycle.indicators) {
            const ChemicalJudgement judged = judgeChemical(indicator, types, now);
            if (judged.state == ChemicalState::rejected) {
                reasons.failed(Key::testIndicatorRejected, judged.rejectedBy->recordedAt,
                               judged.rejectedBy);
            }
            allAccepted = allAccepted && judged.state == ChemicalState::accepted;
        }
        if (!allAccepted) {
            reasons.pending(Key::testIndicatorPending);
        }
    }

    void vials()
    {
        const CycleContext context = contextOf(cycle, times);
        BiologicalSettings settings = biologicalSettings(policy);
        settings.controlStates = around.controlStates;
        BiSummary summary;
        Cause firstVoid = Cause::none;
        for (const Vial& vial : cycle.vials) {
            const VialJudgement judged = judgeVial(vial, context, true, settings, known, now);
            summary.add(judged);
            if (firstVoid == Cause::none
                && (judged.state == VialState::voided || judged.state == VialState::lost)) {
                firstVoid = judged.cause;
            }
            if (judged.state == VialState::positive
                || judged.state == VialState::positiveElsewhere) {
                reasons.failed(Key::testBiPositive, judged.positiveSince, judged.positiveBy);
            }
        }
        switch (summary.state()) {
        case BiState::none:
        case BiState::pending: reasons.pending(Key::testBiPending); break;
        case BiState::voided: reasons.voided(Key::testBiVoid, firstVoid); break;
        case BiState::positive:
        case BiState::negative: break;
        }
    }
};

} // namespace

TestOutcome judgeTestCycle(const HistoryCycle& cycle, const CycleTimes& times,
                           const TestSurroundings& around, const IndicatorRegister& known,
                           const Policy& policy, Instant now, FindingSink* sink,
                           std::pmr::vector<const Act*>* failureActs)
{
    Judge judge{cycle, times, around, known, policy, now, TestReasons(sink, failureActs)};
    if (!cycle.items.empty()) {
        judge.reasons.voided(Key::testItemsInside);
    }
    if (cycle.outcome == CycleOutcome::unknown) {
        judge.reasons.pending(Key::testNotEnded);
    }
    if (times.start && times.end && *times.start > *times.end) {
        judge.reasons.pending(Key::testTimes);
    }
    switch (cycle.kind) {
    case CycleKind::warmUp: judge.warmUp(); break;
    case CycleKind::bowieDick: judge.bowieDick(); break;
    case CycleKind::leak: judge.leak(); break;
    case CycleKind::qualification: judge.qualification(); break;
    case CycleKind::load: break;
    }
    return judge.reasons.outcome();
}

} // namespace loadwarden
