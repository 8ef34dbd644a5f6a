#include "core/release/rules/rules.h"

#include <algorithm>
#include <utility>

namespace loadwarden::rules {
namespace {

bool applies(const View& view)
{
    switch (view.airRemoval) {
    case AirRemoval::prevacuum: return true;
    case AirRemoval::gravity: return view.policy.airTestForGravity;
    case AirRemoval::steamFlushPressurePulse: return view.policy.airTestForSteamFlush;
    case AirRemoval::unknown: break;
    }
    return false;
}

/// A lead's known cause and action for a failed test, which happened after it and was recorded when
/// the failure was known.
bool isRemedy(const View& view, const PastCycle& failed, const Resolution& resolution)
{
    return resolution.causeKnown && isNamed(resolution.what)
           && resolution.act.happenedAt >= *failed.times->endForOrder()
           && resolution.act.recordedAt >= failed.test.failedSince
           && standsAs(resolution.act, Role::lead, view.now);
}

bool passedBetween(const View& view, Instant from)
{
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& test) {
        return test.airTest == AirTest::passed && test.before && *test.times->start >= from;
    });
}

/// Whether a failed test was put right before the load: failure, cause and action, a pass, in this
/// order.
bool isPutRight(const View& view, const PastCycle& failed)
{
    const auto& resolutions = failed.cycle->resolutions;
    return std::any_of(resolutions.begin(), resolutions.end(), [&](const Resolution& each) {
        return isRemedy(view, failed, each) && passedBetween(view, each.act.recordedAt);
    });
}

/// The remedies that came in time as they happened but were recorded late.
std::pmr::vector<const Act*> lateRemedies(const View& view, const PastCycle& failed)
{
    std::pmr::vector<const Act*> acts(view.memory);
    for (const Resolution& each : failed.cycle->resolutions) {
        if (isRemedy(view, failed, each) && passedBetween(view, each.act.happenedAt)) {
            acts.push_back(&each.act);
        }
    }
    return acts;
}

void takeFailures(const View& view, FindingSink& sink)
{
    for (const PastCycle& past : view.history) {
        if (past.airTest != AirTest::failed || !past.before || isPutRight(view, past)) {
            continue;
        }
        auto late = lateRemedies(view, past);
        if (late.empty()) {
            sink.add(Key::airRemovalFailed, Outcome::fails, past.cycle->lot);
        } else {
            sink.addReviewOfNewest(Key::airRemovalPutRightLate, Reviewer::supervisor,
                                   past.cycle->lot, std::move(late));
        }
    }
}

/// The readings of a passed test's sheet; there is at least one.
std::pmr::vector<const Act*> readingsOf(const View& view, const HistoryCycle& test)
{
    std::pmr::vector<const Act*> acts(view.memory);
    for (const IndicatorReading& reading : test.sheet->readings) {
        acts.push_back(&reading.act);
    }
    return acts;
}

/// What speaks against a failed test: bad readings, that its sheet was lost or could not be
/// settled; where none of these is there, the reading that rejected it.
std::pmr::vector<const Act*> failingActs(const View& view, const PastCycle& test)
{
    std::pmr::vector<const Act*> acts(view.memory);
    const ChemicalIndicator& sheet = *test.cycle->sheet;
    for (const IndicatorReading& reading : sheet.readings) {
        if (reading.seen != Seen::unclear && !isGoodAnswer(reading.seen)) {
            acts.push_back(&reading.act);
        }
    }
    for (const auto* each : {&sheet.lost, &sheet.unsettled}) {
        if (*each) {
            acts.push_back(&**each);
        }
    }
    if (acts.empty()) {
        const TestSurroundings around = view.testSurroundings();
        (void)judgeTestCycle(*test.cycle, *test.times, around, view.evidence.known, view.policy,
                             view.now, nullptr, &acts);
    }
    return acts;
}

/// A test of the load's period that says nothing yet, or was void without a lead's reason.
void addPending(const PastCycle& test, FindingSink& sink)
{
    const bool isVoid = test.test.result == TestResult::voided;
    sink.add(isVoid ? Key::airRemovalVoid : Key::airRemovalNotRead, Outcome::waits, test.cycle->lot)
        .cause = isVoid ? test.test.voidedBy : Cause::none;
}

/// No pass before the load in its period: what came later in the period, or that nothing did.
void takeNoPass(const View& view, FindingSink& sink)
{
    const PastCycle* first = nullptr;
    for (const PastCycle& past : view.history) {
        const bool made = past.airTest != AirTest::none && past.airTest != AirTest::asNotMade;
        if (made && !past.before && past.times->period == view.evidence.load.period
            && (first == nullptr || *past.times->start < *first->times->start)) {
            first = &past;
        }
    }
    if (first == nullptr) {
        if (view.now < *view.evidence.periodEnd) {
            sink.add(Key::airRemovalNoneYet, Outcome::waits).changesAt = view.evidence.periodEnd;
        } else {
            sink.add(Key::airRemovalNoneMade, Outcome::fails);
        }
        return;
    }
    const std::string& lot = first->cycle->lot;
    if (first->airTest == AirTest::pending) {
        addPending(*first, sink);
    } else if (first->airTest == AirTest::passed && view.policy.madeAfter == MadeAfter::review
               && !view.evidence.hasImplant) {
        sink.addReviewOfNewest(Key::airRemovalMadeAfter, Reviewer::lead, lot,
                               readingsOf(view, *first->cycle));
    } else {
        sink.add(Key::airRemovalMadeAfter, Outcome::fails, lot);
    }
}

/// The first test after the load that says anything; a failure then casts doubt back on the load.
void takeNextTest(const View& view, FindingSink& sink)
{
    const PastCycle* next = nullptr;
    for (const PastCycle& past : view.history) {
        const bool decided = past.airTest == AirTest::passed || past.airTest == AirTest::failed;
        if (decided && past.after
            && (next == nullptr || *past.times->start < *next->times->start)) {
            next = &past;
        }
    }
    if (next != nullptr && next->airTest == AirTest::failed) {
        sink.addReviewOfNewest(Key::airRemovalFailedAfter, Reviewer::lead, next->cycle->lot,
                               failingActs(view, *next));
    }
}

} // namespace

void airRemoval(const View& view, FindingSink& sink)
{
    if (view.sterilizer == nullptr || !view.hasStart()) {
        return;
    }
    if (view.method == Method::unknown
        || (view.method == Method::steam && view.airRemoval == AirRemoval::unknown)) {
        sink.add(Key::airRemovalMethodUnknown, Outcome::waits);
        return;
    }
    if (view.method != Method::steam || !applies(view)) {
        return;
    }
    takeFailures(view, sink);
    bool unread = false;
    bool passed = false;
    for (const PastCycle& past : view.history) {
        if (!past.before || past.times->period != view.evidence.load.period) {
            continue;
        }
        passed = passed || past.airTest == AirTest::passed;
        if (past.airTest == AirTest::pending) {
            unread = true;
            addPending(past, sink);
        }
    }
    if (passed) {
        takeNextTest(view, sink);
    } else if (!unread) {
        takeNoPass(view, sink);
    }
}

} // namespace loadwarden::rules
