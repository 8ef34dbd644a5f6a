// What the registers hold, and what is said before anybody signs.
#include "core/desk/enrolling.h"
#include "core/desk/people.h"
#include "core/desk/policy_exam.h"
#include "core/desk/recorder.h"
#include "core/desk/registers.h"
#include "core/desk/upkeep.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace loadwarden {
namespace {

using loadwarden::testing::leadPin;
using loadwarden::testing::local;
using loadwarden::testing::must;
using loadwarden::testing::operatorPin;
using loadwarden::testing::supervisorPin;
using loadwarden::testing::whyOf;
using loadwarden::testing::WorkingDepartment;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::SizeIs;

class RegistersOfADepartment : public ::testing::Test {
protected:
    Registers registers()
    {
        ReadSnapshot snapshot(department.office().connection());
        return registersOf(snapshot, department.office().zone(), department.now());
    }

    template <class Rows>
    auto find(const Rows& rows, const std::string& id)
    {
        const auto found =
            std::ranges::find_if(rows, [&](const auto& each) { return each.id == id; });
        EXPECT_NE(found, rows.end()) << id;
        return *found;
    }

    Appended bossSigns(AnyAct act, std::vector<std::string> subjects)
    {
        const SignedIn boss = department.supervisor();
        return department.sign(boss, supervisorPin, std::move(act), std::move(subjects));
    }

    static std::string withValue(const std::string& before, const std::string& after)
    {
        std::string toml(defaultPolicyText());
        const auto replace = [&toml](const std::string& what, const std::string& by) {
            const auto at = toml.find(what);
            ASSERT_NE(at, std::string::npos) << what;
            toml.replace(at, what.size(), by);
        };
        replace("id = \"us-hospital\"", "id = \"house\"");
        replace(before, after);
        return toml;
    }

    WorkingDepartment department;
};

TEST_F(RegistersOfADepartment, HoldTheNewestOfEachWithWhoRecordedIt)
{
    const Registers before = registers();
    ASSERT_THAT(before.sterilizers, SizeIs(1));
    const RegisteredSterilizer& first = before.sterilizers.front();
    EXPECT_EQ(first.service.state, ServiceState::inService);

    SterilizerRecorded changed = first.recorded;
    changed.testMinute = 390;
    const Appended appended = bossSigns(changed, {first.id});
    const RegisteredSterilizer now = find(registers().sterilizers, first.id);
    EXPECT_EQ(now.recorded.testMinute, 390);
    EXPECT_EQ(now.seq, appended.firstSeq);
    EXPECT_EQ(now.by, "st-sup");
    EXPECT_THAT(registers().sterilizers, SizeIs(1));
}

TEST_F(RegistersOfADepartment, KnowServiceAndClockOfASterilizer)
{
    const std::string id = registers().sterilizers.front().id;
    department.record(department.operating(), SterilizerTakenOut{ServiceState::held, "smell"},
                      {id});
    department.record(department.operating(), ClockCompared{{local("05:30"), -360}, -12}, {id});
    const RegisteredSterilizer now = find(registers().sterilizers, id);
    EXPECT_EQ(now.service.state, ServiceState::held);
    EXPECT_EQ(now.service.why, "smell");
    ASSERT_TRUE(now.clock);
    EXPECT_EQ(now.clock->seconds, -12);
}

TEST_F(RegistersOfADepartment, HoldPackagingsAndDevicesInTheirNewestRevision)
{
    const SignedIn lead = department.lead();
    RegisteredPackaging wrap = find(registers().packagings, "pk-1");
    EXPECT_EQ(wrap.recorded.name, "wrap");
    wrap.recorded.packaging.form = PackageForm::rigidContainer;
    wrap.recorded.packaging.aerationMinutes = 720;
    department.record(lead, wrap.recorded, {wrap.id});
    const RegisteredPackaging now = find(registers().packagings, "pk-1");
    EXPECT_EQ(now.recorded.packaging, wrap.recorded.packaging);
    EXPECT_EQ(now.by, "st-l");
    EXPECT_THAT(registers().packagings, SizeIs(1));

    RegisteredDevice device = find(registers().devices, "dv-1");
    device.recorded.device.allowedCycles.push_back(
        {.method = Method::steam,
         .airRemoval = AirRemoval::gravity,
         .temperature = Quantity{Unit::celsius, 121'000},
         .inFahrenheit = Quantity{Unit::fahrenheit, 250'000},
         .leastMs = 1'800'000});
    department.record(lead, device.recorded, {device.id});
    EXPECT_EQ(find(registers().devices, "dv-1").recorded.device, device.recorded.device);
    EXPECT_THAT(registers().devices, SizeIs(1));
}

TEST_F(RegistersOfADepartment, KnowSinceWhenAnIncubatorIsOutOfRange)
{
    const SignedIn operating = department.operating();
    const auto say = [&](const AnyAct& act, const std::string& time) {
        must(Recorder(department.office())
                 .record(operating, {.act = act,
                                     .subjects = {"in-1"},
                                     .happenedAt = JournalTime{local(time), -360}}));
        return find(registers().incubators, "in-1");
    };
    const RegisteredIncubator before = find(registers().incubators, "in-1");
    EXPECT_EQ(before.recorded.name, "incubator");
    EXPECT_FALSE(before.outSince());

    const RegisteredIncubator out = say(IncubatorOutOfRange{}, "03:00");
    EXPECT_EQ(out.outSince(), local("03:00"));
    EXPECT_FALSE(out.isEndedBy(local("02:59")));
    EXPECT_TRUE(out.isEndedBy(local("03:00")));
    EXPECT_EQ(say(IncubatorOutOfRange{}, "02:00").outSince(), local("02:00")) << "the earlier";
    EXPECT_FALSE(find(registers().incubators, "in-1").isEndedBy(local("02:30")))
        << "it went out after that, too";

    EXPECT_EQ(say(IncubatorInRange{}, "02:30").outSince(), local("03:00"));
    const RegisteredIncubator in = say(IncubatorInRange{}, "04:00");
    EXPECT_FALSE(in.outSince());
    EXPECT_THAT(in.outOfRange, ::testing::ElementsAre(OutOfRange{local("03:00"), local("04:00")},
                                                      OutOfRange{local("02:00"), local("02:30")}));
}

TEST_F(RegistersOfADepartment, ListAnAlarmOnceAsTheWorseThatItWasClassedAs)
{
    const std::string id = registers().sterilizers.front().id;
    EXPECT_THAT(registers().sterilizers.front().alarms, IsEmpty());
    bossSigns(AlarmClassed{{"A1", AlarmEffect::exposureAffecting}}, {id});
    bossSigns(AlarmClassed{{"A2", AlarmEffect::harmless}}, {id});
    bossSigns(AlarmClassed{{"A1", AlarmEffect::harmless}}, {id});
    EXPECT_THAT(find(registers().sterilizers, id).alarms,
                ::testing::ElementsAre(ListedAlarm{"A1", AlarmEffect::exposureAffecting},
                                       ListedAlarm{"A2", AlarmEffect::harmless}));
}

TEST_F(RegistersOfADepartment, GiveTheLeastFreeNumberOfASterilizer)
{
    Registers some;
    EXPECT_EQ(freeSterilizerNumber(some), "1");
    for (const char* const id : {"sz-1", "sz-3"}) {
        RegisteredSterilizer each;
        each.id = id;
        some.sterilizers.push_back(each);
    }
    EXPECT_EQ(freeSterilizerNumber(some), "2");
}

TEST_F(RegistersOfADepartment, KnowTheProductOfALot)
{
    const std::string product = registers().products.front().id;
    department.record(department.operating(), ProductLotRecorded{"L-77", parseDate("2031-03-10")},
                      {"pl-77", product});
    const RegisteredLot lot = find(registers().lots, "pl-77");
    EXPECT_EQ(lot.product, product);
    EXPECT_EQ(lot.recorded.number, "L-77");
}

TEST(LotStates, GoByTheLastGoodDay)
{
    const Date day = *parseDate("2031-03-04");
    EXPECT_EQ(lotState(std::nullopt, day), LotState::notStated);
    EXPECT_EQ(lotState(day - 1, day), LotState::expired);
    EXPECT_EQ(lotState(day, day), LotState::expiresSoon) << "the day itself is still good";
    EXPECT_EQ(lotState(day + 14, day), LotState::expiresSoon) << "as Today names it (lotWarning)";
    EXPECT_EQ(lotState(day + 15, day), LotState::inDate);
    EXPECT_EQ(lotState(day + longestShelfDays, day), LotState::inDate);
    EXPECT_EQ(lotState(day + longestShelfDays + 1, day), LotState::slip);
}

TEST_F(RegistersOfADepartment, SomebodyNewIsRegisteredWithAPinOrNotAtAll)
{
    const SignedIn boss = department.supervisor();
    const StaffRecorded person{.name = "New One", .role = Role::operating, .badge = "N-1"};
    const auto enrolAs = [&](const SignedIn& who, const std::string& pin,
                             const std::string& newPin) {
        return enrol(department.office(), who, department.signature(who, pin), "st-new", person,
                     newPin);
    };
    EXPECT_EQ(whyOf(enrolAs(department.lead(), leadPin, "739164")), RefusalWhy::roleTooLow);
    EXPECT_EQ(whyOf(enrolAs(boss, supervisorPin, "111111")), RefusalWhy::pinTooEasy);
    EXPECT_FALSE(personById(registers().people, "st-new"));
    must(enrolAs(boss, supervisorPin, "739164"));
    EXPECT_TRUE(personById(registers().people, "st-new")->hasPin);
    (void)department.in("N-1", "739164");
    EXPECT_EQ(whyOf(enrolAs(boss, supervisorPin, "739164")), RefusalWhy::alreadyThere);
}

TEST_F(RegistersOfADepartment, WhatWouldBeRefusedIsSaidBeforeAnybodySigns)
{
    Recorder recorder(department.office());
    const SignedIn boss = department.supervisor();
    const ToRecord good{.act = StaffRecorded{.name = "A", .role = Role::viewer},
                        .subjects = {"st-a"}};
    EXPECT_FALSE(recorder.whyNot(boss, std::span(&good, 1)));
    EXPECT_FALSE(personById(registers().people, "st-a")) << "it records nothing";
    EXPECT_EQ(recorder.whyNot(department.operating(), std::span(&good, 1))->why,
              RefusalWhy::roleTooLow);
    const ToRecord taken{.act = StaffRecorded{.name = "A", .role = Role::viewer, .badge = "B-1"},
                         .subjects = {"st-a"}};
    EXPECT_EQ(recorder.whyNot(boss, std::span(&taken, 1))->why, RefusalWhy::badgeTaken);
    const ToRecord nameless{.act = StaffRecorded{.role = Role::viewer}, .subjects = {"st-a"}};
    const auto refusal = recorder.whyNot(boss, std::span(&nameless, 1));
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->why, RefusalWhy::malformed);
    EXPECT_THAT(refusal->detail, ::testing::HasSubstr("\"name\""))
        << "by it a form finds its field";
}

TEST_F(RegistersOfADepartment, APolicysFileIsExaminedAgainstWhatDecidesNow)
{
    const std::string toml = withValue("value = \"each-day\"", "value = \"every-load\"");
    const auto answer = examinePolicy(toml, "house.toml", registers().policies);
    const auto& exam = std::get<PolicyExam>(answer);
    ASSERT_THAT(exam.differences, SizeIs(1));
    EXPECT_EQ(exam.differences[0], (PolicyDifference{"bi", "steam", "each-day", "every-load"}));
    EXPECT_FALSE(exam.decidesNow);
    EXPECT_FALSE(exam.isTaken);
    EXPECT_THAT(exam.milder, IsEmpty());

    const SignedIn boss = department.supervisor();
    must(Recorder(department.office())
             .record(boss, revisionOf(exam, registers().policies, department.office().place().ids),
                     department.signature(boss, supervisorPin)));
    const Registers now = registers();
    ASSERT_THAT(now.policies, SizeIs(2));
    EXPECT_EQ(now.policies.front().recorded.name, "house");
    EXPECT_TRUE(std::get<PolicyExam>(examinePolicy(toml, "house.toml", now.policies)).decidesNow);

    // The same id and revision with another text.
    const std::string other = withValue("value = \"each-day\"", "value = \"weekly\"");
    const auto twin = std::get<PolicyExam>(examinePolicy(other, "house.toml", now.policies));
    EXPECT_TRUE(twin.isTaken);
    EXPECT_THAT(twin.milder, SizeIs(1));
    // A further revision keeps the id under which the first stands.
    EXPECT_EQ(revisionOf(twin, now.policies, department.office().place().ids).subjects.front(),
              now.policies.front().id);
}

TEST_F(RegistersOfADepartment, AWrongPolicyIsSaidByLineAndField)
{
    const std::string toml = withValue("value = 5\n", "value = 6\n");
    const auto answer = examinePolicy(toml, "house.toml", registers().policies);
    const auto& errors = std::get<std::vector<PolicyError>>(answer);
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].field, "printout.clock_tolerance_minutes.value");
    const auto lines = std::count(
        toml.begin(), toml.begin() + static_cast<std::ptrdiff_t>(toml.find("value = 6\n")), '\n');
    EXPECT_EQ(errors[0].line, lines + 1);
}

TEST(PolicyRows, AreEverySettingOfTheFileWithItsSource)
{
    const std::vector<PolicyRow> rows = policyRows(defaultPolicyText());
    ASSERT_FALSE(rows.empty());
    EXPECT_EQ(rows.front(), (PolicyRow{.section = "printout",
                                       .name = "clock_tolerance_minutes",
                                       .value = "5",
                                       .source = "common practice, no source",
                                       .confidence = "common-practice"}));
    const auto value = [&](const std::string& section, const std::string& name) {
        const auto row = std::ranges::find_if(rows, [&](const PolicyRow& each) {
            return each.section == section && each.name == name;
        });
        return row == rows.end() ? "missing" : row->value;
    };
    EXPECT_EQ(value("leak", "most_mbar_per_minute"), "1.3");
    EXPECT_EQ(value("pcd", "types_steam"), "5, 6");
    EXPECT_EQ(value("air_removal", "also_for"), "");
    EXPECT_EQ(value("bi", "routine_blocks"), "false");
    EXPECT_THAT(policyRows("no = policy"), IsEmpty());
}

TEST_F(RegistersOfADepartment, ABackupIsWrittenBesideOtherWork)
{
    const SignedIn operating = department.operating();
    EXPECT_EQ(whyOf(sealForBackup(department.office(), operating)), RefusalWhy::roleTooLow);
    const Seal seal = must(sealForBackup(department.office(), department.lead()));
    const std::string id = registers().sterilizers.front().id;
    department.record(operating, ClockCompared{{local("05:30"), -360}, 3}, {id});
    NoProgress progress;
    const auto target = department.folder() / "copy.journal";
    const Backup made = writeBackup(department.file(), seal, target, progress);
    EXPECT_TRUE(made.report.sound());
    EXPECT_EQ(made.report.head.seq, seal.head.seq + 1) << "it holds what came after the seal";
    EXPECT_TRUE(std::filesystem::exists(target));
    EXPECT_THROW((void)writeBackup(department.file(), seal, target, progress), StoreError)
        << "nothing is written over a file";
}

} // namespace
} // namespace loadwarden
