#include "core/cycle/cycle_words.h"
#include "core/exchange/evidence/object_types.h"
#include "core/loads/load_words.h"

#include <algorithm>

// The load itself.

namespace loadwarden::evidence_format {

namespace {

constexpr auto alarm = join(fields(id<&Alarm::code>("code").must()), actFields<&Alarm::act>());

constinit const ObjectType alarmType = signedType<&Alarm::act>("an alarm", alarm);

constexpr auto pcd =
    fields(id<&ProcessChallengeDevice::id>("id").must(),
           objects<indicatorType, &ProcessChallengeDevice::indicators>("indicators"),
           objects<vialType, &ProcessChallengeDevice::vials>("vials"));

constinit const ObjectType pcdType = objectType("a process challenge device", pcd);

constexpr auto aerationRun = fields(
    object<actType, &AerationRun::start>("start").must(), object<actType, &AerationRun::end>("end"),
    object<actType, &AerationRun::interrupted>("interrupted"),
    celsiusHundredths<&AerationRun::celsiusHundredths>("celsius").must());

constinit const ObjectType aerationRunType = objectType("an aeration run", aerationRun);

constexpr auto immediateUse =
    fields(text<&ImmediateUse::reason>("reason"), id<&ImmediateUse::caseReference>("caseReference"),
           flag<&ImmediateUse::forStorage>("forStorage"));

constinit const ObjectType immediateUseType =
    objectType("the statement about immediate use", immediateUse);

/// A review that saw nothing of the evidence saw what there was before the first moment of all.
Fetched<Instant> fetchNewestSeen(const void* owner)
{
    return {Stated::yes, std::max(static_cast<const Review*>(owner)->newestSeen, firstMoment)};
}

constexpr Field newestSeen{
    "newestSeen",
    TimeRule{[](void* owner, Instant value) { static_cast<Review*>(owner)->newestSeen = value; },
             fetchNewestSeen}};

constexpr auto review =
    join(fields(id<&Review::finding>("finding").must(), nameOrNone<&Review::subject>("subject"),
                word<reviewAnswerWords, &Review::answer>("answer").must(),
                text<&Review::why>("why"), newestSeen.must()),
         actFields<&Review::act>());

constinit const ObjectType reviewType = signedType<&Review::act>("a review", review);

constexpr auto load = fields(
    id<&LoadRecord::lot>("lot"), id<&LoadRecord::operatedBy>("operator"),
    word<clockWords, &LoadRecord::clock>("clock"), time<&LoadRecord::start>("start"),
    time<&LoadRecord::end>("end"), whole<&LoadRecord::counter>("counter", 0, 1'000'000'000),
    word<outcomeWords, &LoadRecord::outcome>("outcome"),
    word<abortPhaseWords, &LoadRecord::abortPhase>("abortPhase"),
    objects<alarmType, &LoadRecord::alarms>("alarms"),
    object<printoutType, &LoadRecord::printout>("printout"),
    object<actType, &LoadRecord::printoutLost>("printoutLost"),
    objects<printoutStatementType, &LoadRecord::printoutAnswers>("printoutAnswers"),
    objects<readingType, &LoadRecord::readings>("readings"),
    objects<traceType, &LoadRecord::traces>("traces"),
    objects<lostReadingType, &LoadRecord::lostReadings>("lostReadings"),
    objects<actType, &LoadRecord::verifications>("verifications"),
    objects<pcdType, &LoadRecord::pcds>("pcds"), objects<itemType, &LoadRecord::items>("items"),
    objects<aerationRunType, &LoadRecord::aerationRuns>("aerationRuns"),
    object<immediateUseType, &LoadRecord::immediateUse>("immediateUse"),
    objects<reviewType, &LoadRecord::reviews>("reviews"));

} // namespace

constinit const ObjectType loadType = objectType("a load", load);

} // namespace loadwarden::evidence_format
