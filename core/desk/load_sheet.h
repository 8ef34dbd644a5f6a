#pragma once

#include "core/desk/choices.h"
#include "core/desk/cycle_record.h"
#include "core/desk/cycle_state.h"
#include "core/desk/used_items.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

enum class IndicatorPlace : std::uint8_t { pcd, outside, inside, sheet };

/// An answer of an indicator as somebody recorded it.
struct SheetReading {
    std::int64_t seq = 0; ///< of its current version
    Seen seen = Seen::unclear;
    std::string by; ///< name
    Instant at{};
    bool isStruck = false;
};

/// A chemical or biological indicator where it was placed in the cycle.
struct SheetIndicator {
    std::string id; ///< ci- or bv-
    bool isVial = false;
    IndicatorPlace where = IndicatorPlace::pcd;
    std::string holder;     ///< pd- or it-; empty: of none
    std::string holderName; ///< the PCD's mark or the item's label; may be empty
    std::string place;      ///< where in the package; empty: not stated
    std::string product;    ///< pr-; empty: not known
    std::string productName;
    std::string lotNumber; ///< empty: not known
    std::optional<Response> response;
    std::vector<SheetReading> readings; ///< in the order in which they were recorded
    bool isLost = false;
    bool isUnsettled = false;
    bool isStruck = false; ///< the entry that placed it

    /// Of those that stand the newest, or null.
    [[nodiscard]] const SheetReading* newestReading() const;
    /// Whether it is still to be read: nobody has, or an unclear answer waits for somebody else.
    [[nodiscard]] bool awaitsReading() const;
    /// Who gave an answer that is unclear and not settled by another; empty: nobody.
    [[nodiscard]] std::string unclearTo() const;
};

/// One parameter of the sterilizer's record with its limits.
struct SheetParameter {
    Parameter parameter{};
    std::vector<Quantity> least; ///< in every unit in which the specification states it
    std::vector<Quantity> most;
    std::vector<ParameterReading> readings; ///< those that count
    bool isLost = false;
};

struct SheetItem {
    std::string id; ///< it-
    std::string label;
    Implant implant = Implant::unknown;
    std::string packaging; ///< its name; empty: not stated
    std::vector<std::string> devices;
    std::optional<Verdict> verdict;    ///< where the load has ended
    std::optional<PackageCheck> check; ///< the newest
};

/// Everything that somebody sees who works on a cycle.
struct LoadSheet {
    CycleRecord record;
    CycleState state;
    std::string sterilizerName;
    std::vector<SheetParameter> parameters;
    std::vector<SheetIndicator> indicators;
    std::vector<SheetItem> items;
    std::vector<UnreleasedUse> uses;
    std::optional<Instant> unloaded;
    Choices choices;

    [[nodiscard]] const CycleView& view() const { return record.view; }
    [[nodiscard]] const SheetIndicator* indicator(std::string_view id) const;
};

/// nullopt where nothing was recorded of it. Throws StoreError.
[[nodiscard]] std::optional<LoadSheet> loadSheetOf(ReadSnapshot& snapshot, EntryCache& cache,
                                                   std::string_view cycle, Instant now);

} // namespace loadwarden
