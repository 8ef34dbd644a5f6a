#pragma once

#include "core/release/assemble.h"
#include "core/release/finding.h"

#include <algorithm>
#include <functional>
#include <string>

/// Rows of tables that say what one change to a releasable record makes the decision say.
namespace loadwarden::proof {

/// One change to a base of the worked cases, and what is said of it then.
struct Row {
    std::string how;
    std::string base;
    std::function<void(EvidenceRecord&)> change;
    Key key{};
    Outcome outcome = Outcome::waits;
    std::string subject{};
    Cause cause = Cause::none;
    bool said = true; ///< false: the key is not said at all
};

/// Expects a row to be true under the default policy.
void expectSaid(const Row& row);

/// An act that was recorded when it happened.
Act act(const std::string& by, Role role, Instant at);

/// When the load ended.
Instant end(const EvidenceRecord& record);

// The first or the named one of what a base holds, to be changed.
ChemicalIndicator& pcdIndicator(EvidenceRecord& record);
Vial& vialOf(EvidenceRecord& record);
IndicatorLot& lotOf(EvidenceRecord& record, const std::string& product);
Limit& limitOf(EvidenceRecord& record, Parameter parameter);
ParameterReading& readingOf(EvidenceRecord& record, Parameter parameter);

template <class List>
auto& named(List& list, const std::string& id)
{
    return *std::find_if(list.begin(), list.end(), [&](const auto& each) { return each.id == id; });
}

/// A lead who neither ran the load nor recorded its printout says that the record is right in one
/// field.
void confirm(EvidenceRecord& record, PrintoutField field);

} // namespace loadwarden::proof
