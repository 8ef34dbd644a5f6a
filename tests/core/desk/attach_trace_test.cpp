#include "core/store/attachments.h"
#include "core/store/verify.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// A recorder's file is kept with the act that says what it shows, both or neither.

namespace loadwarden::testing {
namespace {

const std::string file = "s;C\n0;132.1\n60;132.4\n";

class AttachingATrace : public ::testing::Test {
protected:
    AttachingATrace()
    {
        department.passBowieDick();
        load = department.runLoad(Implant::no);
        department.readLoad(load);
        department.incubate(load);
        department.readBiological(load, local("08:40", "2031-03-05"));
    }

    TraceRead reading(Shown exposure)
    {
        const CycleSpecification specification =
            department.view(load).folded.record.specification.value();
        TraceRead read;
        read.fileName = "cycle.csv";
        read.mapping = "{}";
        read.findings.specification = specification.id;
        read.findings.revision = specification.revision;
        read.findings.exposure = exposure;
        return read;
    }

    OrRefusal<Appended> attach(const TraceRead& read, const std::string& id = "tr-1")
    {
        return Recorder(department.office())
            .attach(department.operating(), {.act = read, .subjects = {id, load}}, file);
    }

    std::int64_t filesKept()
    {
        ReadSnapshot snapshot(department.office().connection());
        Statement count = snapshot.statement("SELECT COUNT(*) FROM j_attachment");
        return count.step() ? count.integer(0) : -1;
    }

    WorkingDepartment department;
    std::string load;
};

TEST_F(AttachingATrace, ChangesTheDecisionAndKeepsTheFile)
{
    ASSERT_EQ(department.view(load).decision.verdict, Verdict::release);
    must(attach(reading(Shown::notMet)));
    const CycleView view = department.view(load);
    EXPECT_EQ(view.decision.verdict, Verdict::reprocess);
    ASSERT_EQ(view.folded.record.load.traces.size(), 1U);
    EXPECT_EQ(view.folded.record.load.traces[0].id, "tr-1");

    {
        ReadSnapshot snapshot(department.office().connection());
        EXPECT_EQ(readAttachment(snapshot, hexOf(hashOf(file))), file);
    }
    NoProgress progress;
    EXPECT_TRUE(verifyJournal(department.office().connection(), {}, progress).sound());
}

TEST_F(AttachingATrace, KeepsNothingOfWhatIsRefused)
{
    EXPECT_EQ(
        whyOf(Recorder(department.office())
                  .attach(department.operating(),
                          {.act = reading(Shown::met), .subjects = {"tr-1", "ld-none"}}, file)),
        RefusalWhy::unknown);
    TraceRead malformed = reading(Shown::met);
    malformed.fileName.clear();
    EXPECT_EQ(whyOf(attach(malformed)), RefusalWhy::malformed);
    EXPECT_EQ(filesKept(), 0);
    must(attach(reading(Shown::met)));
    EXPECT_EQ(whyOf(attach(reading(Shown::met))), RefusalWhy::alreadyThere);
    must(attach(reading(Shown::met), "tr-2"));
    EXPECT_EQ(filesKept(), 1) << "one file, however often it is attached";
}

TEST_F(AttachingATrace, HasADoorOfItsOwn)
{
    Recorder recorder(department.office());
    TraceRead read = reading(Shown::met);
    read.content = hexOf(hashOf(file));
    const auto record = [&](const TraceRead& act, std::int64_t supersedes) {
        const SignedIn& lead = department.lead();
        return recorder.record(lead,
                               {.act = act,
                                .subjects = {"tr-1", load},
                                .reason = supersedes == 0 ? "" : "by the right specification",
                                .supersedes = supersedes},
                               department.signature(lead, leadPin));
    };
    EXPECT_EQ(whyOf(record(read, 0)), RefusalWhy::otherDoor);
    EXPECT_EQ(whyOf(recorder.attach(department.operating(),
                                    {.act = PhysicalVerified{}, .subjects = {load}}, file)),
              RefusalWhy::pinNeeded);

    const Appended first = must(attach(reading(Shown::notMet)));
    TraceRead other = read;
    other.content = hexOf(hashOf("never kept"));
    EXPECT_EQ(whyOf(record(other, first.firstSeq)), RefusalWhy::unknown);
    must(record(read, first.firstSeq));
    EXPECT_EQ(department.view(load).folded.record.load.traces.at(0).exposure, Shown::met);
}

TEST_F(AttachingATrace, IsOfACycleThatHasEnded)
{
    const SignedIn& who = department.operating();
    department.setClock(local("09:00", "2031-03-05"));
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .attach(who,
                                {.act = reading(Shown::met),
                                 .subjects = {"tr-1", load},
                                 .happenedAt = JournalTime{local("07:00"), -360}},
                                file)),
              RefusalWhy::beforeEnd);
}

} // namespace
} // namespace loadwarden::testing
