#pragma once

#include "core/acts/entry.h"
#include "core/acts/fold/evidence_fold.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

// Journals for tests: acts of persons of whom only the role matters, on a day in UTC.

namespace loadwarden::tests {

/// A moment of the day that the journals are set in.
inline Instant at(int hour, int minute)
{
    return *parseInstant("2031-03-04T00:00Z") + Duration::minutes(hour * 60 + minute);
}

struct Person {
    std::string id;
    Role role = Role::operating;
};

inline const Person operatorA{"st-a", Role::operating};
inline const Person operatorB{"st-b", Role::operating};
inline const Person leadC{"st-c", Role::lead};
inline const Person leadD{"st-d", Role::lead};
inline const Person supervisorE{"st-e", Role::supervisor};
inline const Person supervisorF{"st-f", Role::supervisor};
inline const Person viewerG{"st-g", Role::viewer};
inline const Person program{"", Role::viewer};

/// A journal that grows act by act; each entry goes through bytes.
class Journal {
public:
    Journal() = default;
    /// One that has these already.
    explicit Journal(std::vector<Entry> entries) : entries_(std::move(entries)) {}

    /// Adds an act and gives its seq. Recorded when it happened, unless told.
    std::int64_t add(const Person& who, Instant happened, std::vector<std::string> subjects,
                     AnyAct act)
    {
        return write({.recordedAt = {happened, 0},
                      .happenedAt = {happened, 0},
                      .actor = who.id,
                      .role = who.role,
                      .subjects = std::move(subjects),
                      .act = std::move(act)});
    }

    /// Amends, voids, annotates or rereads an entry; the subjects are those of that entry.
    std::int64_t correct(const Person& who, Instant recorded, std::int64_t seq, AnyAct act)
    {
        const Entry& old = entry(seq);
        return write({.recordedAt = {recorded, 0},
                      .happenedAt = old.happenedAt,
                      .actor = who.id,
                      .role = who.role,
                      .subjects = old.subjects,
                      .reason = "reason",
                      .supersedes = seq,
                      .act = std::move(act)});
    }

    /// Appends an entry as it is, but for seq and hash.
    std::int64_t write(Entry entry)
    {
        entry.seq = entries_.empty() ? 1 : entries_.back().seq + 1;
        entry.workstation = "ws-1";
        const Envelope envelope = envelopeOf(entry);
        const std::string bytes = writeEnvelope(envelope);
        const auto again = readEnvelope(bytes);
        EXPECT_TRUE(std::holds_alternative<Envelope>(again)) << bytes;
        auto read = readEntry(envelope, hashOf(bytes));
        if (const auto* fault = std::get_if<ActFault>(&read)) {
            ADD_FAILURE() << fault->what << '\n' << bytes;
            return entry.seq;
        }
        entries_.push_back(std::get<Entry>(std::move(read)));
        return entry.seq;
    }

    [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }
    [[nodiscard]] const Entry& entry(std::int64_t seq) const
    {
        return entries_.at(static_cast<std::size_t>(seq - 1));
    }
    [[nodiscard]] FoldedEvidence fold(const std::string& cycle = "ld-1") const
    {
        return foldEvidence(entries_, cycle);
    }
    [[nodiscard]] Decision decideAt(Instant now, const std::string& cycle = "ld-1") const
    {
        return decide(assemble(fold(cycle).record), {}, now);
    }
    /// Of the newest entry with such an act.
    template <class Act>
    [[nodiscard]] std::int64_t seqOf(const std::string& subject = {}) const
    {
        for (auto each = entries_.rbegin(); each != entries_.rend(); ++each) {
            if (std::holds_alternative<Act>(each->act)
                && (subject.empty() || each->isAbout(subject))) {
                return each->seq;
            }
        }
        ADD_FAILURE() << "no such act about " << subject;
        return 0;
    }

private:
    std::vector<Entry> entries_;
};

inline std::string describe(const Decision& decision)
{
    std::string text{textOf(decision.verdict)};
    for (const Finding& finding : decision.findings) {
        text += std::string("\n  ") + std::string(textOf(finding.key)) + ' '
                + std::string(textOf(finding.outcome)) + ' ' + finding.subject;
    }
    return text;
}

inline bool has(const Decision& decision, Key key)
{
    return std::ranges::find(decision.findings, key, &Finding::key) != decision.findings.end();
}

inline bool has(const FoldedEvidence& folded, std::int64_t seq, MisfitWhy why)
{
    return std::ranges::find(folded.misfits, Misfit{seq, why}) != folded.misfits.end();
}

inline TypedQuantity typed(const std::string& text, Unit unit, std::int64_t thousandths)
{
    return {text, {unit, thousandths}};
}

/// The registers, a sterilizer back in service, and its Bowie-Dick test, passed at 06:06.
inline Journal morning()
{
    Journal journal;
    const Instant early = at(5, 0);
    journal.add(program, early, {"fa-1"}, JournalOpened{"F", "jn-1", "UTC"});
    journal.add(supervisorE, early, {"po-1"},
                PolicyRecorded{"policy", 1, hexOf(hashOf("policy")), "a = 1\n"});
    journal.add(supervisorE, early, {"sz-1"}, SterilizerRecorded{.name = "S1", .model = "M1"});
    const Quantity warm{Unit::celsius, 132'000};
    journal.add(
        supervisorE, early, {"sp-1"},
        SpecificationRecorded{
            {.id = "spec-1",
             .revision = 1,
             .method = Method::steam,
             .airRemoval = AirRemoval::prevacuum,
             .purpose = Purpose::routine,
             .program = "P1",
             .cycleType = "T1",
             .settings = {.temperature = warm, .exposureMs = 240'000, .dryingMs = 1'200'000},
             .limits = {{Parameter::temperature, {warm}, {}},
                        {Parameter::exposure, {{Unit::minutes, 4'000}}, {}},
                        {Parameter::drying, {{Unit::minutes, 20'000}}, {}}}}});
    journal.add(supervisorE, early, {"sp-2"},
                SpecificationRecorded{{.id = "spec-2",
                                       .revision = 1,
                                       .method = Method::steam,
                                       .airRemoval = AirRemoval::prevacuum,
                                       .purpose = Purpose::bowieDick,
                                       .program = "P2",
                                       .cycleType = "T1"}});
    const auto chemical = [&](const std::string& id, int type, Response response,
                              const SheetDirections& sheet) {
        IndicatorProduct product{
            .kind = IndicatorKind::chemical, .type = type, .response = response, .sheet = sheet};
        product.methods.add(Method::steam);
        journal.add(supervisorE, early, {id}, ProductRecorded{id, product});
    };
    chemical("pr-1", 1, Response::colour, {});
    chemical("pr-2", 5, Response::movingFront, {});
    chemical("pr-3", 2, Response::sheet,
             {.leastMs = 210'000,
              .mostMs = 240'000,
              .leastCelsiusHundredths = 13'200,
              .mostCelsiusHundredths = 13'400});
    IndicatorProduct biological{.kind = IndicatorKind::biological,
                                .response = Response::growth,
                                .species = Species::geobacillusStearothermophilus,
                                .releaseMinutes = 24,
                                .needsActivation = true};
    biological.methods.add(Method::steam);
    journal.add(supervisorE, early, {"pr-4"}, ProductRecorded{"pr-4", biological});
    for (const char* number : {"1", "2", "3", "4"}) {
        journal.add(operatorA, early, {std::string("pl-") + number, std::string("pr-") + number},
                    ProductLotRecorded{std::string("N") + number, parseDate("2032-01-01")});
    }
    Packaging wrap{.form = PackageForm::wrap};
    wrap.methods.add(Method::steam);
    journal.add(leadC, early, {"pk-1"}, PackagingRecorded{"wrap", wrap});
    journal.add(leadC, early, {"dv-1"},
                DeviceRecorded{{.name = "device",
                                .allowedCycles = {{.method = Method::steam,
                                                   .airRemoval = AirRemoval::prevacuum,
                                                   .temperature = warm,
                                                   .leastMs = 240'000}}}});
    journal.add(leadC, early, {"in-1"}, IncubatorRecorded{"incubator"});
    journal.add(supervisorE, at(5, 30), {"sz-1"}, SterilizerReturned{"installed"});
    journal.add(operatorA, at(5, 30), {"sz-1"}, ClockCompared{{at(5, 30), 0}, 0});

    journal.add(operatorA, at(5, 50), {"ld-bd", "sz-1", "sp-2"},
                CycleReserved{.lot = "B1", .purpose = Purpose::bowieDick});
    journal.add(operatorA, at(5, 51), {"ci-bd", "ld-bd"}, SheetPlaced{"pr-3", "pl-3"});
    journal.add(operatorA, at(6, 0), {"ld-bd"},
                CycleStarted{ClockSource::facility, {at(6, 0), 0}, 100});
    journal.add(operatorA, at(6, 5), {"ld-bd"},
                CycleEnded{{at(6, 5), 0}, CycleOutcome::ended, {}, {}});
    journal.add(operatorA, at(6, 5), {"ld-bd"},
                TestConditionsRecorded{.chamberEmpty = true,
                                       .dryingRun = false,
                                       .exposureMinutes = TypedNumber{"3.5", 3'500},
                                       .exposureCelsius = TypedNumber{"134", 134'000}});
    journal.add(operatorA, at(6, 6), {"ci-bd", "ld-bd"}, ChemicalRead{Seen::uniformComplete});
    return journal;
}

/// Adds a load as far as its start at 07:00: one item and a PCD with an indicator and a vial.
inline void addLoaded(Journal& journal, Implant implant = Implant::no)
{
    journal.add(operatorA, at(6, 40), {"ld-1", "sz-1", "sp-1"}, CycleReserved{.lot = "L1"});
    ItemAdded item{.label = "I1", .implant = implant, .packaging = "pk-1", .devices = {"dv-1"}};
    item.external = PlacedIndicator{"ci-1", "pr-1", "pl-1", {}};
    item.internals = {{"ci-2", "pr-2", "pl-2", "top"}};
    journal.add(operatorA, at(6, 41), {"it-1", "ld-1", "ci-1", "ci-2"}, item);
    journal.add(operatorA, at(6, 45), {"pd-1", "ld-1", "ci-3", "bv-1"},
                PcdPlaced{"PCD", {{"ci-3", "pr-2", "pl-2", {}}}, {{"bv-1", "pr-4", "pl-4", {}}}});
    journal.add(operatorA, at(7, 0), {"ld-1"},
                CycleStarted{ClockSource::facility, {at(7, 0), 0}, 101});
}

/// Adds all that a load needs after its start, as it should be; verified at 08:00.
inline void addDone(Journal& journal)
{
    journal.add(operatorA, at(7, 50), {"ld-1"},
                CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}});
    journal.add(
        operatorA, at(7, 52), {"ld-1"},
        PrintoutRecorded{"P1", "S1", 101, JournalTime{at(7, 0), 0}, JournalTime{at(7, 50), 0}});
    journal.add(operatorA, at(7, 53), {"ld-1"},
                PhysicalRead{Parameter::temperature, typed("132.4", Unit::celsius, 132'400)});
    journal.add(operatorA, at(7, 53), {"ld-1"},
                PhysicalRead{Parameter::exposure, typed("4", Unit::minutes, 4'000)});
    journal.add(operatorA, at(7, 53), {"ld-1"},
                PhysicalRead{Parameter::drying, typed("20", Unit::minutes, 20'000)});
    journal.add(operatorA, at(8, 0), {"ld-1"}, PhysicalVerified{});
    journal.add(operatorA, at(8, 1), {"ci-1", "ld-1"}, ChemicalRead{Seen::endColourReached});
    journal.add(operatorA, at(8, 2), {"ci-3", "ld-1"}, ChemicalRead{Seen::frontInAcceptZone});
    journal.add(operatorA, at(8, 30), {"it-1", "ld-1"},
                PackageChecked{true, true, true, true, true});
}

/// Adds the incubation of the load's vial and of a control from 08:05, and their readings at 08:40.
inline void addBiological(Journal& journal)
{
    journal.add(operatorA, at(8, 4), {"bc-1"}, ControlPrepared{"pr-4", "pl-4", {}});
    for (const std::vector<std::string>& subjects :
         {std::vector<std::string>{"bc-1"}, std::vector<std::string>{"bv-1", "ld-1"}}) {
        journal.add(operatorA, at(8, 5), subjects, BiologicalActivated{});
        std::vector<std::string> inside = subjects;
        inside.emplace_back("in-1");
        journal.add(operatorA, at(8, 5), inside, BiologicalIncubated{});
    }
    journal.add(operatorA, at(8, 40), {"bc-1"}, BiologicalRead{Seen::growth});
    journal.add(operatorA, at(8, 40), {"bv-1", "ld-1"}, BiologicalRead{Seen::noGrowth});
}

/// A load that may go at 09:00.
inline Journal releasable(Implant implant = Implant::no)
{
    Journal journal = morning();
    addLoaded(journal, implant);
    addDone(journal);
    addBiological(journal);
    return journal;
}

} // namespace loadwarden::tests
