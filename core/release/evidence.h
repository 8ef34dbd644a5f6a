#pragma once

#include "core/cycle/specification.h"
#include "core/indicators/indicator.h"
#include "core/indicators/product.h"
#include "core/loads/load_record.h"
#include "core/packaging/packaging.h"
#include "core/quantities/pressure.h"
#include "core/quantities/zone.h"
#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// The raw evidence of one load, or of one test cycle, as recorded: times as shown, lots by name.
/// The reader guarantees unique ids within each list and that the load's lot is not in the history.
struct EvidenceRecord {
    std::string comment;
    std::optional<Instant> decideAt;
    Zone zone;
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
};

} // namespace loadwarden
