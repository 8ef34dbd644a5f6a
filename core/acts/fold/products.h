#pragma once

#include "core/acts/fold/folding.h"
#include "core/release/evidence.h"

namespace loadwarden {

/// Fills products, lots, packagings, controls and incubators of a record with what its indicators
/// and items name. A product that one record needs in two revisions stands once for each, with its
/// lots and controls (ACTS.md, 2).
void foldProducts(Folding& folding, EvidenceRecord& record);

/// Calls visit(product, lot) for every chemical indicator, and visitVial(vial) for every vial.
template <class Record, class Chemical, class OfVial>
void forEachIndicator(Record& record, Chemical chemical, OfVial vial)
{
    const auto inCycle = [&](auto& cycle) {
        for (auto& each : cycle.vials) {
            vial(each);
        }
        if (cycle.sheet) {
            chemical(*cycle.sheet);
        }
        for (auto& each : cycle.indicators) {
            chemical(each);
        }
    };
    for (auto& pcd : record.load.pcds) {
        for (auto& each : pcd.indicators) {
            chemical(each);
        }
        for (auto& each : pcd.vials) {
            vial(each);
        }
    }
    for (auto& item : record.load.items) {
        if (item.external) {
            chemical(*item.external);
        }
        for (auto& each : item.internals) {
            chemical(each);
        }
    }
    if (record.test) {
        inCycle(*record.test);
    }
    if (record.sterilizer) {
        for (auto& cycle : record.sterilizer->cycles) {
            inCycle(cycle);
        }
    }
}

} // namespace loadwarden
