#include "tests/core/desk/day_support.h"

namespace loadwarden::testing {
namespace {

JournalTime shown(const std::string& time)
{
    return {local(time), -360};
}

TypedQuantity typed(const std::string& text, Unit unit, std::int64_t thousandths)
{
    return {text, {unit, thousandths}};
}

IndicatorProduct chemical(int type, Response response)
{
    IndicatorProduct product{.kind = IndicatorKind::chemical, .type = type, .response = response};
    product.methods.add(Method::steam);
    return product;
}

CycleSpecification specification(Purpose purpose)
{
    CycleSpecification made{.id = purpose == Purpose::routine ? "spec-1" : "spec-2",
                            .revision = 1,
                            .method = Method::steam,
                            .airRemoval = AirRemoval::prevacuum,
                            .purpose = purpose,
                            .program = purpose == Purpose::routine ? "P1" : "P2",
                            .cycleType = "T1"};
    if (purpose == Purpose::routine) {
        const Quantity warm{Unit::celsius, 132'000};
        made.settings = {.temperature = warm, .exposureMs = 240'000, .dryingMs = 1'200'000};
        made.limits = {{Parameter::temperature, {warm}, {}},
                       {Parameter::exposure, {{Unit::minutes, 4'000}}, {}},
                       {Parameter::drying, {{Unit::minutes, 20'000}}, {}}};
    }
    return made;
}

} // namespace

WorkingDepartment::WorkingDepartment()
    : m_operating(hire("st-o", Role::operating, operatorPin)),
      m_second(hire("st-o2", Role::operating, operatorPin)),
      m_lead(hire("st-l", Role::lead, leadPin))
{
    const SignedIn boss = supervisor();
    const auto signedBy = [&](AnyAct act, std::vector<std::string> subjects) {
        sign(boss, supervisorPin, std::move(act), std::move(subjects));
    };
    signedBy(SterilizerRecorded{.name = "S1", .model = "M1"}, {"sz-1"});
    signedBy(SpecificationRecorded{specification(Purpose::routine)}, {"sp-1"});
    signedBy(SpecificationRecorded{specification(Purpose::bowieDick)}, {"sp-2"});
    signedBy(ProductRecorded{"external", chemical(1, Response::colour)}, {"pr-1"});
    signedBy(ProductRecorded{"integrator", chemical(5, Response::movingFront)}, {"pr-2"});
    IndicatorProduct sheet = chemical(2, Response::sheet);
    sheet.sheet = {.leastMs = 210'000,
                   .mostMs = 240'000,
                   .leastCelsiusHundredths = 13'200,
                   .mostCelsiusHundredths = 13'400};
    signedBy(ProductRecorded{"sheet", sheet}, {"pr-3"});
    IndicatorProduct vial{.kind = IndicatorKind::biological,
                          .response = Response::growth,
                          .species = Species::geobacillusStearothermophilus,
                          .releaseMinutes = 1'440,
                          .needsActivation = true};
    vial.methods.add(Method::steam);
    signedBy(ProductRecorded{"vial", vial}, {"pr-4"});
    for (const char* const number : {"1", "2", "3", "4"}) {
        record(m_operating, ProductLotRecorded{std::string("N") + number, parseDate("2032-01-01")},
               {std::string("pl-") + number, std::string("pr-") + number});
    }
    Packaging wrap{.form = PackageForm::wrap};
    wrap.methods.add(Method::steam);
    record(m_lead, PackagingRecorded{"wrap", wrap}, {"pk-1"});
    record(m_lead,
           DeviceRecorded{{.name = "device",
                           .allowedCycles = {{.method = Method::steam,
                                              .airRemoval = AirRemoval::prevacuum,
                                              .temperature = Quantity{Unit::celsius, 132'000},
                                              .leastMs = 240'000}}}},
           {"dv-1"});
    record(m_lead, IncubatorRecorded{"incubator"}, {"in-1"});
    setClock(local("05:30"));
    signedBy(SterilizerReturned{"installed"}, {"sz-1"});
    record(m_operating, ClockCompared{shown("05:30"), 0}, {"sz-1"});
}

void WorkingDepartment::passBowieDick()
{
    setClock(local("05:50"));
    const std::string test =
        must(reserveCycle(
                 office(), m_operating,
                 {.sterilizer = "sz-1", .specification = "sp-2", .purpose = Purpose::bowieDick}))
            .cycle;
    record(m_operating, SheetPlaced{"pr-3", "pl-3"}, {"ci-bd", test});
    setClock(local("06:00"));
    record(m_operating, CycleStarted{ClockSource::facility, shown("06:00"), 100}, {test});
    setClock(local("06:05"));
    record(m_operating, CycleEnded{shown("06:05"), CycleOutcome::ended, {}, {}}, {test});
    record(m_operating,
           TestConditionsRecorded{.chamberEmpty = true,
                                  .dryingRun = false,
                                  .exposureMinutes = TypedNumber{"3.5", 3'500},
                                  .exposureCelsius = TypedNumber{"134", 134'000}},
           {test});
    record(m_operating, ChemicalRead{Seen::uniformComplete}, {"ci-bd", test});
    ASSERT_EQ(view(test).judgement.result, TestResult::passed);
}

std::string WorkingDepartment::runLoad(Implant implant)
{
    setClock(local("06:40"));
    const std::string cycle =
        must(reserveCycle(office(), m_operating, {.sterilizer = "sz-1", .specification = "sp-1"}))
            .cycle;
    const auto part = [&](const char* prefix) { return partOf(prefix, cycle); };
    ItemAdded item{.label = "I1", .implant = implant, .packaging = "pk-1", .devices = {"dv-1"}};
    item.external = PlacedIndicator{part("ci-e"), "pr-1", "pl-1", {}};
    item.internals = {{part("ci-i"), "pr-2", "pl-2", "top"}};
    record(m_operating, item, {part("it"), cycle, part("ci-e"), part("ci-i")});
    record(
        m_operating,
        PcdPlaced{"PCD", {{part("ci-p"), "pr-2", "pl-2", {}}}, {{part("bv"), "pr-4", "pl-4", {}}}},
        {part("pd"), cycle, part("ci-p"), part("bv")});
    setClock(local("07:00"));
    record(m_operating, CycleStarted{ClockSource::facility, shown("07:00"), 101}, {cycle});
    setClock(local("07:50"));
    record(m_operating, CycleEnded{shown("07:50"), CycleOutcome::ended, {}, {}}, {cycle});
    record(m_operating, CycleUnloaded{}, {cycle});
    return cycle;
}

void WorkingDepartment::readLoad(const std::string& cycle)
{
    const auto part = [&](const char* prefix) { return partOf(prefix, cycle); };
    setClock(local("07:53"));
    record(m_operating, PrintoutRecorded{"P1", "S1", 101, shown("07:00"), shown("07:50")}, {cycle});
    record(m_operating,
           PhysicalRead{Parameter::temperature, typed("132.4", Unit::celsius, 132'400)}, {cycle});
    record(m_operating, PhysicalRead{Parameter::exposure, typed("4", Unit::minutes, 4'000)},
           {cycle});
    record(m_operating, PhysicalRead{Parameter::drying, typed("20", Unit::minutes, 20'000)},
           {cycle});
    setClock(local("08:00"));
    sign(m_operating, operatorPin, PhysicalVerified{}, {cycle});
    record(m_operating, ChemicalRead{Seen::endColourReached}, {part("ci-e"), cycle});
    record(m_operating, ChemicalRead{Seen::frontInAcceptZone}, {part("ci-p"), cycle});
    setClock(local("08:30"));
    record(m_operating, PackageChecked{true, true, true, true, true}, {part("it"), cycle});
}

void WorkingDepartment::incubate(const std::string& cycle)
{
    const std::string vial = partOf("bv", cycle);
    const std::string control = partOf("bc", cycle);
    setClock(local("08:35"));
    record(m_operating, ControlPrepared{"pr-4", "pl-4", {}}, {control});
    record(m_operating, BiologicalActivated{}, {control});
    record(m_operating, BiologicalIncubated{}, {control, "in-1"});
    record(m_operating, BiologicalActivated{}, {vial, cycle});
    record(m_operating, BiologicalIncubated{}, {vial, cycle, "in-1"});
}

void WorkingDepartment::readBiological(const std::string& cycle, Instant when, Seen vial)
{
    setClock(when);
    record(m_operating, BiologicalRead{Seen::growth}, {partOf("bc", cycle)});
    record(m_operating, BiologicalRead{vial}, {partOf("bv", cycle), cycle});
}

} // namespace loadwarden::testing
