#include "core/exchange/specification_library.h"
#include "demo/department/department.h"

namespace loadwarden::demo {

namespace {

IndicatorProduct chemical(int type, Response response)
{
    IndicatorProduct product{.kind = IndicatorKind::chemical, .type = type, .response = response};
    product.methods.add(Method::steam);
    return product;
}

CycleSpecification bowieDick()
{
    return {.id = "bowie-dick-134",
            .revision = 1,
            .method = Method::steam,
            .airRemoval = AirRemoval::prevacuum,
            .purpose = Purpose::bowieDick,
            .program = "AIR TEST",
            .cycleType = "steam-prevacuum-132"};
}

CycleSpecification qualification()
{
    CycleSpecification made = bowieDick();
    made.id = "qualification-132";
    made.purpose = Purpose::qualification;
    made.program = "PREVAC 132";
    return made;
}

} // namespace

void registerEverything(Department& department)
{
    const auto signedBy = [&](AnyAct act, std::vector<std::string> subjects) {
        department.record(boss(), std::move(act), std::move(subjects));
    };
    for (const char* const number : {"1", "2"}) {
        const std::string id = std::string("sz-") + number;
        signedBy(SterilizerRecorded{.name = std::string("STERILIZER ") + number, .model = "A4"},
                 {id});
        signedBy(SterilizerReturned{"qualified at installation"}, {id});
        department.record(morning(), ClockCompared{department.shown(), 0}, {id});
    }
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    CycleSpecification wrapped = *library.find("steam-prevacuum-132-wrapped@1");
    wrapped.id = "wrapped-132";
    wrapped.program = "PREVAC 132";
    signedBy(SpecificationRecorded{wrapped}, {"sp-wrapped"});
    signedBy(SpecificationRecorded{bowieDick()}, {"sp-air"});
    signedBy(SpecificationRecorded{qualification()}, {"sp-qualification"});

    signedBy(ProductRecorded{"tape", chemical(1, Response::colour)}, {"pr-tape"});
    signedBy(ProductRecorded{"integrator strip", chemical(5, Response::movingFront)}, {"pr-strip"});
    IndicatorProduct sheet = chemical(2, Response::sheet);
    sheet.sheet = {.leastMs = 210'000,
                   .mostMs = 240'000,
                   .leastCelsiusHundredths = 13'200,
                   .mostCelsiusHundredths = 13'400};
    signedBy(ProductRecorded{"air removal sheet", sheet}, {"pr-sheet"});
    IndicatorProduct vial{.kind = IndicatorKind::biological,
                          .response = Response::growth,
                          .species = Species::geobacillusStearothermophilus,
                          .releaseMinutes = 60,
                          .needsActivation = true};
    vial.methods.add(Method::steam);
    signedBy(ProductRecorded{"spore vial", vial}, {"pr-vial"});
    for (const char* const name : {"tape", "strip", "sheet", "vial"}) {
        department.record(morning(),
                          ProductLotRecorded{std::string("LOT-") + name, parseDate("2032-06-30")},
                          {std::string("pl-") + name, std::string("pr-") + name});
    }
    Packaging wrap{.form = PackageForm::wrap};
    wrap.methods.add(Method::steam);
    department.record(lead(), PackagingRecorded{"two-layer wrap", wrap}, {"pk-wrap"});
    department.record(
        lead(),
        DeviceRecorded{{.name = "general instruments",
                        .allowedCycles = {{.method = Method::steam,
                                           .airRemoval = AirRemoval::prevacuum,
                                           .temperature = Quantity{Unit::celsius, 132'000},
                                           .leastMs = 240'000,
                                           .dryingMs = 1'200'000}}}},
        {"dv-general"});
    department.record(lead(), IncubatorRecorded{"incubator 1"}, {"in-1"});
}

} // namespace loadwarden::demo
