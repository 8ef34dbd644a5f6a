#include "core/journal/chain.h"
#include "core/journal/envelope.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {

void PrintTo(const ChainFault& fault, std::ostream* out)
{
    *out << "entry " << fault.seq << " kind " << static_cast<int>(fault.kind);
}

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

struct Row {
    std::string bytes;
    Hash hash;
};

std::vector<Row> journalOf(int entries)
{
    std::vector<Row> rows;
    Hash prev;
    for (int i = 1; i <= entries; ++i) {
        Envelope envelope;
        envelope.seq = i;
        envelope.prev = prev;
        envelope.kind = "note";
        envelope.body = R"({"n":)" + std::to_string(i) + "}";
        rows.push_back({writeEnvelope(envelope), {}});
        rows.back().hash = prev = hashOf(rows.back().bytes);
    }
    return rows;
}

std::vector<ChainFault> faultsOf(const std::vector<Row>& rows, const Head& after = {})
{
    ChainWalk walk(after);
    for (const Row& row : rows) {
        walk.take(row.bytes, row.hash);
    }
    return walk.faults();
}

TEST(Chain, HoldsAsWritten)
{
    const auto rows = journalOf(5);
    ChainWalk walk;
    for (const Row& row : rows) {
        walk.take(row.bytes, row.hash);
    }
    EXPECT_THAT(walk.faults(), IsEmpty());
    EXPECT_EQ(walk.head(), (Head{5, rows.back().hash}));
}

TEST(Chain, GoesOnFromATrustedHead)
{
    const auto rows = journalOf(5);
    const std::vector<Row> tail(rows.begin() + 3, rows.end());
    EXPECT_THAT(faultsOf(tail, {3, rows[2].hash}), IsEmpty());
    EXPECT_THAT(faultsOf(tail, {3, rows[1].hash}),
                ElementsAre(ChainFault{4, ChainFaultKind::unlinked}));
}

TEST(Chain, ShowsTheEntryWhoseBytesWereEdited)
{
    auto rows = journalOf(5);
    rows[2].bytes[rows[2].bytes.size() - 3] = '9';
    EXPECT_THAT(faultsOf(rows), ElementsAre(ChainFault{3, ChainFaultKind::edited}));
}

TEST(Chain, ShowsTheEntryAfterOneThatWasEditedWithItsHash)
{
    auto rows = journalOf(5);
    rows[2].bytes[rows[2].bytes.size() - 3] = '9';
    rows[2].hash = hashOf(rows[2].bytes);
    EXPECT_THAT(faultsOf(rows), ElementsAre(ChainFault{4, ChainFaultKind::unlinked}));
}

TEST(Chain, ShowsWhereOneIsMissing)
{
    auto rows = journalOf(5);
    rows.erase(rows.begin() + 2);
    EXPECT_THAT(faultsOf(rows), testing::Contains(ChainFault{3, ChainFaultKind::unlinked}));
    EXPECT_THAT(faultsOf(rows), testing::Contains(ChainFault{3, ChainFaultKind::number}));
}

TEST(Chain, ShowsTwoThatChangedPlaces)
{
    auto rows = journalOf(5);
    std::swap(rows[1], rows[2]);
    EXPECT_THAT(faultsOf(rows), testing::IsSupersetOf({ChainFault{2, ChainFaultKind::unlinked},
                                                       ChainFault{3, ChainFaultKind::unlinked},
                                                       ChainFault{4, ChainFaultKind::unlinked}}));
}

TEST(Chain, ShowsWhatIsNoEntry)
{
    auto rows = journalOf(2);
    rows[1].bytes = "lost";
    EXPECT_THAT(faultsOf(rows), testing::Contains(ChainFault{2, ChainFaultKind::unreadable}));
}

TEST(Chain, CannotShowATailCutOff)
{
    auto rows = journalOf(5);
    rows.pop_back();
    EXPECT_THAT(faultsOf(rows), IsEmpty()) << "that is what seals are for";
}

TEST(Place, IsReadFromTheBeginningOnly)
{
    const std::string hex = hexOf(hashOf("p"));
    const auto place = placeOf(R"({"seq":12,"prev":")" + hex + R"(","rest)");
    ASSERT_TRUE(place);
    EXPECT_EQ(place->seq, 12);
    EXPECT_EQ(place->prev, hashOf("p"));
    for (const std::string& bad :
         {std::string(), std::string(R"({"seq":)"), R"({"seq":,"prev":")" + hex + R"(",)",
          R"({"seq":0,"prev":")" + hex + R"(",)", R"({"seq":-1,"prev":")" + hex + R"(",)",
          R"({"seq":012,"prev":")" + hex + R"(",)", R"({"seq":12,"prev":")" + hex,
          R"({"seq":12,"prev":"0)" + hex + R"(",)",
          R"({"seq":99999999999999999999,"prev":")" + hex + R"(",)"}) {
        EXPECT_FALSE(placeOf(bad)) << bad;
    }
}

} // namespace
} // namespace loadwarden
