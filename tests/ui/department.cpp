#include "tests/ui/department.h"

#include "core/desk/recorder.h"
#include "core/desk/reservations.h"

#include <stdexcept>

namespace loadwarden::ui_tests {
namespace {

JournalTime shown(const std::string& time)
{
    return {local(time), -360};
}

template <class Value>
Value must(OrRefusal<Value> answer)
{
    if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
        throw std::logic_error("refused " + std::to_string(static_cast<int>(refusal->why)) + ' '
                               + refusal->subject + refusal->detail);
    }
    return std::get<Value>(std::move(answer));
}

void record(Office& office, const SignedIn& who, AnyAct act, std::vector<std::string> subjects)
{
    auto signature = SignIn(office).sign(who, supervisorPin);
    (void)must(Recorder(office).record(who,
                                       {.act = std::move(act), .subjects = std::move(subjects)},
                                       std::get<Signature>(std::move(signature))));
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

void registerDepartment(Desktop& desktop)
{
    desktop.clock().set(local("05:30"));
    desktop.prepare([](Office& office, const SignedIn& who) {
        const auto say = [&](AnyAct act, std::vector<std::string> subjects) {
            record(office, who, std::move(act), std::move(subjects));
        };
        say(SterilizerRecorded{.name = "S1", .model = "M1"}, {"sz-1"});
        say(SpecificationRecorded{specification(Purpose::routine)}, {"sp-1"});
        say(SpecificationRecorded{specification(Purpose::bowieDick)}, {"sp-2"});
        say(ProductRecorded{"tape", chemical(1, Response::colour)}, {"pr-1"});
        IndicatorProduct strip = chemical(5, Response::movingFront);
        strip.methods.add(Method::hydrogenPeroxide);
        say(ProductRecorded{"strip", strip}, {"pr-2"});
        IndicatorProduct sheet = chemical(2, Response::sheet);
        sheet.sheet = {.leastMs = 210'000,
                       .mostMs = 240'000,
                       .leastCelsiusHundredths = 13'200,
                       .mostCelsiusHundredths = 13'400};
        say(ProductRecorded{"test sheet", sheet}, {"pr-3"});
        IndicatorProduct vial{.kind = IndicatorKind::biological,
                              .response = Response::growth,
                              .species = Species::geobacillusStearothermophilus,
                              .releaseMinutes = 1'440,
                              .needsActivation = true};
        vial.methods.add(Method::steam);
        say(ProductRecorded{"vial", vial}, {"pr-4"});
        for (const char* const number : {"1", "2", "3", "4"}) {
            say(ProductLotRecorded{std::string("N") + number, parseDate("2032-01-01")},
                {std::string("pl-") + number, std::string("pr-") + number});
        }
        Packaging wrap{.form = PackageForm::wrap};
        wrap.methods.add(Method::steam);
        say(PackagingRecorded{"wrap", wrap}, {"pk-1"});
        say(DeviceRecorded{{.name = "device",
                            .allowedCycles = {{.method = Method::steam,
                                               .airRemoval = AirRemoval::prevacuum,
                                               .temperature = Quantity{Unit::celsius, 132'000},
                                               .leastMs = 240'000}}}},
            {"dv-1"});
        say(IncubatorRecorded{"block"}, {"in-1"});
        say(SterilizerReturned{"installed"}, {"sz-1"});
        say(ClockCompared{shown("05:30"), 0}, {"sz-1"});
    });
}

void passBowieDick(Desktop& desktop)
{
    desktop.clock().set(local("05:50"));
    desktop.prepare([&](Office& office, const SignedIn& who) {
        const std::string test = must(reserveCycle(office, who,
                                                   {.sterilizer = "sz-1",
                                                    .specification = "sp-2",
                                                    .purpose = Purpose::bowieDick}))
                                     .cycle;
        record(office, who, SheetPlaced{"pr-3", "pl-3"}, {"ci-bd", test});
        desktop.clock().set(local("06:00"));
        record(office, who, CycleStarted{ClockSource::facility, shown("06:00"), 100}, {test});
        desktop.clock().set(local("06:05"));
        record(office, who, CycleEnded{shown("06:05"), CycleOutcome::ended, {}, {}}, {test});
        record(office, who,
               TestConditionsRecorded{.chamberEmpty = true,
                                      .dryingRun = false,
                                      .exposureMinutes = TypedNumber{"3.5", 3'500},
                                      .exposureCelsius = TypedNumber{"134", 134'000}},
               {test});
        record(office, who, ChemicalRead{Seen::uniformComplete}, {"ci-bd", test});
    });
}

void hire(Desktop& desktop, const std::string& id, const std::string& name, Role role,
          const std::string& badge, const std::string& pin)
{
    desktop.prepare([&](Office& office, const SignedIn& who) {
        record(office, who, StaffRecorded{.name = name, .role = role, .badge = badge}, {id});
        auto signature = SignIn(office).sign(who, supervisorPin);
        (void)must(SignIn(office).setPin(who, std::get<Signature>(std::move(signature)), id, pin));
    });
}

std::string runTest(Desktop& desktop, Purpose purpose)
{
    std::string cycle;
    desktop.clock().set(local("06:45"));
    desktop.prepare([&](Office& office, const SignedIn& who) {
        if (purpose != Purpose::bowieDick) {
            CycleSpecification made = specification(purpose);
            made.id = "spec-3";
            made.program = "P3";
            record(office, who, SpecificationRecorded{made}, {"sp-3"});
        }
        cycle = must(reserveCycle(office, who,
                                  {.sterilizer = "sz-1",
                                   .specification = purpose == Purpose::bowieDick ? "sp-2" : "sp-3",
                                   .purpose = purpose}))
                    .cycle;
        if (purpose == Purpose::bowieDick) {
            record(office, who, SheetPlaced{"pr-3", "pl-3"}, {"ci-b2", cycle});
        }
        desktop.clock().set(local("06:50"));
        record(office, who, CycleStarted{ClockSource::facility, shown("06:50"), {}}, {cycle});
        desktop.clock().set(local("06:55"));
        record(office, who, CycleEnded{shown("06:55"), CycleOutcome::ended, {}, {}}, {cycle});
    });
    desktop.clock().set(local("07:05"));
    return cycle;
}

std::string runLoad(Desktop& desktop, Implant implant, Purpose purpose)
{
    std::string cycle;
    desktop.clock().set(local("06:40"));
    desktop.prepare([&](Office& office, const SignedIn& who) {
        cycle =
            must(reserveCycle(office, who,
                              {.sterilizer = "sz-1", .specification = "sp-1", .purpose = purpose}))
                .cycle;
        ItemAdded item{.label = "I1", .implant = implant, .packaging = "pk-1", .devices = {"dv-1"}};
        item.external = PlacedIndicator{"ci-e", "pr-1", "pl-1", {}};
        record(office, who, item, {"it-1", cycle, "ci-e"});
        record(office, who, PcdPlaced{"PCD", {{"ci-p", "pr-2", "pl-2", {}}}, {}},
               {"pd-1", cycle, "ci-p"});
        desktop.clock().set(local("07:00"));
        record(office, who, CycleStarted{ClockSource::facility, shown("07:00"), 101}, {cycle});
        desktop.clock().set(local("07:50"));
        record(office, who, CycleEnded{shown("07:50"), CycleOutcome::ended, {}, {}}, {cycle});
    });
    desktop.clock().set(local("08:30"));
    return cycle;
}

std::string reserveLoad(Desktop& desktop, Method method)
{
    std::string cycle;
    desktop.prepare([&](Office& office, const SignedIn& who) {
        const CycleSpecification program{
            .id = "P9", .revision = 1, .method = method, .program = "P9", .cycleType = "T9"};
        record(office, who, SpecificationRecorded{program}, {"sp-9"});
        cycle =
            must(reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-9"})).cycle;
    });
    return cycle;
}

void runVials(Desktop& desktop)
{
    desktop.prepare([&](Office& office, const SignedIn& who) {
        const auto load = [&](const std::string& number, const std::string& begin,
                              const std::string& end, Implant implant) {
            desktop.clock().set(local(begin));
            const std::string cycle =
                must(reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-1"}))
                    .cycle;
            record(office, who, ItemAdded{.label = "V" + number, .implant = implant},
                   {"it-v" + number, cycle});
            record(office, who, PcdPlaced{"PCD", {}, {{"bv-" + number, "pr-4", "pl-4", {}}}},
                   {"pd-v" + number, cycle, "bv-" + number});
            record(office, who, CycleStarted{ClockSource::facility, shown(begin), {}}, {cycle});
            desktop.clock().set(local(end));
            record(office, who, CycleEnded{shown(end), CycleOutcome::ended, {}, {}}, {cycle});
            return cycle;
        };
        const std::string held = load("1", "07:00", "07:50", Implant::yes);
        (void)load("2", "08:00", "08:30", Implant::no);
        const std::string grown = load("3", "08:40", "09:10", Implant::no);
        desktop.clock().set(local("09:15"));
        record(office, who, ControlPrepared{"pr-4", "pl-4", {}}, {"bc-1"});
        for (const std::vector<std::string>& subjects :
             {std::vector<std::string>{"bc-1"}, {"bv-1", held}, {"bv-3", grown}}) {
            record(office, who, BiologicalActivated{}, subjects);
            std::vector<std::string> inside = subjects;
            inside.emplace_back("in-1");
            record(office, who, BiologicalIncubated{}, inside);
        }
        desktop.clock().set(local("10:00"));
        record(office, who, BiologicalRead{Seen::growth}, {"bv-3", grown});
    });
}

} // namespace loadwarden::ui_tests
