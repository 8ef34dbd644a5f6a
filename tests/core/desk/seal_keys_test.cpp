#include "core/desk/sealing.h"
#include "core/store/posix_file.h"
#include "core/store/store_error.h"
#include "core/store/verify.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

namespace loadwarden::testing {
namespace {

class SealKeys : public ::testing::Test {
protected:
    VerifyReport verify()
    {
        NoProgress progress;
        Office& office = department.office();
        return verifyJournal(office.connection(),
                             {.seals = keptSeals(office.place(), office.identity().id)}, progress);
    }
    OrRefusal<NewSealKey> renew(const SignedIn& who, const std::string& pin,
                                const std::string& why = "the disk was lost")
    {
        return recordSealKey(department.office(), who, department.signature(who, pin), why);
    }
    [[nodiscard]] std::filesystem::path keyFile() const
    {
        return department.folder() / "keep" / "seal.key";
    }

    WorkingDepartment department;
};

TEST_F(SealKeys, ALostKeyIsReplacedByASupervisorAndTheJournalSaysSo)
{
    const VerifyReport before = verify();
    ASSERT_EQ(before.sealKeys.size(), 1U);
    EXPECT_EQ(before.sealKeys[0].key.recorded, 0);
    EXPECT_EQ(before.sealKeys[0].held, before.sealsHeld);
    EXPECT_EQ(whyOf(renew(department.supervisor(), supervisorPin)), RefusalWhy::keyKnown);

    std::filesystem::remove(keyFile());
    EXPECT_EQ(faultOf([&] { (void)sealNow(department.office()); }), StoreFault::missing);
    EXPECT_EQ(whyOf(renew(department.lead(), leadPin)), RefusalWhy::roleTooLow);
    EXPECT_FALSE(std::filesystem::exists(keyFile())) << "who may not makes none";
    const NewSealKey made = must(renew(department.supervisor(), supervisorPin));
    EXPECT_FALSE(made.wasThere);
    EXPECT_EQ(made.seal.head, made.appended.head);
    const VerifyReport after = verify();
    EXPECT_TRUE(after.sound());
    ASSERT_EQ(after.sealKeys.size(), 2U);
    EXPECT_EQ(after.sealKeys[0], before.sealKeys[0]);
    EXPECT_EQ(after.sealKeys[1].key, (JournalKey{made.key, made.appended.firstSeq}));
    EXPECT_EQ(after.sealKeys[1].from, made.appended.firstSeq);
    EXPECT_EQ(after.sealKeys[1].held, 2) << "in the journal, and outside";
    EXPECT_EQ(sealNow(department.office()).key, made.key);
}

TEST_F(SealKeys, AKeyThatTheJournalDoesNotKnowSealsNothingUntilItIsRecorded)
{
    std::filesystem::remove(keyFile());
    makeKeyIfNone(department.place()); // as by founding another journal
    EXPECT_EQ(faultOf([&] { (void)sealNow(department.office()); }), StoreFault::denied);
    EXPECT_EQ(faultOf([&] { (void)sealDaily(department.office()); }), StoreFault::denied);
    const NewSealKey made = must(renew(department.supervisor(), supervisorPin));
    EXPECT_TRUE(made.wasThere);
    EXPECT_TRUE(verify().sound());
}

TEST_F(SealKeys, ASealOfAKeyThatNobodyRecordedIsAFault)
{
    const SealKey forgers = SealKey::create();
    Office& office = department.office();
    const VerifyReport whole = verify();
    const Seal forged = makeSeal(office.identity().id, whole.head, {department.now(), 0}, forgers);
    NoProgress progress;
    const VerifyReport report = verifyJournal(office.connection(), {.seals = {forged}}, progress);
    ASSERT_EQ(report.faults.size(), 1U);
    EXPECT_EQ(report.faults[0].kind, JournalFaultKind::sealOfUnknownKey);
}

TEST_F(SealKeys, NobodyTypesOneInOrTakesOneBack)
{
    const SignedIn boss = department.supervisor();
    const std::string key(64, 'a');
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(boss, {.act = SealKeyRecorded{key, "why"}, .subjects = {"fa-1"}},
                                department.signature(boss, supervisorPin))),
              RefusalWhy::otherDoor);
    std::filesystem::remove(keyFile());
    const NewSealKey made = must(renew(boss, supervisorPin));
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(boss,
                                {.act = EntryVoided{},
                                 .subjects = {"fa-1"},
                                 .reason = "why",
                                 .supersedes = made.appended.firstSeq},
                                department.signature(boss, supervisorPin))),
              RefusalWhy::notCorrectable);
}

} // namespace
} // namespace loadwarden::testing
