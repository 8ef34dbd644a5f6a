#include "core/store/journal_store.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace loadwarden {
namespace {

using loadwarden::testing::all;
using loadwarden::testing::dropGuards;
using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::seqsOf;
using loadwarden::testing::tamper;
using loadwarden::testing::TestJournal;
using loadwarden::testing::testTime;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

class AJournal : public loadwarden::testing::OnBothEngines {};

INSTANTIATE_TEST_SUITE_P(Store, AJournal, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

Envelope envelopeOf(const StoredEntry& entry)
{
    return std::get<Envelope>(readEnvelope(entry.bytes));
}

TEST_P(AJournal, BeginsWithTheEntryThatNamesIt)
{
    TestJournal journal = TestJournal::make(place());
    ReadSnapshot snapshot(*journal.connection);
    JournalReader reader(snapshot);
    const Envelope first = envelopeOf(reader.entry(1).value());
    EXPECT_EQ(first.kind, "journal.opened");
    EXPECT_EQ(first.prev, Hash{});
    EXPECT_EQ(first.body, R"({"facility":"Facility","journal":"jn-1","timeZone":"Europe/Oslo"})");
    EXPECT_EQ(reader.head(), journal.store->lastKnown());
}

TEST_P(AJournal, IsBegunOnceAndBeforeAnythingElse)
{
    TestJournal journal(place(), {.access = Access::create});
    EXPECT_EQ(faultOf([&] { journal.append(noteAbout({"a"})); }), StoreFault::misuse);
    journal.store->begin({"jn-1", "F", "UTC"}, "ws-1");
    EXPECT_EQ(faultOf([&] {
                  journal.store->begin({"jn-1", "F", "UTC"}, "ws-1");
              }),
              StoreFault::exists);
}

TEST_P(AJournal, KeepsWhatIsAppendedAndAddsItsPlace)
{
    TestJournal journal = TestJournal::make(place());
    const Head first = journal.store->lastKnown();
    EntryDraft draft = noteAbout({"ld-1", "it-1"}, "grün 鋼");
    draft.happenedAt = {testTime - Duration::hours(3), -360};
    draft.happenedFrom = TimeSource::typed;
    draft.version = 4;
    draft.reason = "said \"so\"\n";
    draft.supersedes = 1;
    draft.basedOn = 1;
    const Appended appended = journal.append(draft);
    EXPECT_EQ(appended.firstSeq, 2);
    EXPECT_EQ(appended.head.seq, 2);
    EXPECT_EQ(appended.clockBehind, std::nullopt);

    ReadSnapshot snapshot(*journal.connection);
    const StoredEntry stored = JournalReader(snapshot).entry(2).value();
    EXPECT_EQ(stored.hash, appended.head.hash);
    EXPECT_EQ(stored.hash, hashOf(stored.bytes));
    const Envelope expected{.seq = 2,
                            .prev = first.hash,
                            .recordedAt = {testTime, 60}, // Oslo in February
                            .happenedAt = draft.happenedAt,
                            .happenedFrom = TimeSource::typed,
                            .actor = "st-1",
                            .role = "technician",
                            .workstation = "ws-1",
                            .kind = "note",
                            .version = 4,
                            .subjects = {"ld-1", "it-1"},
                            .reason = "said \"so\"\n",
                            .supersedes = 1,
                            .basedOn = 1,
                            .body = draft.body};
    EXPECT_EQ(envelopeOf(stored), expected);
}

TEST_P(AJournal, IsReadByNumberRangeAndSubject)
{
    TestJournal journal = TestJournal::make(place());
    std::vector<EntryDraft> drafts;
    for (int i = 0; i < 600; ++i) { // more than the cursor holds at a time
        drafts.push_back(noteAbout(i % 2 == 0 ? std::vector<std::string>{"even", "any"}
                                              : std::vector<std::string>{"any"}));
    }
    std::ignore = journal.store->append(drafts);
    ReadSnapshot snapshot(*journal.connection);
    JournalReader reader(snapshot);
    EXPECT_EQ(reader.head().seq, 601);
    EXPECT_EQ(reader.entry(602), std::nullopt);
    EXPECT_THAT(seqsOf(all(reader.range(3, 5))), ElementsAre(3, 4, 5));
    EXPECT_EQ(all(reader.range(1)).size(), 601);
    EXPECT_EQ(all(reader.about("any")).size(), 600);
    EXPECT_EQ(all(reader.about("even")).size(), 300);
    EXPECT_THAT(seqsOf(all(reader.about("even", 3, 8))), ElementsAre(4, 6, 8));
    EXPECT_THAT(all(reader.about("none")), IsEmpty());
    EXPECT_THAT(all(reader.about("eve")), IsEmpty());
}

TEST_P(AJournal, RecordsAllOfACallOrNothing)
{
    TestJournal journal = TestJournal::make(place());
    std::array drafts{noteAbout({"a"}), noteAbout({"b"})};
    drafts[1].body = R"({"b":1,"a":2})";
    EXPECT_EQ(faultOf([&] { std::ignore = journal.store->append(drafts); }), StoreFault::misuse);
    ReadSnapshot snapshot(*journal.connection);
    EXPECT_EQ(JournalReader(snapshot).head().seq, 1);
    EXPECT_THAT(all(JournalReader(snapshot).about("a")), IsEmpty());
}

TEST_P(AJournal, RefusesWhatWouldBeNoEntry)
{
    TestJournal journal = TestJournal::make(place());
    const auto refused = [&journal](auto change) {
        EntryDraft draft = noteAbout({"a", "b"});
        change(draft);
        return faultOf([&] { journal.append(draft); }) == StoreFault::misuse;
    };
    EXPECT_TRUE(refused([](EntryDraft& d) { d.kind = ""; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.kind = "a\"b"; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.subjects = {"a", "a"}; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.subjects = {""}; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.subjects = {"a\nb"}; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.body = ""; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.body = "{ }"; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.body = R"({"a":1.5})"; }));
    EXPECT_TRUE(refused([](EntryDraft& d) { d.reason = "u\xCC\x88"; })) << "decomposed";
    EXPECT_TRUE(refused([](EntryDraft& d) { d.basedOn = 2; })) << "not there yet";
    EXPECT_TRUE(refused([](EntryDraft& d) { d.supersedes = -1; }));
    EXPECT_FALSE(refused([](EntryDraft&) {}));
}

TEST_P(AJournal, RefusesAStaleSightWithWhatHasComeSince)
{
    TestJournal journal = TestJournal::make(place());
    journal.append(noteAbout({"ld-1"}));         // 2
    journal.append(noteAbout({"it-1", "ld-1"})); // 3
    journal.append(noteAbout({"ld-2"}));         // 4
    const auto sign = [&journal](std::int64_t basedOn) {
        EntryDraft draft = noteAbout({"ld-1"});
        draft.basedOn = basedOn;
        draft.unchanged = {"ld-1", "it-1"};
        return journal.store->append(std::span(&draft, 1));
    };
    const auto stale = sign(2);
    ASSERT_TRUE(std::holds_alternative<StaleSight>(stale));
    const auto& since = std::get<StaleSight>(stale).since;
    ASSERT_THAT(seqsOf(since), ElementsAre(3));
    EXPECT_THAT(since[0].bytes, HasSubstr("it-1"));
    EXPECT_EQ(since[0].hash, hashOf(since[0].bytes));
    EXPECT_THAT(seqsOf(std::get<StaleSight>(sign(0)).since), ElementsAre(2, 3));
    EXPECT_EQ(journal.store->lastKnown().seq, 4) << "nothing was recorded";

    ASSERT_TRUE(std::holds_alternative<Appended>(sign(3)));
    EXPECT_THAT(seqsOf(std::get<StaleSight>(sign(4)).since), ElementsAre(5));
}

TEST_P(AJournal, RecordsTheTimeThatTheClockShowsAndSaysWhenItWentBack)
{
    TestJournal journal = TestJournal::make(place());
    journal.clock->set(testTime - Duration::seconds(2));
    EXPECT_EQ(journal.append(noteAbout({"a"})).clockBehind, std::nullopt);
    journal.clock->set(testTime - Duration::hours(3));
    const Appended back = journal.append(noteAbout({"a"}));
    EXPECT_EQ(back.clockBehind, Duration::hours(3) - Duration::seconds(2));
    EXPECT_EQ(back.recordedAt.at, testTime - Duration::hours(3));
    EXPECT_EQ(journal.append(noteAbout({"a"})).clockBehind, std::nullopt) << "said once";
}

TEST_P(AJournal, RefusesToGoOnFromAHeadThatIsNotTheChains)
{
    TestJournal journal = TestJournal::make(place());
    for (int i = 0; i < 4; ++i) {
        journal.append(noteAbout({"a"}));
    }
    const auto refuses = [&](const std::string& sql) {
        tamper(*journal.connection, {sql});
        TestJournal other(place()); // knows nothing from before
        return faultOf([&] { other.append(noteAbout({"a"})); }) == StoreFault::headChanged;
    };
    dropGuards(*journal.connection, "j_entry");
    EXPECT_TRUE(refuses("UPDATE p_head SET seq = 4"));
    EXPECT_TRUE(refuses("UPDATE p_head SET seq = 5, hash = 'x'"));
    EXPECT_TRUE(refuses("DELETE FROM p_head"));
    EXPECT_TRUE(refuses("INSERT INTO p_head SELECT 1, seq, hash FROM j_entry WHERE seq = 4"));
    EXPECT_FALSE(refuses("UPDATE p_head SET seq = 5, hash = (SELECT hash FROM j_entry WHERE seq = "
                         "5)"));
    EXPECT_TRUE(refuses("UPDATE j_entry SET bytes = replace(bytes, 'st-1', 'st-2') WHERE seq = 6"));
    tamper(*journal.connection,
           {"UPDATE j_entry SET bytes = replace(bytes, 'st-2', 'st-1') WHERE seq = 6"});
    EXPECT_TRUE(refuses("DELETE FROM j_entry WHERE seq = 6"));
}

TEST_P(AJournal, RemembersTheHeadThatItKnew)
{
    TestJournal journal = TestJournal::make(place());
    journal.append(noteAbout({"a"}));
    journal.append(noteAbout({"b"}));
    dropGuards(*journal.connection, "j_entry");
    // A consistent database whose newest entry was taken out whole.
    tamper(*journal.connection,
           {"DELETE FROM j_entry WHERE seq = 3", "DELETE FROM p_subject WHERE seq = 3",
            "UPDATE p_head SET seq = 2, hash = (SELECT hash FROM j_entry WHERE seq = 2)"});
    EXPECT_EQ(faultOf([&] { journal.append(noteAbout({"a"})); }), StoreFault::headChanged);
    TestJournal other(place());
    EXPECT_EQ(other.append(noteAbout({"a"})).head.seq, 3) << "only a seal can show it";
}

TEST_P(AJournal, SharesATransactionWithItsOwner)
{
    TestJournal journal = TestJournal::make(place());
    const EntryDraft draft = noteAbout({"a"});
    {
        WriteTransaction transaction(*journal.connection);
        std::ignore = journal.store->append(transaction, std::span(&draft, 1));
    }
    EXPECT_EQ(journal.append(draft).head.seq, 2) << "not committed, so not recorded";
    {
        WriteTransaction transaction(*journal.connection);
        std::ignore = journal.store->append(transaction, std::span(&draft, 1));
        transaction.commit();
    }
    EXPECT_EQ(journal.append(draft).head.seq, 4);
}

TEST_P(AJournal, KeepsOnReadingOneMomentWhileAnotherAppends)
{
    TestJournal journal = TestJournal::make(place());
    journal.append(noteAbout({"a"}));
    Connection other(place(), {.access = Access::read});
    ReadSnapshot snapshot(other);
    JournalReader reader(snapshot);
    EXPECT_EQ(reader.head().seq, 2);
    journal.append(noteAbout({"a"}));
    EXPECT_EQ(reader.head().seq, 2);
    EXPECT_EQ(all(reader.range(1)).size(), 2);
    EXPECT_EQ(all(reader.about("a")).size(), 1);
}

} // namespace
} // namespace loadwarden
