#include "core/acts/entry.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

Envelope envelope(const std::string& kind, std::vector<std::string> subjects,
                  const std::string& body = "{}")
{
    Envelope made;
    made.seq = 9;
    made.recordedAt = {Instant{1'930'000'060'000}, -360};
    made.happenedAt = {Instant{1'930'000'000'000}, -360};
    made.happenedFrom = TimeSource::typed;
    made.actor = "st-1";
    made.role = "operator";
    made.workstation = "ws-1";
    made.kind = kind;
    made.subjects = std::move(subjects);
    made.basedOn = 8;
    made.body = body;
    return made;
}

std::string faultOf(const Envelope& envelope)
{
    const auto result = readEntry(envelope, {});
    const auto* const fault = std::get_if<ActFault>(&result);
    return fault == nullptr ? "" : fault->what;
}

TEST(Entry, IsTheEnvelopeWithItsActUnderstood)
{
    const Envelope written = envelope("item.added", {"it-1", "ld-1", "ci-1", "sz-1"},
                                      R"({"external":{"id":"ci-1"},"implant":"no",)"
                                      R"("internalVisible":false,"label":"B1",)"
                                      R"("paper":{"by":"st-2","role":"lead"}})");
    const auto result = readEntry(written, hashOf("bytes"));
    ASSERT_TRUE(std::holds_alternative<Entry>(result)) << std::get<ActFault>(result).what;
    const auto& entry = std::get<Entry>(result);
    EXPECT_EQ(entry.hash, hashOf("bytes"));
    EXPECT_EQ(entry.role, Role::operating);
    EXPECT_EQ(entry.subject("ld"), "ld-1");
    EXPECT_EQ(entry.subject("ic"), "");
    EXPECT_TRUE(entry.isAbout("sz-1"));
    ASSERT_TRUE(entry.paper);
    EXPECT_EQ(entry.paper->by, "st-2");
    EXPECT_EQ(std::get<ItemAdded>(entry.act).label, "B1");
    EXPECT_EQ(envelopeOf(entry), written);
}

TEST(Entry, OfTheProgramItselfHasNoRole)
{
    Envelope opened = envelope("journal.opened", {"fa-1"},
                               R"({"facility":"F","journal":"jn-1","timeZone":"UTC"})");
    opened.actor.clear();
    opened.role.clear();
    const auto result = readEntry(opened, {});
    EXPECT_EQ(std::get<Entry>(result).role, Role::viewer);
    EXPECT_EQ(envelopeOf(std::get<Entry>(result)), opened);
}

TEST(Entry, IsOfAPersonInARoleOrOfTheProgram)
{
    Envelope unloaded = envelope("cycle.unloaded", {"ld-1"});
    unloaded.role.clear();
    EXPECT_NE(faultOf(unloaded), "") << "a person without a role";
    unloaded.actor.clear();
    EXPECT_EQ(faultOf(unloaded), "");
    unloaded.role = "lead";
    EXPECT_NE(faultOf(unloaded), "") << "a role without a person";
    for (const std::string& strange :
         {std::string("st-\n"), std::string("st-\xC2\xA0"), std::string(65, 's')}) {
        unloaded.actor = strange;
        EXPECT_EQ(faultOf(unloaded),
                  "Entry 9 of the kind \"cycle.unloaded\" must have an actor whose id is a name.");
    }
}

TEST(Entry, IsOfTheYears2000To2099)
{
    const auto faultAt = [](Instant happened, Instant recorded) {
        Envelope unloaded = envelope("cycle.unloaded", {"ld-1"});
        unloaded.happenedAt.at = happened;
        unloaded.recordedAt.at = recorded;
        return faultOf(unloaded);
    };
    const Duration aMoment = Duration::milliseconds(1);
    EXPECT_EQ(faultAt(firstMoment, firstMoment + aMoment), "");
    EXPECT_EQ(faultAt(lastMoment, lastMoment), "");
    EXPECT_EQ(faultAt(firstMoment - aMoment, lastMoment),
              "Entry 9 of the kind \"cycle.unloaded\" must have happened and have been recorded in "
              "the years 2000 to 2099.");
    EXPECT_NE(faultAt(lastMoment + aMoment, lastMoment), "");
    EXPECT_NE(faultAt(firstMoment, lastMoment + aMoment), "");
    EXPECT_NE(faultAt(firstMoment, firstMoment), "") << "up to then saw a review that saw nothing";
}

TEST(Entry, NeedsTheSubjectsOfItsKind)
{
    EXPECT_EQ(faultOf(envelope("cycle.unloaded", {"ld-1"})), "");
    EXPECT_EQ(faultOf(envelope("cycle.unloaded", {"it-1", "ld-1"})), "") << "more may be";
    EXPECT_EQ(faultOf(envelope("cycle.unloaded", {"it-1"})),
              "Entry 9 of the kind \"cycle.unloaded\" must have the subjects \"ld\".");
    EXPECT_NE(faultOf(envelope("cycle.unloaded", {"ld-1", "ld-2"})), "") << "which of the two?";
    EXPECT_NE(faultOf(envelope("cycle.unloaded", {"ld-1", "no id"})), "");
    const std::string started = R"({"clock":"facility","shown":[1930000000000,0]})";
    EXPECT_EQ(faultOf(envelope("cycle.started", {"ld-1"}, started)), "");
    EXPECT_EQ(faultOf(envelope("cycle.started", {"ld-1", "sp-1"}, started)), "");
    EXPECT_NE(faultOf(envelope("cycle.started", {"ld-1", "sp-1", "sp-2"}, started)), "");
    const std::string moved = R"({"from":"ld-1","to":"ld-2","why":"w"})";
    EXPECT_EQ(faultOf(envelope("item.moved", {"it-1", "ld-2", "ld-1"}, moved)), "");
    EXPECT_NE(faultOf(envelope("item.moved", {"it-1", "ld-2", "ld-3"}, moved)), "");
    EXPECT_EQ(faultOf(envelope("biological.activated", {"bv-1", "ld-1"})), "");
    EXPECT_EQ(faultOf(envelope("biological.activated", {"bc-1"})), "");
    EXPECT_NE(faultOf(envelope("biological.activated", {"bv-1"})), "");
    EXPECT_NE(faultOf(envelope("pcd.placed", {"pd-1", "ld-1"}, R"({"vials":[{"id":"bv-1"}]})")),
              "");
}

TEST(Entry, OfACorrectionNamesWhatItCorrectsAndWhy)
{
    Envelope voiding = envelope("entry.voided", {"ci-1", "ld-1"});
    EXPECT_NE(faultOf(voiding), "") << "names nothing";
    voiding.supersedes = 4;
    EXPECT_NE(faultOf(voiding), "") << "says not why";
    voiding.reason = "another load's";
    EXPECT_EQ(faultOf(voiding), "");
    voiding.supersedes = 9;
    EXPECT_NE(faultOf(voiding), "") << "itself";
    Envelope again = envelope("chemical.reread", {"ci-1", "ld-1"}, R"({"seen":"unclear"})");
    EXPECT_NE(faultOf(again), "");
    Envelope amended = envelope("alarm.recorded", {"ld-1"},
                                R"({"code":"A","paper":{"by":"st-2","role":"operator"}})");
    EXPECT_EQ(faultOf(amended), "");
    amended.supersedes = 4;
    amended.reason = "mistyped";
    EXPECT_NE(faultOf(amended), "") << "nobody corrects for somebody else";
}

TEST(Entry, WithAStrangeRoleOrBodyIsAFault)
{
    Envelope strange = envelope("cycle.unloaded", {"ld-1"});
    strange.role = "chief";
    EXPECT_EQ(faultOf(strange),
              "Entry 9 of the kind \"cycle.unloaded\" names no role with \"chief\".");
    strange.role = "lead";
    strange.body = R"({"note":"x"})";
    EXPECT_EQ(faultOf(strange),
              "In an entry of the kind \"cycle.unloaded\" the member \"note\" is not known here.");
}

TEST(Entry, OfAKindThatIsNotKnownIsKept)
{
    const Envelope strange = envelope("cycle.rested", {"xx-1"}, R"({"a":1})");
    const auto result = readEntry(strange, {});
    EXPECT_TRUE(std::holds_alternative<NotUnderstood>(std::get<Entry>(result).act));
    EXPECT_EQ(envelopeOf(std::get<Entry>(result)), strange);
}

} // namespace
} // namespace loadwarden
