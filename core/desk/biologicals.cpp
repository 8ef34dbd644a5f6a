#include "core/desk/biologicals.h"

#include "core/desk/journal_entries.h"
#include "core/desk/newest_facts.h"
#include "core/desk/today.h"
#include "core/release/assemble.h"
#include "core/release/cycle_contexts.h"
#include "core/release/settings.h"
#include "core/store/finder.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCycles = 10'000;

void takeEarlier(std::optional<Instant>& earliest, std::optional<Instant> other, Instant after)
{
    if (other && *other > after && (!earliest || *other < *earliest)) {
        earliest = other;
    }
}

/// A register's names by id.
template <class Recorded>
std::map<std::string, Recorded> registerOf(ReadSnapshot& snapshot, std::string_view prefix)
{
    const std::vector<Entry> entries = registerEntries(snapshot, prefix);
    const FactBook book(entries);
    std::map<std::string, Recorded> found;
    for (const Fact* const fact : newestFacts<Recorded>(book)) {
        found.emplace(fact->origin->subjects.front(), std::get<Recorded>(fact->current().act));
    }
    return found;
}

/// Which id a lot of a product has.
std::map<std::pair<std::string, std::string>, std::string> lotIds(ReadSnapshot& snapshot)
{
    std::map<std::pair<std::string, std::string>, std::string> ids;
    for (const Entry& entry : registerEntries(snapshot, "pl")) {
        if (const auto* const lot = std::get_if<ProductLotRecorded>(&entry.act)) {
            ids[{std::string(entry.subject("pr")), lot->number}] = entry.subject("pl");
        }
    }
    return ids;
}

/// The rules call a vial void as long as it is not activated; until it is incubated it still can
/// be.
bool awaitsActivation(const Vial& vial, const VialJudgement& judged)
{
    return judged.state == VialState::voided && judged.cause == Cause::notActivated
           && !vial.activation && !vial.incubationStart;
}

/// A vial that nothing vouches for stays in sight until its load is signed.
bool isVoidByControl(const VialJudgement& judged)
{
    return judged.cause == Cause::controlDead || judged.cause == Cause::controlMissing;
}

/// What is asked of a vial that waits.
BiStep stepOf(const Vial& vial, const IndicatorProduct* product, const VialJudgement& judged,
              bool hasEnded)
{
    if (judged.unclear) {
        return BiStep::readSecond;
    }
    if (!hasEnded || !(judged.state == VialState::pending || awaitsActivation(vial, judged))) {
        return BiStep::none;
    }
    if (!vial.incubationStart) {
        return product != nullptr && product->needsActivation && !vial.activation
                   ? BiStep::activate
                   : BiStep::incubate;
    }
    switch (judged.why) {
    case PendingWhy::processIndicator: return BiStep::processIndicator;
    case PendingWhy::control: return BiStep::none;
    default: return BiStep::read;
    }
}

BiStep stepOf(const Control& control, const IndicatorProduct* product, ControlState state)
{
    if (!control.incubationStart) {
        return product != nullptr && product->needsActivation && !control.activation
                   ? BiStep::activate
                   : BiStep::incubate;
    }
    if (state != ControlState::pending) {
        return BiStep::none;
    }
    const bool unclear = std::ranges::any_of(control.readings, [](const IndicatorReading& reading) {
        return reading.seen == Seen::unclear;
    });
    return unclear ? BiStep::readSecond : BiStep::read;
}

class Making {
public:
    Making(ReadSnapshot& snapshot, EntryCache& cache, Instant now)
        : m_snapshot(snapshot),
          m_views(snapshot, cache, now),
          m_products(registerOf<ProductRecorded>(snapshot, "pr")),
          m_incubators(registerOf<IncubatorRecorded>(snapshot, "in")),
          m_sterilizers(registerOf<SterilizerRecorded>(snapshot, "sz")),
          m_lots(lotIds(snapshot))
    {
        m_made.now = now;
    }

    Biologicals make()
    {
        for (const auto& [id, recorded] : m_incubators) {
            m_made.incubators.push_back({id, recorded.name});
        }
        for (const std::string& cycle : cycles()) {
            if (const auto view = m_views.of(cycle)) {
                take(*view);
            }
        }
        looseControls();
        for (auto& [key, group] : m_groups) {
            finish(group);
            m_made.groups.push_back(std::move(group));
        }
        order();
        return std::move(m_made);
    }

private:
    /// Cycles with a vial that waits or that grew.
    std::set<std::string> cycles()
    {
        Finder finder(m_snapshot);
        std::set<std::string> found;
        for (const FoundVial& vial : finder.openVials(mostCycles)) {
            found.insert(vial.cycle);
        }
        const auto take = [&found](const std::vector<FoundCycle>& cycles) {
            for (const FoundCycle& cycle : cycles) {
                if (cycle.hasVials && (cycle.disposed == 0 || cycle.hasTrouble)) {
                    found.insert(cycle.id);
                }
            }
        };
        take(finder.openLoads(mostCycles));
        take(finder.cyclesBetween({}, (m_made.now - lookBack).ms, m_made.now.ms, mostCycles));
        return found;
    }

    void take(const CycleView& view)
    {
        const Evidence evidence = assemble(view.folded.record);
        BiologicalSettings settings = biologicalSettings(view.policy);
        std::vector<ControlState> states;
        for (const Control& control : evidence.known.controls) {
            states.push_back(judgeControl(control, settings, evidence.known, m_made.now));
        }
        settings.controlStates = states;
        const CycleContext context = view.isTest()
                                         ? contextOf(*evidence.record.test, *evidence.test)
                                         : loadContextOf(evidence.record, evidence.load);
        const auto judge = [&](const Vial& vial) {
            vialOf(view, evidence, vial,
                   judgeVial(vial, context, view.isTest(), settings, evidence.known, m_made.now),
                   states, context.end.has_value());
        };
        if (view.isTest()) {
            std::ranges::for_each(evidence.record.test->vials, judge);
            return;
        }
        for (const ProcessChallengeDevice& pcd : evidence.record.load.pcds) {
            std::ranges::for_each(pcd.vials, judge);
        }
    }

    void vialOf(const CycleView& view, const Evidence& evidence, const Vial& vial,
                const VialJudgement& judged, const std::vector<ControlState>& states, bool hasEnded)
    {
        takeEarlier(m_made.nextChangeAt, judged.changesAt, m_made.now);
        if (judged.state == VialState::positive) {
            positive(view, vial, judged);
            return;
        }
        const bool isWaiting = judged.unclear || judged.state == VialState::pending
                               || awaitsActivation(vial, judged)
                               || (isVoidByControl(judged) && !view.signedAs);
        if (!isWaiting || !hasEnded) {
            return;
        }
        const IndicatorProduct* const product = evidence.known.productOf(vial.link);
        BiGroup& group =
            groupOf(vial.product, vial.lot, vial.incubator, vial.incubationDay, product);
        const std::string sterilizer = nameOf(m_sterilizers, view.folded.sterilizer);
        BiTest test{.id = vial.id,
                    .cycle = view.id,
                    .lot = view.lot(),
                    .sterilizer = sterilizer,
                    .hasImplant = mayHoldImplant(view),
                    .signedAs = view.signedAs,
                    .started = vial.incubationStart,
                    .dueAt = judged.dueAt,
                    .asksProcessIndicator = product != nullptr && product->hasProcessIndicator
                                            && vial.processIndicator == ProcessIndicator::unknown,
                    .vial = judged,
                    .control = ControlState::asMissing,
                    .step = stepOf(vial, product, judged, hasEnded)};
        test.vial.positiveBy = nullptr; // it is the evidence's, which goes
        group.vials.push_back(std::move(test));
        controlsBeside(group, evidence, vial, states);
    }

    /// The controls of its product, lot and incubator that went in on its day, or near it.
    void controlsBeside(BiGroup& group, const Evidence& evidence, const Vial& vial,
                        const std::vector<ControlState>& states)
    {
        for (std::int32_t i = 0; i < vial.controls.count; ++i) {
            const auto index = static_cast<std::size_t>(
                evidence.known.controlOrder[static_cast<std::size_t>(vial.controls.first + i)]);
            const Control& control = evidence.known.controls[index];
            const IndicatorProduct* const product = evidence.known.productOf(control.link);
            const ControlReach reach =
                product != nullptr && product->control ? *product->control : ControlReach::day;
            if (reach == ControlReach::day && control.incubationDay != vial.incubationDay) {
                continue;
            }
            add(group, control, product, states[index]);
        }
    }

    void add(BiGroup& group, const Control& control, const IndicatorProduct* product,
             ControlState state)
    {
        if (std::ranges::find(group.controls, control.id, &BiTest::id) != group.controls.end()) {
            return;
        }
        m_placed.insert(control.id);
        BiTest test{.id = control.id,
                    .isControl = true,
                    .started = control.incubationStart,
                    .dueAt = {},
                    .asksProcessIndicator = false,
                    .control = state,
                    .step = stepOf(control, product, state)};
        if (control.incubationStart && product != nullptr) {
            test.dueAt = *control.incubationStart + Duration::minutes(product->releaseMinutes);
        }
        group.controls.push_back(std::move(test));
    }

    /// Controls of a lot that were prepared and are in no incubator yet.
    void looseControls()
    {
        for (auto& [key, group] : m_groups) {
            if (group.productLot.empty()) {
                continue;
            }
            for (const std::string& id :
                 Finder(m_snapshot).controlsOf(group.productLot, mostCycles)) {
                if (!m_placed.contains(id)) {
                    looseControl(group, id);
                }
            }
        }
    }

    void looseControl(BiGroup& group, const std::string& id)
    {
        bool activated = false;
        for (const Entry& entry : entriesAbout(m_snapshot, id)) {
            if (std::holds_alternative<BiologicalIncubated>(entry.act)
                || std::holds_alternative<EntryVoided>(entry.act)) {
                return;
            }
            if (m_made.now - entry.recordedAt.at > Duration::hours(48)) {
                return; // nobody incubates what was taken out two days ago
            }
            activated = activated || std::holds_alternative<BiologicalActivated>(entry.act);
        }
        BiTest test{.id = id, .isControl = true};
        test.step = group.needsActivation && !activated ? BiStep::activate : BiStep::incubate;
        group.controls.push_back(std::move(test));
    }

    BiGroup& groupOf(const std::string& product, const std::string& lot,
                     const std::string& incubator, std::optional<Date> day,
                     const IndicatorProduct* known)
    {
        const auto key = std::tuple(product, lot, incubator, day ? day->days : 0);
        const auto [at, isNew] = m_groups.try_emplace(key);
        BiGroup& group = at->second;
        if (isNew) {
            group.product = product;
            const auto named = m_products.find(product);
            group.productName = named == m_products.end() ? product : named->second.name;
            group.lotNumber = lot;
            const auto id = m_lots.find({product, lot});
            group.productLot = id == m_lots.end() ? std::string() : id->second;
            group.incubator = incubator;
            group.incubatorName = nameOf(m_incubators, incubator);
            group.day = day;
            group.needsActivation = known != nullptr && known->needsActivation;
        }
        return group;
    }

    template <class Recorded>
    static std::string nameOf(const std::map<std::string, Recorded>& known, const std::string& id)
    {
        const auto found = known.find(id);
        return found == known.end() ? id : found->second.name;
    }

    void finish(BiGroup& group)
    {
        group.isControlDead = std::ranges::any_of(group.controls, [](const BiTest& control) {
            return control.control == ControlState::dead;
        });
        group.isWithoutControl = !group.incubator.empty()
                                 && std::ranges::none_of(group.controls, [](const BiTest& control) {
                                        return control.started.has_value();
                                    });
        for (const auto* const tests : {&group.controls, &group.vials}) {
            for (const BiTest& test : *tests) {
                if (test.step == BiStep::read) {
                    takeEarlier(m_made.nextChangeAt, test.dueAt, m_made.now);
                }
            }
        }
    }

    void positive(const CycleView& view, const Vial& vial, const VialJudgement& judged)
    {
        if (m_made.now - judged.positiveSince > lookBack) {
            return;
        }
        BiPositive found{.vial = vial.id,
                         .cycle = view.id,
                         .lot = view.lot(),
                         .sterilizer = view.folded.sterilizer,
                         .sterilizerName = nameOf(m_sterilizers, view.folded.sterilizer),
                         .since = judged.positiveSince,
                         .lastNegativeLot = {},
                         .held = {},
                         .isStopped = false};
        if (!found.sterilizer.empty()) {
            heldBy(found);
            found.isStopped = isStopped(found.sterilizer, found.since);
        }
        m_made.positives.push_back(std::move(found));
    }

    /// Whether it was taken out after that, and not returned since.
    bool isStopped(const std::string& sterilizer, Instant since)
    {
        bool stopped = false;
        for (const Entry& entry : entriesAbout(m_snapshot, sterilizer)) {
            if (std::holds_alternative<SterilizerTakenOut>(entry.act)) {
                stopped = entry.recordedAt.at >= since;
            } else if (std::holds_alternative<SterilizerReturned>(entry.act)) {
                stopped = false;
            }
        }
        return stopped;
    }

    /// What the sterilizer has run since its last negative vial before the positive one.
    void heldBy(BiPositive& found)
    {
        const auto cycles = Finder(m_snapshot)
                                .cyclesBetween(found.sterilizer, (found.since - lookBack).ms,
                                               m_made.now.ms, mostCycles);
        const auto own = std::ranges::find(cycles, found.cycle, &FoundCycle::id);
        auto first = own;
        while (first != cycles.begin()) {
            const auto before = std::prev(first);
            const auto view = m_views.of(before->id);
            if (before->hasVials && view && isNegative(*view)) {
                found.lastNegativeLot = view->lot();
                break;
            }
            first = before;
        }
        for (auto cycle = first; cycle != cycles.end(); ++cycle) {
            const bool isLoad = cycle->purpose.empty() || cycle->purpose == "routine"
                                || cycle->purpose == "immediate-use";
            const auto view = m_views.of(cycle->id);
            if (isLoad && view) {
                found.held.push_back({.cycle = cycle->id,
                                      .lot = view->lot(),
                                      .signedAs = view->signedAs,
                                      .hasImplant = mayHoldImplant(*view),
                                      .isPositive = cycle->id == found.cycle});
            }
        }
    }

    bool isNegative(const CycleView& view)
    {
        const Evidence evidence = assemble(view.folded.record);
        const BiologicalSettings settings = biologicalSettings(view.policy);
        BiSummary summary;
        const auto add = [&](const Vial& vial, const CycleContext& context) {
            summary.add(judgeVial(vial, context, true, settings, evidence.known, m_made.now));
        };
        if (view.isTest()) {
            for (const Vial& vial : evidence.record.test->vials) {
                add(vial, contextOf(*evidence.record.test, *evidence.test));
            }
        } else {
            for (const ProcessChallengeDevice& pcd : evidence.record.load.pcds) {
                for (const Vial& vial : pcd.vials) {
                    add(vial, loadContextOf(evidence.record, evidence.load));
                }
            }
        }
        return summary.state() == BiState::negative;
    }

    void order()
    {
        std::ranges::stable_sort(m_made.positives, [](const BiPositive& a, const BiPositive& b) {
            return a.since > b.since;
        });
        const auto rank = [](const BiGroup& group) {
            const auto due = group.dueAt();
            return std::tuple(!group.isControlDead, !due.has_value(), due.value_or(Instant{}));
        };
        std::ranges::stable_sort(
            m_made.groups, [&](const BiGroup& a, const BiGroup& b) { return rank(a) < rank(b); });
        for (BiGroup& group : m_made.groups) {
            std::ranges::stable_sort(group.vials, [](const BiTest& a, const BiTest& b) {
                return std::tuple(!a.dueAt, a.dueAt.value_or(Instant{}), a.lot)
                       < std::tuple(!b.dueAt, b.dueAt.value_or(Instant{}), b.lot);
            });
        }
    }

    ReadSnapshot& m_snapshot;
    CycleViews m_views;
    std::map<std::string, ProductRecorded> m_products;
    std::map<std::string, IncubatorRecorded> m_incubators;
    std::map<std::string, SterilizerRecorded> m_sterilizers;
    std::map<std::pair<std::string, std::string>, std::string> m_lots;
    std::map<std::tuple<std::string, std::string, std::string, std::int32_t>, BiGroup> m_groups;
    std::set<std::string> m_placed;
    Biologicals m_made;
};

} // namespace

std::optional<Instant> BiGroup::dueAt() const
{
    std::optional<Instant> due;
    for (const auto* const tests : {&controls, &vials}) {
        for (const BiTest& test : *tests) {
            if (test.step == BiStep::read && test.dueAt && (!due || *test.dueAt < *due)) {
                due = test.dueAt;
            }
        }
    }
    return due;
}

Biologicals biologicalsOf(ReadSnapshot& snapshot, EntryCache& cache, Instant now)
{
    return Making(snapshot, cache, now).make();
}

} // namespace loadwarden
