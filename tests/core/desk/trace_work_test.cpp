#include "core/cycle/simulation/simulation.h"
#include "core/cycle/simulation/trace_text.h"
#include "core/desk/trace_work.h"
#include "core/exchange/trace_mapping_json.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// A recorder's file read for a load: by which mapping, asked what, and what the load's decision
// makes of it. The files are simulated.

namespace loadwarden::testing {
namespace {

using simulation::FaultKind;
using simulation::TextSettings;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::Not;

struct File {
    std::string text;
    TraceMapping mapping;
};

/// 132 °C for 4 min 10 s, dried for 20 min 30 s; begins at 07:00 on 4 March 2031, cycle 101.
File simulated(std::vector<simulation::Fault> faults = {}, TextSettings text = {},
               std::int64_t counter = 101)
{
    const simulation::Settings settings{.setCelsius = 132,
                                        .exposureSeconds = 250,
                                        .dryingSeconds = 1'230,
                                        .atmosphereKPa = 101.3,
                                        .faults = std::move(faults)};
    const Trace trace = simulate(settings).trace;
    text.time = TimeForm::dateTime;
    text.counter = counter;
    text.atmosphereKPa = settings.atmosphereKPa;
    return {writeTraceText(trace, text), mappingOfText(trace, text)};
}

const TraceFindings& findingsIn(const TraceWork& work)
{
    return std::get<TraceRead>(work.act.act).findings;
}

TEST(ChoosingAMapping, TakesTheRememberedOneIfItFits)
{
    const File file = simulated();
    ChosenMapping chosen = chooseMapping(file.text, file.mapping);
    EXPECT_EQ(chosen.origin, MappingOrigin::remembered);
    EXPECT_EQ(chosen.mapping, file.mapping);
    EXPECT_THAT(chosen.misfits, IsEmpty());
    EXPECT_THAT(chosen.notes, IsEmpty());

    const File other = simulated(
        {}, {.separator = FieldSeparator::semicolon, .temperature = RecorderUnit::fahrenheit});
    chosen = chooseMapping(other.text, file.mapping);
    EXPECT_EQ(chosen.origin, MappingOrigin::proposed);
    EXPECT_EQ(chosen.mapping.separator, FieldSeparator::semicolon);
    EXPECT_THAT(chosen.misfits, Not(IsEmpty()));
    EXPECT_THAT(chosen.notes, Not(IsEmpty()));

    chosen = chooseMapping(file.text, std::nullopt);
    EXPECT_EQ(chosen.origin, MappingOrigin::proposed);
    EXPECT_THAT(chosen.misfits, IsEmpty());
}

class TraceOfALoad : public ::testing::Test {
protected:
    TraceOfALoad()
    {
        department.passBowieDick();
        load = department.runLoad(Implant::no);
        department.readLoad(load);
        department.incubate(load);
        department.readBiological(load, local("08:40", "2031-03-05"));
    }

    TraceBasis basis() { return basisOf(load); }

    TraceBasis basisOf(const std::string& cycle)
    {
        ReadSnapshot snapshot(department.office().connection());
        return traceBasisOf(snapshot, department.office().entries(), cycle, department.now())
            .value();
    }

    TraceWork read(const File& file, const std::string& id = "tr-1")
    {
        return readForLoad(basis(), id, "cycle.csv", file.text, file.mapping);
    }

    Appended attach(const File& file, const std::string& id = "tr-1")
    {
        return must(Recorder(department.office())
                        .attach(department.operating(), read(file, id).act, file.text));
    }

    std::vector<std::string> traceKeys()
    {
        std::vector<std::string> keys;
        for (const Finding& finding : department.view(load).decision.findings) {
            const std::string key(textOf(finding.key));
            if (key.starts_with("trace.")) {
                keys.push_back(key);
            }
        }
        return keys;
    }

    WorkingDepartment department;
    std::string load;
};

TEST_F(TraceOfALoad, IsAskedByItsSpecificationAndSite)
{
    const TraceBasis found = basis();
    ASSERT_TRUE(found.specification);
    EXPECT_EQ(found.specification->id, "spec-1");
    EXPECT_EQ(found.atmosphere, AbsolutePressure::fromKPaThousandths(101'300));
    EXPECT_EQ(found.zone.name(), "America/Chicago");
    EXPECT_EQ(found.cycle, load);
    EXPECT_FALSE(found.remembered);
    ReadSnapshot snapshot(department.office().connection());
    EXPECT_FALSE(
        traceBasisOf(snapshot, department.office().entries(), "ld-none", department.now()));
}

TEST_F(TraceOfALoad, SaysWhatWasFoundInTheAct)
{
    const File file = simulated();
    const TraceWork work = read(file);
    const auto& act = std::get<TraceRead>(work.act.act);
    EXPECT_THAT(work.act.subjects, ElementsAre("tr-1", load));
    EXPECT_EQ(act.fileName, "cycle.csv");
    EXPECT_EQ(act.mapping, writeTraceMapping(file.mapping));
    ASSERT_TRUE(act.start);
    EXPECT_EQ(act.start->at, local("07:00"));
    EXPECT_EQ(act.start->offsetMinutes, -360);
    const TraceFindings& findings = act.findings;
    EXPECT_EQ(findings.specification, "spec-1");
    EXPECT_EQ(findings.revision, 1);
    EXPECT_EQ(findings.counter, 101);
    EXPECT_THAT(findings.defects, IsEmpty());
    EXPECT_EQ(findings.exposure, Shown::met);
    EXPECT_EQ(findings.uninterrupted, Shown::met);
    EXPECT_EQ(findings.notBelow, Shown::met);
    EXPECT_EQ(findings.notAbove, Shown::met);
    EXPECT_EQ(findings.saturated, Shown::met);
    EXPECT_EQ(findings.drying, Shown::met);
    EXPECT_GE(findings.leastCelsiusHundredths, 13'200);
    EXPECT_LT(findings.greatestCelsiusHundredths, 13'500);
    EXPECT_GE(findings.exposureLeastMs, 240'000);
    EXPECT_GE(findings.exposureMostMs, findings.exposureLeastMs);
    EXPECT_GE(findings.dryingLeastMs, 1'200'000);
}

TEST_F(TraceOfALoad, ChangesNothingOfAGoodLoad)
{
    ASSERT_EQ(department.view(load).decision.verdict, Verdict::release);
    attach(simulated());
    EXPECT_THAT(traceKeys(), IsEmpty());
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::release);
}

TEST_F(TraceOfALoad, ShowsWhatTheTypedNumbersHide)
{
    attach(simulated({{.kind = FaultKind::shortExposure, .size = 60}}));
    EXPECT_THAT(traceKeys(), Contains("trace.exposure-short"));
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::reprocess);
}

TEST_F(TraceOfALoad, OfAnotherCycleWaits)
{
    attach(simulated({}, {}, 102));
    EXPECT_THAT(traceKeys(), ElementsAre("trace.other-cycle"));
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::quarantine);
}

TEST_F(TraceOfALoad, ThatIsSpoiltIsNotFit)
{
    attach(simulated({}, {.defects = {TraceDefectKind::gap, TraceDefectKind::textInNumber}}));
    EXPECT_THAT(traceKeys(), Contains("trace.unusable"));
    const auto& traces = department.view(load).folded.record.load.traces;
    ASSERT_EQ(traces.size(), 1U);
    EXPECT_THAT(traces[0].defects, ElementsAre("gap", "text-in-number"));
}

TEST_F(TraceOfALoad, IsNotFitWhereItCannotBeEvaluated)
{
    const File file = simulated();
    TraceBasis without = basis();
    without.atmosphere.reset();
    EXPECT_THAT(findingsIn(readForLoad(without, "tr-1", "f", file.text, file.mapping)).defects,
                ElementsAre("no-atmosphere"));
    without = basis();
    without.specification.reset();
    const TraceFindings findings =
        findingsIn(readForLoad(without, "tr-1", "f", file.text, file.mapping));
    EXPECT_EQ(findings.specification, "");
    EXPECT_EQ(findings.exposure, Shown::notAsked);
    EXPECT_THAT(findings.defects, ElementsAre("required-missing"));
    TraceMapping noPressure = file.mapping;
    noPressure.channels.back().role = ChannelRole::notUsed;
    EXPECT_THAT(findingsIn(readForLoad(basis(), "tr-1", "f", file.text, noPressure)).defects,
                ElementsAre("no-pressure"));
    // Whatever the bytes are, there is an act that the journal takes.
    const File nothing{"", file.mapping};
    EXPECT_THAT(findingsIn(read(nothing)).defects, Contains("empty"));
    attach(nothing);
    EXPECT_THAT(traceKeys(), Contains("trace.unusable"));
}

TEST_F(TraceOfALoad, IsReadAsTheSterilizersLastOneWas)
{
    const File first = simulated();
    attach(first);
    EXPECT_EQ(basis().remembered, first.mapping);
    const File second = simulated({}, {.separator = FieldSeparator::tab});
    const Appended appended = attach(second, "tr-2");
    EXPECT_EQ(basis().remembered, second.mapping);

    // What was struck is not gone by.
    must(Recorder(department.office())
             .record(department.lead(),
                     {.act = EntryVoided{},
                      .subjects = {"tr-2", load},
                      .reason = "read by a wrong mapping",
                      .supersedes = appended.firstSeq},
                     department.signature(department.lead(), leadPin)));
    EXPECT_EQ(basis().remembered, first.mapping);
}

TEST_F(TraceOfALoad, IsNotReadAsThatOfAnotherSterilizer)
{
    attach(simulated());
    const SignedIn boss = department.supervisor();
    department.sign(boss, supervisorPin, SterilizerRecorded{.name = "S2", .model = "M1"}, {"sz-2"});
    department.sign(boss, supervisorPin, SterilizerReturned{"installed"}, {"sz-2"});
    const std::string other = must(reserveCycle(department.office(), department.operating(),
                                                {.sterilizer = "sz-2", .specification = "sp-1"}))
                                  .cycle;
    EXPECT_FALSE(basisOf(other).remembered);
    const std::string same = must(reserveCycle(department.office(), department.operating(),
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    EXPECT_TRUE(basisOf(same).remembered);
}

} // namespace
} // namespace loadwarden::testing
