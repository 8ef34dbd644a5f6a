#include "core/exchange/specification_library.h"
#include "demo/department/department.h"

#include <memory>

// What the living day has besides wrapped steam loads: gas, and a load for immediate use.

namespace loadwarden::demo {

namespace {

constexpr std::int64_t cabinetMinutes = 600; ///< aeration, as the cabinet's maker asks
constexpr std::int64_t pouchMinutes = 480;
constexpr std::int64_t cameraMinutes = 720;

/// What is known of a load while it goes through the room.
struct Run {
    std::string cycle;
    std::vector<std::string> items;
    std::string strip;
    std::string vial;
    std::int64_t counter = 0;
    Instant start;
};

TypedQuantity typed(const std::string& text, Unit unit, std::int64_t thousandths)
{
    return {text, {unit, thousandths}};
}

IndicatorProduct gasIndicator(int type)
{
    IndicatorProduct product{
        .kind = IndicatorKind::chemical, .type = type, .response = Response::colour};
    product.methods.add(Method::ethyleneOxide);
    return product;
}

void registerSterilizers(Department& department)
{
    const std::vector<std::pair<std::string, SterilizerRecorded>> added = {
        {"sz-3", {.name = "STERILIZER 3", .model = "A4"}},
        {"sz-4", {.name = "STERILIZER 4", .model = "A2"}},
        {"sz-5",
         {.name = "GAS 1",
          .model = "gas cabinet",
          .recordsConcentration = false,
          .recordsHumidity = false,
          .aeration = SterilizerAeration{.minutes = cabinetMinutes, .celsiusHundredths = 5'000}}}};
    for (const auto& [id, sterilizer] : added) {
        department.record(boss(), sterilizer, {id});
        department.record(boss(), SterilizerReturned{"qualified at installation"}, {id});
        department.record(morning(), ClockCompared{department.shown(), 0}, {id});
    }
}

void registerGas(Department& department)
{
    CycleSpecification gas = *SpecificationLibrary::builtIn().find("ethylene-oxide-55@2");
    gas.id = "gas-55";
    gas.program = "GAS 55";
    department.record(boss(), SpecificationRecorded{gas}, {"sp-gas"});
    department.record(boss(), ProductRecorded{"gas label", gasIndicator(1)}, {"pr-gas-label"});
    department.record(boss(), ProductRecorded{"gas strip", gasIndicator(4)}, {"pr-gas-strip"});
    IndicatorProduct vial{.kind = IndicatorKind::biological,
                          .response = Response::growth,
                          .species = Species::bacillusAtrophaeus,
                          .releaseMinutes = 240,
                          .needsActivation = true};
    vial.methods.add(Method::ethyleneOxide);
    department.record(boss(), ProductRecorded{"gas spore vial", vial}, {"pr-gas-vial"});
    for (const char* const name : {"gas-label", "gas-strip", "gas-vial"}) {
        department.record(morning(),
                          ProductLotRecorded{std::string("LOT-") + name, parseDate("2032-06-30")},
                          {std::string("pl-") + name, std::string("pr-") + name});
    }
    Packaging pouch{.form = PackageForm::pouch, .aerationMinutes = pouchMinutes};
    pouch.methods.add(Method::ethyleneOxide);
    department.record(lead(), PackagingRecorded{"film pouch", pouch}, {"pk-pouch"});
    department.record(lead(),
                      DeviceRecorded{{.name = "camera head",
                                      .allowedCycles = {{.method = Method::ethyleneOxide,
                                                         .program = "GAS 55",
                                                         .sterilizerModel = "gas cabinet"}},
                                      .aerationMinutes = cameraMinutes}},
                      {"dv-camera"});
    department.record(lead(), IncubatorRecorded{"incubator 2"}, {"in-2"});
}

void registerImmediateUse(Department& department)
{
    CycleSpecification quick =
        *SpecificationLibrary::builtIn().find("steam-gravity-132-immediate-nonporous@1");
    quick.id = "quick-132";
    quick.program = "QUICK 132";
    department.record(boss(), SpecificationRecorded{quick}, {"sp-quick"});
    Packaging tray{.form = PackageForm::openTray};
    tray.methods.add(Method::steam);
    department.record(lead(), PackagingRecorded{"plain tray", tray}, {"pk-tray"});
    department.record(
        lead(),
        DeviceRecorded{{.name = "needle holder",
                        .allowedCycles = {{.method = Method::steam,
                                           .airRemoval = AirRemoval::gravity,
                                           .temperature = Quantity{Unit::celsius, 132'000},
                                           .leastMs = 180'000}}}},
        {"dv-holder"});
}

void start(Department& department, Run& run, std::int64_t counter)
{
    run.counter = counter;
    run.start = department.now();
    department.record(morning(),
                      CycleStarted{ClockSource::facility, department.shown(), run.counter},
                      {run.cycle});
}

/// Ends a cycle, with what its printout says and its temperature and exposure.
void end(Department& department, const Run& run, const PrintoutRecorded& printed,
         const TypedQuantity& temperature, const TypedQuantity& exposure)
{
    department.record(morning(), CycleEnded{department.shown(), CycleOutcome::ended, {}, {}},
                      {run.cycle});
    department.record(morning(), CycleUnloaded{}, {run.cycle});
    department.record(morning(),
                      PrintoutRecorded{printed.program, printed.sterilizer, run.counter,
                                       journalTime(run.start, department.office().zone()),
                                       department.shown()},
                      {run.cycle});
    department.record(morning(), PhysicalRead{Parameter::temperature, temperature}, {run.cycle});
    department.record(morning(), PhysicalRead{Parameter::exposure, exposure}, {run.cycle});
    department.record(morning(), PhysicalVerified{}, {run.cycle});
}

void fillGas(Department& department, Run& run)
{
    run.cycle =
        department.reserve(morning(), {.sterilizer = "sz-5", .specification = "sp-gas"}).cycle;
    for (const char* const label : {"CAMERA-1", "CAMERA-2"}) {
        const std::string item = department.newId("it");
        const std::string external = department.newId("ci");
        ItemAdded added{.label = label,
                        .implant = Implant::no,
                        .packaging = "pk-pouch",
                        .devices = {"dv-camera"}};
        added.external = PlacedIndicator{external, "pr-gas-label", "pl-gas-label", {}};
        department.record(morning(), added, {item, run.cycle, external});
        run.items.push_back(item);
    }
    run.strip = department.newId("ci");
    run.vial = department.newId("bv");
    department.record(morning(),
                      PcdPlaced{"A",
                                {{run.strip, "pr-gas-strip", "pl-gas-strip", {}}},
                                {{run.vial, "pr-gas-vial", "pl-gas-vial", {}}}},
                      {department.newId("pd"), run.cycle, run.strip, run.vial});
}

void incubateGas(Department& department, const Run& run)
{
    const std::string control = department.newId("bc");
    department.record(morning(), ControlPrepared{"pr-gas-vial", "pl-gas-vial", {}}, {control});
    department.record(morning(), BiologicalActivated{}, {control});
    department.record(morning(), BiologicalIncubated{}, {control, "in-2"});
    department.record(morning(), BiologicalActivated{}, {run.vial, run.cycle});
    department.record(morning(), BiologicalIncubated{}, {run.vial, run.cycle, "in-2"});
}

void fillTray(Department& department, Run& run)
{
    run.cycle = department
                    .reserve(morning(), {.sterilizer = "sz-4",
                                         .specification = "sp-quick",
                                         .purpose = Purpose::immediateUse})
                    .cycle;
    run.strip = department.newId("ci");
    ItemAdded added{.label = "HOLDER-7",
                    .implant = Implant::no,
                    .packaging = "pk-tray",
                    .devices = {"dv-holder"}};
    added.internals = {{run.strip, "pr-strip", "pl-strip", "tray"}};
    run.items = {department.newId("it")};
    department.record(morning(), added, {run.items.front(), run.cycle, run.strip});
    department.record(morning(), ImmediateUseStated{{}, "case 0314-B", false}, {run.cycle});
}

} // namespace

void registerForLivingDay(Department& department)
{
    registerSterilizers(department);
    department.record(morning(), ProductLotRecorded{"LOT-vial-old", parseDate("2031-03-21")},
                      {"pl-vial-old", "pr-vial"});
    registerGas(department);
    registerImmediateUse(department);
}

void planGasLoad(Department& department)
{
    const auto run = std::make_shared<Run>();
    const auto at = [&](int hour, int minute, void (*what)(Department&, Run&)) {
        department.at(onDay(livingDay, hour, minute),
                      [&department, run, what] { what(department, *run); });
    };
    at(6, 5, fillGas);
    at(6, 15, [](Department& in, Run& it) { start(in, it, 610); });
    at(9, 45, [](Department& in, Run& it) {
        end(in, it, {.program = "GAS 55", .sterilizer = "GAS 1"},
            typed("54.7", Unit::celsius, 54'700), typed("62", Unit::minutes, 62'000));
        in.record(morning(), ChemicalRead{Seen::endColourReached}, {it.strip, it.cycle});
    });
    at(10, 0, [](Department& in, Run& it) {
        in.record(morning(), AerationStarted{{"52", 52'000}}, {in.newId("ar"), it.cycle});
        incubateGas(in, it);
    });
}

void planImmediateUse(Department& department)
{
    const auto run = std::make_shared<Run>();
    const auto at = [&](int hour, int minute, void (*what)(Department&, Run&)) {
        department.at(onDay(livingDay, hour, minute),
                      [&department, run, what] { what(department, *run); });
    };
    at(12, 20, fillTray);
    at(12, 28, [](Department& in, Run& it) { start(in, it, 7'500); });
    at(12, 37, [](Department& in, Run& it) {
        end(in, it, {.program = "QUICK 132", .sterilizer = "STERILIZER 4"},
            typed("132.6", Unit::celsius, 132'600), typed("3.0", Unit::minutes, 3'000));
        in.record(morning(), ChemicalRead{Seen::frontInAcceptZone}, {it.strip, it.cycle});
    });
}

} // namespace loadwarden::demo
