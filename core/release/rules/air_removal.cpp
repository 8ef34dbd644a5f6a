#include "core/release/rules/rules.h"

#include <algorithm>

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

/// A lead's cause and action for a failed test, recorded (or happened) after the failure's end.
bool isRemedy(const View& view, const Resolution& resolution)
{
    return resolution.causeKnown && standsAs(resolution.act, Role::lead, view.now);
}

bool passedBetween(const View& view, Instant from)
{
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& test) {
        return test.airTest == AirTest::passed && test.before && *test.times->start >= from;
    });
}

/// Whether a failed test was put right before the load: failure, cause and action, a pass, in this order.
bool isPutRight(const View& view, const PastCycle& failed)
{
    const Instant end = *failed.times->endForOrder();
    const auto& resolutions = failed.cycle->resolutions;
    return std::any_of(resolutions.begin(), resolutions.end(), [&](const Resolution& each) {
        return isRemedy(view, each) && each.act.recordedAt >= end && passedBetween(view, each.act.recordedAt);
    });
}

/// The newest remedy that came in time as it happened but was recorded late, or null.
const Act* lateRemedy(const View& view, const PastCycle& failed)
{
    const Instant end = *failed.times->endForOrder();
    const Act* newest = nullptr;
    for (const Resolution& each : failed.cycle->resolutions) {
        if (isRemedy(view, each) && each.act.happenedAt >= end && passedBetween(view, each.act.happenedAt)
            && (newest == nullptr || each.act.recordedAt >= newest->recordedAt)) {
            newest = &each.act;
        }
    }
    return newest;
}

void takeFailures(const View& view, FindingSink& sink)
{
    for (const PastCycle& past : view.history) {
        if (past.airTest != AirTest::failed || !past.before || isPutRight(view, past)) {
            continue;
        }
        if (const Act* late = lateRemedy(view, past)) {
            sink.addReview(Key::airRemovalPutRightLate, Reviewer::supervisor, past.cycle->lot, *late);
        } else {
            sink.add(Key::airRemovalFailed, Outcome::fails, past.cycle->lot);
        }
    }
}

const Act* newestReading(const HistoryCycle& test)
{
    return test.sheet && !test.sheet->readings.empty() ? &test.sheet->readings.back().act : nullptr;
}

/// The newest entry that makes a Bowie-Dick failed: a bad reading, the loss of its sheet, or that its
/// readings could not be settled.
const Act* newestFailing(const View& view, const PastCycle& test)
{
    std::pmr::vector<const Act*> acts(view.memory);
    const TestSurroundings around{view.sterilizer->cycles, view.evidence.history};
    (void)judgeTestCycle(*test.cycle, *test.times, around, view.evidence.known, view.policy, view.now, nullptr,
        &acts);
    const Act* newest = acts.empty() ? nullptr : acts.front();
    if (test.cycle->sheet) {
        for (const IndicatorReading& reading : test.cycle->sheet->readings) {
            const bool bad = reading.seen != Seen::unclear && !isGoodAnswer(reading.seen);
            if (bad && newest != nullptr && reading.act.recordedAt >= newest->recordedAt) {
                newest = &reading.act;
            }
        }
    }
    return newest;
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
        sink.add(Key::airRemovalNotRead, Outcome::waits, lot);
    } else if (first->airTest == AirTest::passed && view.policy.madeAfter == MadeAfter::review
        && !view.evidence.hasImplant) {
        sink.addReview(Key::airRemovalMadeAfter, Reviewer::lead, lot, *newestReading(*first->cycle));
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
        if (decided && past.after && (next == nullptr || *past.times->start < *next->times->start)) {
            next = &past;
        }
    }
    if (next != nullptr && next->airTest == AirTest::failed) {
        if (const Act* act = newestFailing(view, *next)) {
            sink.addReview(Key::airRemovalFailedAfter, Reviewer::lead, next->cycle->lot, *act);
        }
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
            sink.add(Key::airRemovalNotRead, Outcome::waits, past.cycle->lot);
        }
    }
    if (passed) {
        takeNextTest(view, sink);
    } else if (!unread) {
        takeNoPass(view, sink);
    }
}

} // namespace loadwarden::rules
