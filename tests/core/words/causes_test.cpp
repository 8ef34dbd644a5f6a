// Every cause (RULES.md, 4a) has a sentence of its own wherever a finding can carry it.

#include "core/words/say.h"
#include "tests/core/words/well_said.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace loadwarden {
namespace {

using testing::HasSubstr;
using testing::Not;

struct Carrier {
    Key key{};
    Outcome outcome{};
};

const std::vector<Carrier>& carriers()
{
    using enum Outcome;
    static const std::vector<Carrier> all{
        {Key::pcdInvalid, waits},
        {Key::pcdInvalidNoted, note},
        {Key::itemExternalInvalid, waits},
        {Key::itemExternalLost, fails},
        {Key::itemInternalInvalid, waits},
        {Key::itemInternalInvalid, note},
        {Key::testSheetSpoiled, waits},
        {Key::biVoid, fails},
        {Key::biVoid, note},
        {Key::testBiVoid, waits},
        {Key::biNotCounted, waits},
        {Key::biNotCounted, note},
        {Key::biNotRegistered, waits},
        {Key::printoutMissing, waits},
        {Key::physicalMissing, waits},
        {Key::itemNotChecked, waits},
        {Key::airRemovalVoid, waits},
        {Key::itemCycleNotAllowed, fails},
        {Key::reviewNotCounted, note},
    };
    return all;
}

Said said(const Carrier& carrier, Cause cause)
{
    Finding finding;
    finding.key = carrier.key;
    finding.outcome = carrier.outcome;
    finding.subject = "X-1";
    finding.cause = cause;
    return say(finding, HouseStyle{});
}

TEST(Causes, EachIsSaidInASentenceOfItsOwn)
{
    for (const Carrier& carrier : carriers()) {
        SCOPED_TRACE(static_cast<int>(carrier.key));
        const Said plain = said(carrier, Cause::none);
        std::set<std::string> sentences{plain.says};
        std::set<std::string> steps;
        for (int i = 1; i < causeCount; ++i) {
            const auto cause = static_cast<Cause>(i);
            SCOPED_TRACE(i);
            const Said with = said(carrier, cause);
            EXPECT_TRUE(test_words::isSentence(with.says)) << with.says;
            EXPECT_TRUE(sentences.insert(with.says).second) << with.says;
            EXPECT_EQ(with.next.empty(), plain.next.empty());
            EXPECT_TRUE(with.next.empty() || test_words::isSentence(with.next)) << with.next;
            steps.insert(with.next);
        }
        // What may mend it belongs to the cause; what follows a loss does not.
        EXPECT_EQ(steps.size() > 1, !plain.next.empty() && carrier.key != Key::itemExternalLost);
    }
}

TEST(Causes, AreSaidPlainly)
{
    EXPECT_EQ(said({Key::pcdInvalid, Outcome::waits}, Cause::lotExpired).says,
              "A chemical indicator in process challenge device (PCD) X-1 does not count as "
              "accepted. Its lot had expired on the day of the cycle.");
    EXPECT_THAT(said({Key::biNotCounted, Outcome::waits}, Cause::unsignedAct).says,
                HasSubstr("was read as no growth, but that reading does not count. Its reading has "
                          "no name"));
    EXPECT_THAT(said({Key::biVoid, Outcome::fails}, Cause::controlMissing).next,
                HasSubstr("record it with product, lot, incubator, start and reading. If that does "
                          "not make it count, reprocess every item"));
}

// The same word means something else for a vial than for a chemical indicator.
TEST(Causes, AreSaidOfTheRightThing)
{
    EXPECT_THAT(said({Key::pcdInvalid, Outcome::waits}, Cause::readEarly).says,
                HasSubstr("before the cycle had ended"));
    EXPECT_THAT(said({Key::biNotCounted, Outcome::waits}, Cause::readEarly).says,
                HasSubstr("before its full time of incubation"));
    EXPECT_THAT(said({Key::biVoid, Outcome::fails}, Cause::voided).says,
                HasSubstr("A lead declared it void."));
    EXPECT_THAT(said({Key::biNotCounted, Outcome::waits}, Cause::voided).says,
                HasSubstr("Its reading was declared void."));
    EXPECT_THAT(said({Key::testBiVoid, Outcome::waits}, Cause::productUnfit).says,
                HasSubstr("recorded as a chemical indicator"));
    EXPECT_THAT(said({Key::testSheetSpoiled, Outcome::waits}, Cause::productUnfit).says,
                HasSubstr("recorded as a biological indicator"));
}

// A finding that section 4a does not name says nothing of a cause.
TEST(Causes, AreSaidOnlyWhereTheRulesNameThem)
{
    EXPECT_THAT(said({Key::biLost, Outcome::fails}, Cause::lost).says,
                Not(HasSubstr("It cannot be obtained.")));
}

} // namespace
} // namespace loadwarden
