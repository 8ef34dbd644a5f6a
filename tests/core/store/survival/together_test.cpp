// Several processes at once on one journal.
#include "core/store/lot_numbers.h"
#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/survival/child.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iostream>
#include <memory>
#include <set>
#include <thread>

namespace loadwarden {
namespace {

using loadwarden::testing::Acknowledged;
using loadwarden::testing::Acknowledger;
using loadwarden::testing::all;
using loadwarden::testing::Child;
using loadwarden::testing::noteAbout;
using loadwarden::testing::TestJournal;

class Together : public loadwarden::testing::OnBothEngines {
protected:
    [[nodiscard]] static int processes() { return GetParam() == Dialect::Engine::sqlite ? 2 : 4; }

    /// Runs the work in that many processes at once; what each was told.
    template <class Work>
    std::vector<std::vector<Acknowledged>> run(const Work& work)
    {
        std::vector<std::unique_ptr<Child>> children;
        for (int i = 0; i < processes(); ++i) {
            children.push_back(
                std::make_unique<Child>([&work, i](const Acknowledger& to) { work(i, to); }));
        }
        std::vector<std::vector<Acknowledged>> said;
        for (const auto& child : children) {
            said.push_back(child->end());
            EXPECT_EQ(child->status(), 0);
        }
        return said;
    }

    VerifyReport verify(const std::vector<Head>& expected)
    {
        Connection connection(place(), {.access = Access::read});
        NoProgress progress;
        return verifyJournal(connection, {.expected = expected}, progress);
    }
};

INSTANTIATE_TEST_SUITE_P(Survival, Together, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

constexpr int each = 100;

TEST_P(Together, NoActIsLost)
{
    {
        TestJournal::make(place());
    }
    const auto said = run([this](int who, const Acknowledger& to) {
        TestJournal journal(place());
        for (int i = 0; i < each; ++i) {
            to.say(journal.append(noteAbout({"st-" + std::to_string(who)})).head);
        }
    });
    std::vector<Head> expected;
    for (const auto& one : said) {
        EXPECT_EQ(one.size(), each);
        for (const Acknowledged& act : one) {
            expected.push_back({act.seq, act.hash});
        }
    }
    const VerifyReport report = verify(expected);
    EXPECT_TRUE(report.sound());
    EXPECT_EQ(report.entries, 1 + processes() * each);
}

TEST_P(Together, NoLotControlNumberIsGivenTwice)
{
    {
        TestJournal::make(place());
    }
    const auto said = run([this](int, const Acknowledger& to) {
        Connection connection(place());
        for (int i = 0; i < each; ++i) {
            WriteTransaction transaction(connection);
            const auto lot = reserveLot(transaction, "3", Date{22'342});
            transaction.commit();
            to.say({}, lot.sequence);
        }
    });
    std::set<std::int64_t> numbers;
    for (const auto& one : said) {
        for (const Acknowledged& act : one) {
            EXPECT_TRUE(numbers.insert(act.tag).second) << act.tag << " twice";
        }
    }
    EXPECT_EQ(numbers.size(), static_cast<std::size_t>(processes() * each));
    EXPECT_EQ(*numbers.rbegin(), processes() * each) << "without gaps";
}

TEST_P(Together, AStaleSightIsRefused)
{
    {
        TestJournal::make(place());
    }
    // Everybody signs one load over and over, each time on what he has just read.
    const auto said = run([this](int, const Acknowledger& to) {
        TestJournal journal(place());
        std::int64_t refused = 0;
        for (int done = 0; done < each;) {
            EntryDraft draft = noteAbout({"ld-1"});
            draft.unchanged = {"ld-1"};
            {
                ReadSnapshot snapshot(*journal.connection);
                draft.basedOn = JournalReader(snapshot).head().seq;
            }
            std::this_thread::sleep_for(std::chrono::microseconds(200)); // who signs, thinks
            const auto result = journal.store->append(std::span(&draft, 1));
            if (const auto* const appended = std::get_if<Appended>(&result)) {
                to.say(appended->head, refused);
                ++done;
            } else {
                ++refused;
            }
        }
    });
    std::int64_t refused = 0;
    for (const auto& one : said) {
        EXPECT_EQ(one.size(), each);
        refused += one.empty() ? 0 : one.back().tag;
    }
    EXPECT_GT(refused, 0) << "they never met, so that nothing was shown";
    EXPECT_TRUE(verify({}).sound());
    Connection connection(place(), {.access = Access::read});
    ReadSnapshot snapshot(connection);
    std::int64_t before = 1;
    for (const StoredEntry& entry : all(JournalReader(snapshot).about("ld-1"))) {
        EXPECT_EQ(std::get<Envelope>(readEnvelope(entry.bytes)).basedOn, before)
            << "entry " << entry.seq << " was signed on a stale sight";
        before = entry.seq;
    }
    EXPECT_EQ(before, 1 + processes() * each);
    std::cout << processes() << " processes: " << processes() * each << " signed, " << refused
              << " stale sights refused\n";
}

} // namespace
} // namespace loadwarden
