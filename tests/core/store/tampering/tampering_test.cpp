#include "core/store/seal_book.h"
#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/tampering/contents.h"
#include "tests/core/store/tampering/kinds.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>
#include <map>

namespace loadwarden {

void PrintTo(const JournalFault& fault, std::ostream* out)
{
    *out << sentenceOf(fault);
}

namespace {

using loadwarden::testing::Contents;
using loadwarden::testing::entriesOfJournal;
using loadwarden::testing::noteAbout;
using loadwarden::testing::sealEvery;
using loadwarden::testing::Tampering;
using loadwarden::testing::tamperings;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;
using ::testing::Contains;
using ::testing::IsEmpty;

namespace fs = std::filesystem;

class ATampering : public ::testing::Test {
protected:
    ATampering()
    {
        TestJournal journal = TestJournal::make(m_whole);
        SealBook book(*journal.connection, *journal.store, *journal.clock,
                      Zone::find("UTC").value(), m_key, m_folder / "seals.jsonl");
        for (std::size_t seq = 2; seq <= entriesOfJournal; ++seq) {
            const std::string text = std::to_string(seq);
            m_paper =
                journal.append(noteAbout({"ld-" + std::to_string(seq % 3), "it-" + text}, text))
                    .head;
            if (seq % sealEvery == 0) {
                (void)book.seal();
            }
        }
        m_contents = Contents::of(*journal.connection);
    }

    /// What verification finds in a copy with these contents; with the head on paper, if wanted.
    std::vector<JournalFault> faultsOf(const Contents& contents, bool withPaper)
    {
        fs::copy_file(m_whole.path, m_tampered.path, fs::copy_options::overwrite_existing);
        Connection connection(m_tampered, {.syncing = Syncing::off});
        contents.putInto(connection);
        VerifyRequest request{.keys = {m_key.publicKey()}, .pages = false};
        if (withPaper) {
            request.expected = {m_paper};
        }
        NoProgress progress;
        return verifyJournal(connection, request, progress).faults;
    }

    TempFolder m_folder;
    SqliteFile m_whole{m_folder / "whole.lw"};
    SqliteFile m_tampered{m_folder / "tampered.lw"};
    SealKey m_key = SealKey::create();
    Head m_paper;
    Contents m_contents;
};

TEST_F(ATampering, IsNotSeenWhereThereIsNone)
{
    EXPECT_THAT(faultsOf(m_contents, true), IsEmpty());
}

TEST_F(ATampering, IsFoundAndNamed)
{
    constexpr int rounds = 1000;
    struct Count {
        int done = 0;
        int named = 0;
    };
    std::map<std::string_view, Count> counts;
    std::mt19937_64 random(20310304);
    for (int round = 0; round < rounds; ++round) {
        // Each kind in turn, each time elsewhere and otherwise.
        const Tampering& tampering =
            tamperings()[static_cast<std::size_t>(round) % tamperings().size()];
        Contents contents = m_contents;
        const JournalFault expected = tampering.act(contents, random);
        const auto faults = faultsOf(contents, tampering.needsWitness);
        EXPECT_THAT(faults, Contains(expected)) << tampering.name << ", round " << round;
        Count& count = counts[tampering.name];
        ++count.done;
        count.named += std::ranges::find(faults, expected) != faults.end() ? 1 : 0;
    }
    for (const Tampering& tampering : tamperings()) {
        const Count& count = counts[tampering.name];
        std::cout << count.named << " of " << count.done << " named: " << tampering.name
                  << (tampering.needsWitness ? " (by a head on paper)" : "") << '\n';
        EXPECT_EQ(count.named, count.done) << tampering.name;
        EXPECT_GT(count.done, 30) << tampering.name;
    }
}

TEST_F(ATampering, OfANeededWitnessIsNotSeenWithoutIt)
{
    // Why heads are printed and seals are kept outside.
    std::mt19937_64 random(1);
    for (const Tampering& tampering : tamperings()) {
        if (tampering.needsWitness) {
            Contents contents = m_contents;
            (void)tampering.act(contents, random);
            EXPECT_THAT(faultsOf(contents, false), IsEmpty()) << tampering.name;
        }
    }
}

} // namespace
} // namespace loadwarden
