// Which loads are found, in which order, and what one look costs.
#include "core/desk/look_up.h"
#include "core/desk/records.h"
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
using loadwarden::testing::WorkingDepartment;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;

class TheRecords : public ::testing::Test {
protected:
    /// A load that is only reserved, at that time, with items of these labels.
    std::string reserve(const std::string& time, const std::string& day,
                        const std::vector<std::string>& labels = {})
    {
        department.setClock(local(time, day));
        const std::string cycle =
            must(reserveCycle(department.office(), department.operating(),
                              {.sterilizer = "sz-1", .specification = "sp-1"}))
                .cycle;
        for (std::size_t i = 0; i < labels.size(); ++i) {
            department.record(department.operating(), ItemAdded{.label = labels[i]},
                              {"it-" + std::to_string(i) + cycle.substr(2), cycle});
        }
        return cycle;
    }

    void sign(const SignedIn& who, const std::string& pin, const std::string& cycle)
    {
        must(Dispositions(department.office())
                 .sign(who, department.signature(who, pin), sightFrom(department.view(cycle)),
                       Verdict::quarantine));
    }

    RecordPage look(const RecordQuestion& question, const CyclePlace& behind = {},
                    const RecordLimits& limits = {})
    {
        ReadSnapshot snapshot(department.office().connection());
        return findRecords(snapshot, department.office().zone(), question, behind, limits);
    }

    /// All that fit, look by look; none may cost more than its limits.
    std::vector<std::string> all(const RecordQuestion& question, const RecordLimits& limits = {})
    {
        std::vector<std::string> cycles;
        CyclePlace place;
        for (int looks = 0; looks < 100; ++looks) {
            const RecordPage page = look(question, place, limits);
            EXPECT_LE(page.rows.size(), limits.rows);
            for (const RecordRow& row : page.rows) {
                cycles.push_back(row.cycle);
            }
            if (page.isEnd) {
                return cycles;
            }
            EXPECT_FALSE(page.last == place) << "it would never come further";
            place = page.last;
        }
        ADD_FAILURE() << "it does not end";
        return cycles;
    }

    WorkingDepartment department;
};

TEST_F(TheRecords, OfAnEmptyJournalAreNone)
{
    const RecordPage page = look({});
    EXPECT_THAT(page.rows, IsEmpty());
    EXPECT_TRUE(page.isEnd);
    EXPECT_FALSE(page.isByTime);
}

TEST_F(TheRecords, ComeOnceEachTheNewestFirstHoweverSmallThePieces)
{
    std::vector<std::string> made;
    for (int i = 0; i < 23; ++i) {
        // Some at one moment, so that time alone does not order them.
        made.push_back(reserve("08:" + std::to_string(10 + i / 3), "2031-03-04"));
    }
    const std::vector<std::string> whole = all({});
    ASSERT_THAT(whole, SizeIs(made.size()));
    EXPECT_TRUE(std::ranges::is_permutation(whole, made));
    for (const std::size_t rows : {1U, 2U, 7U, 23U, 24U}) {
        EXPECT_EQ(all({}, {.rows = rows}), whole) << rows;
    }
    std::vector<std::int64_t> times;
    for (const RecordRow& row : look({}).rows) {
        times.push_back(row.at.ms);
    }
    EXPECT_TRUE(std::ranges::is_sorted(times, std::greater{}));
}

TEST_F(TheRecords, AreFoundByLotLabelSterilizerAndDay)
{
    const std::string first = reserve("08:00", "2031-03-04", {"Tray 7", "Bowl"});
    const std::string second = reserve("23:59", "2031-03-05", {"tray 71"});
    const std::string third = reserve("00:00", "2031-03-06", {"Basin"});
    const std::string lot = look({}).rows.front().lot;
    ASSERT_EQ(lot, "1-2031-065-01");
    EXPECT_THAT(all({.lot = "1-2031-06"}), ElementsAre(third, second, first));
    EXPECT_THAT(all({.lot = "1-2031-065"}), ElementsAre(third));
    EXPECT_THAT(all({.lot = "2-"}), IsEmpty());
    EXPECT_THAT(all({.label = "TRAY 7"}), ElementsAre(second, first));
    EXPECT_THAT(all({.label = "tray71"}), ElementsAre(second));
    EXPECT_THAT(all({.lot = "1-2031-063", .label = "b"}), ElementsAre(first));
    EXPECT_THAT(all({.sterilizer = "sz-1"}), ElementsAre(third, second, first));
    EXPECT_THAT(all({.sterilizer = "sz-2"}), IsEmpty());
    EXPECT_THAT(all({.label = "b", .sterilizer = "sz-2"}), IsEmpty());
    const Date fourth = *parseDate("2031-03-04");
    EXPECT_THAT(all({.from = fourth + 1, .to = fourth + 1}), ElementsAre(second));
    EXPECT_THAT(all({.from = fourth + 1}), ElementsAre(third, second));
    EXPECT_THAT(all({.to = fourth + 1}), ElementsAre(second, first));
    EXPECT_THAT(all({.label = "tray", .to = fourth}), ElementsAre(first));
    EXPECT_THAT(all({.sterilizer = "sz-1", .from = fourth + 2, .to = fourth + 2}),
                ElementsAre(third));
}

TEST_F(TheRecords, AreFoundByHowAndByWhomTheyWereSigned)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::string open = reserve("09:00", "2031-03-04");
    sign(department.operating(), operatorPin, load);
    const RecordPage page = look({.signedAs = SignedWanted::quarantine});
    ASSERT_THAT(page.rows, SizeIs(1));
    EXPECT_EQ(page.rows[0].cycle, load);
    EXPECT_EQ(page.rows[0].signedAs, Verdict::quarantine);
    EXPECT_EQ(page.rows[0].signedBy, "st-o");
    EXPECT_EQ(page.rows[0].at, local("07:00"));
    EXPECT_TRUE(page.rows[0].hasEnded);
    EXPECT_FALSE(page.rows[0].hasMoreSince);
    EXPECT_THAT(all({.signedAs = SignedWanted::release}), IsEmpty());
    EXPECT_THAT(all({.signedAs = SignedWanted::reprocess}), IsEmpty());
    // Nobody signs a test, so it is not among what waits for that.
    EXPECT_THAT(all({.signedAs = SignedWanted::nothing}), ElementsAre(open));
    EXPECT_THAT(all({.person = "st-o"}), ElementsAre(load));
    EXPECT_THAT(all({.person = "st-l"}), IsEmpty());
    sign(department.lead(), leadPin, load);
    EXPECT_THAT(all({.person = "st-o"}), IsEmpty()) << "the newest disposition counts";
    EXPECT_THAT(all({.person = "st-l"}), ElementsAre(load));
    department.record(department.second(), ChemicalRead{Seen::endColourPartly},
                      {WorkingDepartment::partOf("ci-e", load), load});
    EXPECT_TRUE(look({.person = "st-l"}).rows.at(0).hasMoreSince);
}

TEST_F(TheRecords, AreFoundByTheLotOfAProductThatIsInThem)
{
    const std::string load = department.runLoad(Implant::no);
    const std::string other = reserve("09:00", "2031-03-04");
    const auto lots = [this](std::string_view number) {
        ReadSnapshot snapshot(department.office().connection());
        return productLotsNumbered(snapshot, number);
    };
    EXPECT_THAT(lots("n 2"), ElementsAre("pl-2"));
    EXPECT_THAT(lots("N9"), IsEmpty());
    // Outside, inside, in a challenge device, of a vial.
    for (const char* const number : {"N1", "N2", "N4"}) {
        EXPECT_THAT(all({.productLots = lots(number)}), ElementsAre(load)) << number;
    }
    EXPECT_THAT(all({.productLots = lots("N3")}), IsEmpty()) << "it is of the test's sheet";
    EXPECT_THAT(all({.productLots = {"pl-9", "pl-1"}}), ElementsAre(load));
    EXPECT_THAT(all({.lot = "1-2031-063", .productLots = {"pl-1"}}), ElementsAre(load));
}

TEST_F(TheRecords, KnowTheLotOfAnItemThatWasMoved)
{
    const std::string from = reserve("08:00", "2031-03-04");
    const std::string to = reserve("08:30", "2031-03-04");
    ItemAdded item{.label = "I9"};
    item.external = PlacedIndicator{"ci-9", "pr-1", "pl-1", {}};
    department.record(department.operating(), item, {"it-9", from, "ci-9"});
    department.record(department.operating(), ItemMoved{from, to, "no room"}, {"it-9", from, to});
    // It was said to be in both.
    EXPECT_THAT(all({.productLots = {"pl-1"}}), ElementsAre(to, from));
}

TEST_F(TheRecords, CostNoMoreThanTheirLimitsAndGoOnWhereTheyStopped)
{
    const std::string oldest = reserve("08:00", "2031-03-04", {"Wanted"});
    for (int i = 0; i < 9; ++i) {
        reserve("09:0" + std::to_string(i), "2031-03-04", {"Other", "Wanted not"});
    }
    ItemAdded item{.label = "I9"};
    item.external = PlacedIndicator{"ci-9", "pr-1", "pl-1", {}};
    department.record(department.operating(), item, {"it-9", oldest, "ci-9"});
    const RecordLimits small{.rows = 3, .cycles = 4, .entries = 4000, .few = 2};
    const RecordQuestion lots{.productLots = {"pl-1"}};
    const RecordPage page = look(lots, {}, small);
    EXPECT_THAT(page.rows, IsEmpty());
    EXPECT_FALSE(page.isEnd);
    EXPECT_EQ(Instant{page.last.at}, local("09:05")) << "four were looked at";
    EXPECT_THAT(all(lots, small), ElementsAre(oldest));
    // Entries are counted, too: each of these has three.
    const RecordPage few = look(lots, {}, {.entries = 6});
    EXPECT_EQ(Instant{few.last.at}, local("09:07"));
    // More begin so than are looked up: they are looked for by time, and the same are found.
    const RecordPage byTime = look({.label = "wanted"}, {}, small);
    EXPECT_TRUE(byTime.isByTime);
    EXPECT_EQ(all({.label = "wanted"}, small), all({.label = "wanted"}));
    EXPECT_EQ(all({.lot = "1-2031"}, small), all({}));
    EXPECT_FALSE(look({.label = "wanted"}).isByTime);
}

TEST_F(TheRecords, OfferEverySterilizerAndPersonByName)
{
    ReadSnapshot snapshot(department.office().connection());
    const RecordChoices choices = recordChoices(snapshot);
    EXPECT_EQ(choices.sterilizers, (std::vector<NamedId>{{"sz-1", "S1"}}));
    EXPECT_EQ(choices.people, (std::vector<NamedId>{{"st-l", "Name of st-l"},
                                                    {"st-o", "Name of st-o"},
                                                    {"st-o2", "Name of st-o2"},
                                                    {"st-sup", "Supervisor"}}));
}

} // namespace
} // namespace loadwarden
