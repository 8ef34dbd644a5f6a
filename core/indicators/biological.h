#pragma once

#include "core/indicators/chemical.h"

#include <optional>
#include <span>

namespace loadwarden {

enum class ControlState : std::uint8_t { asMissing, grown, dead, pending };

/// How the facility takes biological indicators where their instructions leave it open.
struct BiologicalSettings {
    bool useLastReadout =
        false; ///< a negative is final at the product's last readout where it states one
    ControlReach controlReach = ControlReach::day;
    Duration controlWindow = Duration::hours(2);
    /// What the register's controls show, beside them, so that each is judged once for all vials;
    /// empty: judged anew for each vial.
    std::span<const ControlState> controlStates;
};

enum class VialState : std::uint8_t {
    positive,
    positiveElsewhere,
    voided,
    lost,
    pending,
    negative
};

/// Why a vial is pending; the first that fits.
enum class PendingWhy : std::uint8_t {
    unclear,
    notRegistered,
    notStarted,
    incubating,
    notCounted,
    due,
    processIndicator,
    control
};

/// What a vial says in its cycle (RULES.md, 4).
struct VialJudgement {
    VialState state = VialState::pending;
    bool unclear = false;             ///< whether anything grew is open, whatever the state
    PendingWhy why = PendingWhy::due; ///< meaningful while pending
    std::optional<Instant> changesAt; ///< when time alone changes it, later than now
    std::optional<Instant> dueAt;     ///< the readout from which a negative is final
    Instant positiveSince{};          ///< recordedAt that made it positive, where it is
    const Act* positiveBy = nullptr;  ///< the act of that moment; null unless positive
    Cause cause = Cause::none;        ///< why it is void, or why its reading does not count
};

enum class GroupState : std::uint8_t { dead, grown, pending, awaited, missing };

/// What the controls of a vial say together. `awaitedUntil` is set while a control may still be
/// started.
struct GroupJudgement {
    GroupState state = GroupState::missing;
    std::optional<Instant> awaitedUntil;
};

/// From when on a no-growth of a control says that it is dead, an earlier one saying nothing;
/// nullopt where product or start are not known.
[[nodiscard]] std::optional<Instant> deadFrom(const Control& control,
                                              const BiologicalSettings& settings,
                                              const IndicatorRegister& known);

[[nodiscard]] ControlState judgeControl(const Control& control, const BiologicalSettings& settings,
                                        const IndicatorRegister& known, Instant now);

[[nodiscard]] GroupJudgement judgeGroup(const Vial& vial, const CycleContext& cycle, bool ofHistory,
                                        const BiologicalSettings& settings,
                                        const IndicatorRegister& known, Instant now);

/// Judges a vial; `ofHistory` for a cycle other than the one decided on, where a missing control is
/// not waited for.
[[nodiscard]] VialJudgement judgeVial(const Vial& vial, const CycleContext& cycle, bool ofHistory,
                                      const BiologicalSettings& settings,
                                      const IndicatorRegister& known, Instant now);

enum class BiState : std::uint8_t { none, positive, pending, negative, voided };

/// The state of a cycle's biological indicators, taken from its vials one by one.
class BiSummary {
public:
    void add(const VialJudgement& vial);
    [[nodiscard]] BiState state() const;

private:
    bool m_any = false;
    bool m_positive = false;
    bool m_pending = false;
    bool m_negative = false;
};

} // namespace loadwarden
