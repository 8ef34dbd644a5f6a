#pragma once

#include "core/cycle/specification.h"
#include "core/indicators/biological.h"
#include "core/indicators/indicator.h"
#include "core/indicators/product.h"
#include "core/indicators/register.h"
#include "core/loads/load_record.h"
#include "core/packaging/packaging.h"
#include "core/quantities/pressure.h"
#include "core/quantities/zone.h"
#include "core/release/finding.h"
#include "core/sterilizers/cycle_order.h"
#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The raw evidence of one load, or of one test cycle, as recorded: times as shown, lots by name.
/// The reader guarantees unique ids within each list and that the load's lot is not in the history.
struct EvidenceRecord {
    std::string comment;
    std::optional<Instant> decideAt;
    Zone zone = *Zone::find("UTC");
    std::optional<AbsolutePressure> atmosphere;
    std::optional<SterilizerRecord> sterilizer;
    std::optional<CycleSpecification> specification;
    std::vector<IndicatorProduct> products;
    std::vector<IndicatorLot> lots;
    std::vector<Packaging> packagings;
    std::vector<Control> controls;
    std::vector<Incubator> incubators;
    LoadRecord load;                  ///< meaningless where test is set
    std::optional<HistoryCycle> test; ///< the record is of a test cycle

    friend bool operator==(const EvidenceRecord&, const EvidenceRecord&) = default;
};

/// The acts without a name, or by a viewer, that stand in fields of one name.
struct UnsignedActs {
    std::string_view field; ///< a literal
    int count = 0;
};

/// What the acts of a record come to without knowing the moment of the decision.
struct ActSummary {
    std::vector<UnsignedActs> unsignedActs; ///< one for each name of a field, none without any
    int backwards = 0;                      ///< happened after they were recorded
    Instant newestRecorded{};               ///< the latest recordedAt of all
    Duration longestGapInLoad{};            ///< greatest recordedAt - happenedAt inside the load
};

/// What is wrong with the specification by itself (RULES.md, 5, physical).
struct SpecificationFault {
    Key key{};
    Parameter parameter = Parameter::temperature;
    std::optional<Quantity> limit; ///< what is wrong, where that is a limit or a setting
};

/// Evidence as `decide` sees it: the record with every link resolved, times corrected, test periods
/// and the reach of controls worked out once. Made by `assemble` only.
struct Evidence {
    EvidenceRecord record; ///< its products, lots, controls and incubators have moved to `known`
    IndicatorRegister known;
    CycleTimes load;
    std::vector<CycleTimes> history;      ///< beside record.sterilizer->cycles
    std::optional<CycleTimes> test;       ///< beside record.test
    std::optional<Instant> periodEnd;     ///< of the load's test period
    std::optional<Instant> printoutStart; ///< corrected; nullopt: left out or offset unknown
    std::optional<Instant> printoutEnd;
    bool printoutOffsetUnknown = false; ///< for a start or end that is there
    /// Beside load.traces: how far the start of each is from the load's, both corrected; nullopt:
    /// one of them is left out, or its clock's offset is unknown.
    std::vector<std::optional<Duration>> traceStartsApart;
    std::vector<SpecificationFault> specificationFaults;
    bool hasImplant = false;
    bool hasItemInTest = false;       ///< a test of the history lists one of its labels
    bool hasObjection = false;        ///< a package was wet, or its indicator's answer not good
    bool hasVoidedHarm = false;       ///< a bad or unclear answer somewhere is voided
    std::optional<Duration> aeration; ///< the longest asked for, above 0; nullopt: not fully stated
    ActSummary acts;
};

} // namespace loadwarden
