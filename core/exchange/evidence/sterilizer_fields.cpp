#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/object_types.h"
#include "core/quantities/digits.h"
#include "core/sterilizers/sterilizer_record.h"
#include "core/sterilizers/sterilizer_words.h"

#include <utility>

// A sterilizer and what is known of it; its other cycles stand in cycle_fields.cpp.

namespace loadwarden::evidence_format {

namespace {

/// "HH:MM" into minutes of the day.
bool storeTestHour(void* owner, std::string_view text, const SpecificationLibrary*,
                   std::string& message)
{
    const auto digit = [text](std::size_t at, char most) {
        return text[at] >= '0' && text[at] <= most;
    };
    if (text.size() != 5 || !digit(0, '2') || !digit(1, text[0] == '2' ? '3' : '9')
        || text[2] != ':' || !digit(3, '5') || !digit(4, '9')) {
        message = "must be a time of the day from 00:00 to 23:59, not " + quoted(text);
        return false;
    }
    const auto two = [text](std::size_t at) {
        return (text[at] - '0') * 10 + (text[at + 1] - '0');
    };
    static_cast<SterilizerRecord*>(owner)->testMinute = two(0) * 60 + two(3);
    return true;
}

Fetched<std::string> fetchTestHour(const void* owner)
{
    const auto [stated, minutes] = fetched<&SterilizerRecord::testMinute>(owner);
    std::string text;
    digits::append(text, static_cast<unsigned>(minutes / 60), 2);
    text += ':';
    digits::append(text, static_cast<unsigned>(minutes % 60), 2);
    return {stated, std::move(text)};
}

constexpr auto aeration =
    fields(whole<&SterilizerAeration::minutes>("minutes", 0, 100'000).must(),
           celsiusHundredths<&SterilizerAeration::celsiusHundredths>("celsius").must());

constinit const ObjectType aerationType = objectType("a sterilizer's aeration", aeration);

constexpr auto listedAlarm = fields(id<&ListedAlarm::code>("code").must(),
                                    word<alarmEffectWords, &ListedAlarm::effect>("effect").must());

constinit const ObjectType listedAlarmType = objectType("a listed alarm", listedAlarm);

constexpr Field offsetSeconds{
    "seconds",
    NumberRule{0, -1'000'000, 1'000'000,
               [](void* owner, std::int64_t value, std::string_view) {
                   static_cast<ClockOffset*>(owner)->offset = Duration::seconds(value);
               },
               [](const void* owner) {
                   return fetched<&ClockOffset::offset>(
                       owner, [](Duration offset) { return numberOf(offset.ms, 1'000); });
               }},
    true};

constexpr auto clockOffset = fields(time<&ClockOffset::from>("from").must(), offsetSeconds);

constinit const ObjectType clockOffsetType = objectType("a clock offset", clockOffset);

constexpr auto service = join(fields(word<serviceStateWords, &ServiceEntry::state>("state").must()),
                              actFields<&ServiceEntry::act>());

constinit const ObjectType serviceType = signedType<&ServiceEntry::act>("a service entry", service);

constexpr auto closing =
    join(fields(id<&Closing::negativeLot>("negativeLot").must()), actFields<&Closing::act>());

constinit const ObjectType closingType =
    signedType<&Closing::act>("an incident's closing", closing);

constexpr auto incident = fields(id<&Incident::positiveLot>("positiveLot").must(),
                                 objects<closingType, &Incident::closings>("closings"));

constinit const ObjectType incidentType = objectType("an incident", incident);

constexpr auto sterilizer =
    fields(id<&SterilizerRecord::id>("id").must(), id<&SterilizerRecord::model>("model"),
           Field{"testHour", FormRule{storeTestHour, fetchTestHour}},
           flag<&SterilizerRecord::recordsConcentration>("recordsConcentration"),
           flag<&SterilizerRecord::recordsHumidity>("recordsHumidity"),
           object<aerationType, &SterilizerRecord::aeration>("aeration"),
           objects<listedAlarmType, &SterilizerRecord::alarms>("alarms"),
           objects<clockOffsetType, &SterilizerRecord::clockOffsets>("clockOffsets"),
           objects<serviceType, &SterilizerRecord::service>("service"),
           objects<cycleType, &SterilizerRecord::cycles>("cycles"),
           objects<incidentType, &SterilizerRecord::incidents>("incidents"));

} // namespace

constinit const ObjectType sterilizerType = objectType("a sterilizer", sterilizer);

} // namespace loadwarden::evidence_format
