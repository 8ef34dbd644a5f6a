#pragma once

#include "core/indicators/biological.h"
#include "core/release/evidence.h"
#include "core/release/judge_test.h"
#include "core/release/policy.h"

#include <memory_resource>
#include <span>
#include <string_view>
#include <vector>

namespace loadwarden {

/// How a Bowie-Dick stands for the loads around it.
enum class AirTest : std::uint8_t { none, failed, passed, pending, asNotMade };

/// A cycle of the history as the load's rules see it.
struct PastCycle {
    const HistoryCycle* cycle = nullptr;
    const CycleTimes* times = nullptr;
    bool before = false; ///< it ended before the load began
    bool after = false;  ///< the load ended before it began
    BiState bi = BiState::none;
    TestOutcome test;                ///< for a test
    AirTest airTest = AirTest::none; ///< for a Bowie-Dick
};

/// A chemical indicator of a PCD, judged.
struct PcdIndicator {
    const ProcessChallengeDevice* pcd = nullptr;
    const ChemicalIndicator* indicator = nullptr;
    ChemicalJudgement judged;
};

/// A vial of the load, judged.
struct LoadVial {
    const ProcessChallengeDevice* pcd = nullptr;
    const Vial* vial = nullptr;
    VialJudgement judged;
};

/// The indicators of an item, judged; its internal ones are `internals` from `firstInternal` on.
struct ItemIndicators {
    bool externalAsked = true;
    ChemicalJudgement external; ///< unread where the item has none
    std::size_t firstInternal = 0;
};

/// What the implant rule finds, before a policy softens it for the load.
enum class ImplantState : std::uint8_t {
    holds,
    failsBi,
    failsIndicator,
    missing,
    pending,
    indicatorMissing, ///< no PCD has an indicator of a type that implants need
    impossible
};

/// Everything that more than one rule needs, worked out once for a decision. Refers to the evidence
/// and the policy, which must outlive it; takes its memory from the given resource.
class View {
public:
    View(const Evidence& evidence, const Policy& policy, Instant now,
         std::pmr::memory_resource* memory);
    View(const View&) = delete; // it points into itself
    View& operator=(const View&) = delete;

    const Evidence& evidence;
    const Policy& policy;
    const Instant now;
    const LoadRecord& load;
    const SterilizerRecord* const sterilizer;      ///< null: not recorded
    const CycleSpecification* const specification; ///< null: not recorded
    const Method method;
    const AirRemoval airRemoval;
    const Purpose purpose;
    const std::string_view cycleType; ///< empty: unknown
    const CycleContext context;
    std::pmr::vector<ControlState> controlStates; ///< beside the register's controls
    BiologicalSettings biological;

    bool biRequired = false;
    bool pcdRequired = false;
    BiState bi = BiState::none;
    bool hasPositiveVial = false; ///< positive-elsewhere left out
    bool hasPendingVial = false;  ///< or an unclear one
    bool hasOnlyVoidVials = true; ///< at least one, and all void or lost
    ImplantState implant = ImplantState::holds;
    /// PCDs in which an indicator that implants need was rejected.
    std::pmr::vector<const ProcessChallengeDevice*> implantRejections;

    std::pmr::vector<LoadVial> vials;
    std::pmr::vector<PcdIndicator> pcdIndicators;
    std::pmr::vector<ItemIndicators> items;
    std::pmr::vector<ChemicalJudgement> internals;
    std::pmr::vector<PastCycle> history;
    std::pmr::memory_resource* const memory;

    [[nodiscard]] bool hasStart() const { return evidence.load.start.has_value(); }
    [[nodiscard]] Instant start() const { return *evidence.load.start; }
    [[nodiscard]] bool isImmediateUse() const { return purpose == Purpose::immediateUse; }
    /// The item's packaging, or null where it is not stated or not known.
    [[nodiscard]] const Packaging* packagingOf(const Item& item) const;
    /// Whether the item's packaging is known and of a form.
    [[nodiscard]] bool isIn(PackageForm form, const Item& item) const;
    /// An open tray of an immediate-use cycle: it has no package to check.
    [[nodiscard]] bool isOpenTray(const Item& item) const
    {
        return isImmediateUse() && isIn(PackageForm::openTray, item);
    }
    /// Whether the item's internal indicator is read through its pouch.
    [[nodiscard]] bool isSeenThrough(const Item& item) const
    {
        return item.internalVisible && isIn(PackageForm::pouch, item);
    }
    /// The internal indicators of an item, judged, beside the item's own list.
    [[nodiscard]] std::span<const ChemicalJudgement> internalsOf(std::size_t item) const
    {
        return {internals.data() + items[item].firstInternal, load.items[item].internals.size()};
    }
    /// What a test of the history is judged beside; the sterilizer must be there.
    [[nodiscard]] TestSurroundings testSurroundings() const;
    /// Whether the policy's softer implant hold applies: implant items wait, the load does not.
    [[nodiscard]] bool holdsImplantsOnly() const;

private:
    void judgeControls();
    void judgeVials();
    void judgePcds();
    void judgeItems();
    void judgeHistory();
    [[nodiscard]] ImplantState judgeImplant();
};

/// How often the policy asks for a routine biological indicator of a known method.
[[nodiscard]] BiFrequency frequencyOf(const Policy& policy, Method method);

/// The types of chemical indicator that a PCD of an implant load needs (RULES.md, 5, implant).
[[nodiscard]] TypeSet implantTypes(const View& view, const ProcessChallengeDevice& pcd);

} // namespace loadwarden
