#include "core/release/view.h"

#include "core/release/cycle_contexts.h"
#include "core/release/settings.h"

#include <algorithm>

namespace loadwarden {
namespace {

AirTest airTestOf(const HistoryCycle& cycle, const CycleTimes& times, const TestOutcome& outcome,
                  Instant now)
{
    switch (outcome.result) {
    case TestResult::failed: return AirTest::failed;
    case TestResult::passed: return AirTest::passed;
    case TestResult::pending: return AirTest::pending;
    case TestResult::voided:
        return cycle.voidReason && standsAs(cycle.voidReason->act, Role::lead, now)
                       && isNamed(cycle.voidReason->why)
                       && cycle.voidReason->act.recordedAt >= *times.endForOrder()
                   ? AirTest::asNotMade
                   : AirTest::pending;
    }
    return AirTest::pending;
}

PcdRequirement pcdRequirement(const Policy& policy, Method method)
{
    switch (method) {
    case Method::steam: return policy.pcdSteam;
    case Method::hydrogenPeroxide: return policy.pcdHydrogenPeroxide;
    case Method::dryHeat: return policy.pcdDryHeat;
    case Method::ethyleneOxide: return PcdRequirement::required;
    case Method::unknown: break;
    }
    return PcdRequirement::ifPlaced;
}

} // namespace

BiFrequency frequencyOf(const Policy& policy, Method method)
{
    switch (method) {
    case Method::steam: return policy.biSteam;
    case Method::hydrogenPeroxide: return policy.biHydrogenPeroxide;
    case Method::dryHeat: return policy.biDryHeat;
    case Method::ethyleneOxide: return policy.biEthyleneOxide; // a policy can say nothing else
    case Method::unknown: break;
    }
    return BiFrequency::eachDay;
}

View::View(const Evidence& given, const Policy& with, Instant at,
           std::pmr::memory_resource* resource)
    : evidence(given),
      policy(with),
      now(at),
      load(given.record.load),
      sterilizer(given.record.sterilizer ? &*given.record.sterilizer : nullptr),
      specification(given.record.specification ? &*given.record.specification : nullptr),
      method(specification != nullptr ? specification->method : Method::unknown),
      airRemoval(specification != nullptr ? specification->airRemoval : AirRemoval::unknown),
      purpose(specification != nullptr ? specification->purpose : Purpose::routine),
      cycleType(specification != nullptr ? std::string_view(specification->cycleType)
                                         : std::string_view()),
      context(loadContextOf(given.record, given.load)),
      controlStates(resource),
      biological(biologicalSettings(with)),
      implantRejections(resource),
      vials(resource),
      pcdIndicators(resource),
      items(resource),
      internals(resource),
      history(resource),
      memory(resource)
{
    const bool wholeLoad = !holdsImplantsOnly();
    biRequired =
        (method != Method::unknown && frequencyOf(policy, method) == BiFrequency::everyLoad)
        || (evidence.hasImplant && wholeLoad);
    pcdRequired = pcdRequirement(policy, method) == PcdRequirement::required || evidence.hasImplant;
    judgeControls();
    judgeVials();
    judgePcds();
    judgeItems();
    judgeHistory();
    implant = judgeImplant();
}

const Packaging* View::packagingOf(const Item& item) const
{
    return item.packagingIndex < 0
               ? nullptr
               : &evidence.record.packagings[static_cast<std::size_t>(item.packagingIndex)];
}

bool View::isIn(PackageForm form, const Item& item) const
{
    const Packaging* packaging = packagingOf(item);
    return packaging != nullptr && packaging->form == form;
}

TestSurroundings View::testSurroundings() const
{
    return {sterilizer->cycles, evidence.history, controlStates};
}

bool View::holdsImplantsOnly() const
{
    return policy.implantHold == ImplantHold::implantsOnly && method != Method::ethyleneOxide
           && !isImmediateUse();
}

void View::judgeControls()
{
    controlStates.reserve(evidence.known.controls.size());
    for (const Control& control : evidence.known.controls) {
        controlStates.push_back(judgeControl(control, biological, evidence.known, now));
    }
    biological.controlStates = controlStates;
}

void View::judgeVials()
{
    BiSummary summary;
    for (const ProcessChallengeDevice& pcd : load.pcds) {
        for (const Vial& vial : pcd.vials) {
            const VialJudgement judged =
                judgeVial(vial, context, false, biological, evidence.known, now);
            summary.add(judged);
            hasPositiveVial = hasPositiveVial || judged.state == VialState::positive;
            hasPendingVial = hasPendingVial || judged.state == VialState::pending || judged.unclear;
            hasOnlyVoidVials =
                hasOnlyVoidVials
                && (judged.state == VialState::voided || judged.state == VialState::lost);
            vials.push_back({&pcd, &vial, judged});
        }
    }
    bi = summary.state();
    hasOnlyVoidVials = hasOnlyVoidVials && !vials.empty();
}

void View::judgePcds()
{
    for (const ProcessChallengeDevice& pcd : load.pcds) {
        if (pcd.indicators.empty()) {
            continue;
        }
        const TypeSet types = pcdTypes(policy, method, pcd.vials, evidence.known);
        for (const ChemicalIndicator& indicator : pcd.indicators) {
            pcdIndicators.push_back({&pcd, &indicator, judgeChemical(indicator, types, now)});
        }
    }
}

void View::judgeItems()
{
    const TypeSet inside =
        method == Method::steam ? policy.internalTypesSteam : policy.internalTypesOther;
    items.reserve(load.items.size());
    internals.reserve(load.items.size()); // mostly one each
    for (const Item& item : load.items) {
        ItemIndicators& judged = items.emplace_back();
        judged.externalAsked = !isOpenTray(item) && !isSeenThrough(item);
        judged.firstInternal = internals.size();
        if (item.external) {
            judged.external = judgeChemical(*item.external, TypeSet{1}, now);
        }
        for (const ChemicalIndicator& internal : item.internals) {
            internals.push_back(judgeChemical(internal, inside, now));
        }
    }
}

void View::judgeHistory()
{
    if (sterilizer == nullptr) {
        return;
    }
    const TestSurroundings around = testSurroundings();
    history.reserve(sterilizer->cycles.size());
    for (std::size_t i = 0; i < sterilizer->cycles.size(); ++i) {
        PastCycle& past = history.emplace_back();
        past.cycle = &sterilizer->cycles[i];
        past.times = &evidence.history[i];
        past.before = isBefore(*past.times, evidence.load);
        past.after = isBefore(evidence.load, *past.times);
        const CycleContext pastContext = contextOf(*past.cycle, *past.times);
        BiSummary summary;
        for (const Vial& vial : past.cycle->vials) {
            summary.add(judgeVial(vial, pastContext, true, biological, evidence.known, now));
        }
        past.bi = summary.state();
        if (past.cycle->kind != CycleKind::load) {
            past.test = judgeTestCycle(*past.cycle, *past.times, around, evidence.known, policy,
                                       now, nullptr, nullptr);
        }
        if (past.cycle->kind == CycleKind::bowieDick) {
            past.airTest = airTestOf(*past.cycle, *past.times, past.test, now);
        }
    }
}

TypeSet implantTypes(const View& view, const ProcessChallengeDevice& pcd)
{
    TypeSet types;
    if (isGas(view.method) || view.method == Method::dryHeat) {
        for (const Vial& vial : pcd.vials) {
            const IndicatorProduct* product = view.evidence.known.productOf(vial.link);
            if (product != nullptr && product->kind == IndicatorKind::biological) {
                for (int type : product->implantIndicatorTypes) {
                    types.add(type);
                }
            }
        }
    }
    return types.empty() ? TypeSet{5} : types;
}

namespace {

/// What one PCD can still do for the implants of its load.
struct ImplantPcd {
    bool rejected;
    bool good;
    bool possible;
    bool indicated; ///< it has an indicator of a needed type
};

/// Whether another reading, or an entry in the register of lots, can still make it count.
bool isStillOpen(const ChemicalJudgement& judged)
{
    return !judged.spoiled || judged.lacksOnlyLot;
}

ImplantPcd judgeImplantPcd(const View& view, const ProcessChallengeDevice& pcd)
{
    const TypeSet needed = implantTypes(view, pcd);
    bool negative = false;
    bool openVial = pcd.vials.empty();
    for (const LoadVial& each : view.vials) {
        if (each.pcd == &pcd) {
            negative = negative || each.judged.state == VialState::negative;
            openVial = openVial || each.judged.state == VialState::negative
                       || each.judged.state == VialState::pending;
        }
    }
    bool any = false;
    bool rejected = false;
    bool allAccepted = true;
    bool allOpen = true;
    for (const PcdIndicator& each : view.pcdIndicators) {
        if (each.pcd != &pcd || !needed.contains(each.indicator->type)) {
            continue;
        }
        any = true;
        const ChemicalState state = each.judged.state;
        rejected = rejected || state == ChemicalState::rejected;
        allAccepted = allAccepted && state == ChemicalState::accepted;
        allOpen = allOpen
                  && (state == ChemicalState::accepted
                      || (state != ChemicalState::rejected && isStillOpen(each.judged)
                          && !isLost(*each.indicator, state, view.now)));
    }
    return {.rejected = rejected,
            .good = negative && any && allAccepted,
            .possible = openVial && allOpen,
            .indicated = any};
}

} // namespace

ImplantState View::judgeImplant()
{
    if (!evidence.hasImplant) {
        return ImplantState::holds;
    }
    bool good = false;
    bool possible = false;
    bool indicated = false; // possible, with an indicator of a needed type
    for (const ProcessChallengeDevice& pcd : load.pcds) {
        const ImplantPcd judged = judgeImplantPcd(*this, pcd);
        good = good || judged.good;
        possible = possible || judged.possible;
        indicated = indicated || (judged.possible && judged.indicated);
        if (judged.rejected) {
            implantRejections.push_back(&pcd);
        }
    }
    if (hasPositiveVial) {
        return ImplantState::failsBi;
    }
    if (!implantRejections.empty()) {
        return ImplantState::failsIndicator;
    }
    if (good && !hasPendingVial) {
        return ImplantState::holds;
    }
    if (load.pcds.empty()) {
        return ImplantState::missing;
    }
    if (good || indicated) {
        return ImplantState::pending;
    }
    return possible ? ImplantState::indicatorMissing : ImplantState::impossible;
}

} // namespace loadwarden
