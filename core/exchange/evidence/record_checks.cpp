#include "core/exchange/evidence/record_checks.h"

#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/sterilizers/sterilizer_words.h"

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

namespace loadwarden::evidence_format {

namespace {

/// The first of some names that stood before, and where it stood before.
struct Repeat {
    std::size_t first;
    std::size_t again;
};

template <class Name>
std::optional<Repeat> findRepeat(const std::vector<Name>& names)
{
    if (names.size() < 2) {
        return std::nullopt;
    }
    std::vector<std::size_t> order(names.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, [&](std::size_t a, std::size_t b) {
        return names[a] != names[b] ? names[a] < names[b] : a < b;
    });
    std::optional<Repeat> earliest;
    for (std::size_t i = 1; i < order.size(); ++i) {
        if (names[order[i - 1]] == names[order[i]] && (!earliest || order[i] < earliest->again)) {
            earliest = Repeat{order[i - 1], order[i]};
        }
    }
    return earliest;
}

/// Whether no name of a list stands twice in it. List and name are fields of the format; how says
/// what does not make two names different, where something does not.
template <class List, class NameOf>
bool checkNames(const List& list, NameOf nameOf, std::string_view listField,
                std::string_view nameField, Complaint& complaint, std::string_view how = {})
{
    using Name = decltype(nameOf(list.front()));
    std::vector<Name> names;
    names.reserve(list.size());
    for (const auto& entry : list) {
        names.push_back(nameOf(entry));
    }
    const std::optional<Repeat> repeat = findRepeat(names);
    if (!repeat) {
        return true;
    }
    const std::string place = std::string(listField) + '/';
    complaint.field = place + std::to_string(repeat->again);
    if (!nameField.empty()) {
        complaint.field += pointerStep(nameField);
    }
    complaint.message = "stands already at " + place + std::to_string(repeat->first)
                        + "; each must stand once and have a name of its own" + std::string(how);
    return false;
}

template <auto Member>
auto viewOf()
{
    return [](const auto& entry) { return std::string_view(entry.*Member); };
}

/// Vials of the whole record and controls have ids of their own.
bool checkVials(const EvidenceRecord& record, Complaint& complaint)
{
    struct Group {
        std::string place;
        const std::vector<Vial>* vials;
    };
    std::vector<Group> groups;
    for (std::size_t i = 0; i < record.load.pcds.size(); ++i) {
        if (!record.load.pcds[i].vials.empty()) {
            groups.push_back({"/load/pcds/" + std::to_string(i), &record.load.pcds[i].vials});
        }
    }
    if (record.sterilizer) {
        const auto& cycles = record.sterilizer->cycles;
        for (std::size_t i = 0; i < cycles.size(); ++i) {
            if (!cycles[i].vials.empty()) {
                groups.push_back({"/sterilizer/cycles/" + std::to_string(i), &cycles[i].vials});
            }
        }
    }
    if (record.test && !record.test->vials.empty()) {
        groups.push_back({"/test", &record.test->vials});
    }
    std::size_t count = record.controls.size();
    for (const Group& group : groups) {
        count += group.vials->size();
    }
    std::vector<std::string_view> names;
    names.reserve(count);
    for (const Control& control : record.controls) {
        names.push_back(control.id);
    }
    for (const Group& group : groups) {
        for (const Vial& vial : *group.vials) {
            names.push_back(vial.id);
        }
    }
    const std::optional<Repeat> repeat = findRepeat(names);
    if (!repeat) {
        return true;
    }
    const auto placeOf = [&](std::size_t index) {
        if (index < record.controls.size()) {
            return "/controls/" + std::to_string(index) + "/id";
        }
        index -= record.controls.size();
        auto group = groups.begin();
        while (index >= group->vials->size()) {
            index -= group->vials->size();
            ++group;
        }
        return group->place + "/vials/" + std::to_string(index) + "/id";
    };
    complaint.field = placeOf(repeat->again);
    complaint.message = "stands already at " + placeOf(repeat->first)
                        + "; each vial and each control of a record has an id of its own";
    return false;
}

bool checkLotOfLoad(const EvidenceRecord& record, Complaint& complaint)
{
    if (!record.sterilizer || record.load.lot.empty()) {
        return true;
    }
    const auto& cycles = record.sterilizer->cycles;
    const auto found = std::ranges::find(cycles, record.load.lot, &HistoryCycle::lot);
    if (found == cycles.end()) {
        return true;
    }
    complaint.field = "/load/lot";
    complaint.message =
        "is also the lot of /sterilizer/cycles/" + std::to_string(found - cycles.begin())
        + ", which are the sterilizer's other cycles; leave it out there, or correct "
          "the number";
    return false;
}

Purpose purposeOf(CycleKind test)
{
    switch (test) {
    case CycleKind::warmUp: return Purpose::warmUp;
    case CycleKind::bowieDick: return Purpose::bowieDick;
    case CycleKind::leak: return Purpose::leak;
    case CycleKind::qualification: return Purpose::qualification;
    case CycleKind::load: break;
    }
    return Purpose::routine;
}

bool checkPurpose(const RecordDraft& draft, Complaint& complaint)
{
    const EvidenceRecord& record = draft;
    if (record.test && record.test->kind == CycleKind::load) {
        complaint.field = "/test/kind";
        complaint.message = "a test must be \"warm-up\", \"bowie-dick\", \"leak\" or "
                            "\"qualification\"; a load is written in the field \"load\"";
        return false;
    }
    if (!record.specification) {
        return true;
    }
    const Purpose purpose = record.specification->purpose;
    const bool fitting =
        record.test ? purpose == purposeOf(record.test->kind) : purpose <= Purpose::immediateUse;
    if (fitting) {
        return true;
    }
    complaint.field = draft.specificationIsNamed ? "/specification" : "/specification/purpose";
    complaint.message = record.test
                            ? "the specification of this test must have the purpose "
                                  + quoted(wordOf(cycleKindWords, record.test->kind))
                            : "the specification of a load must have the purpose \"routine\" or "
                              "\"immediate-use\"";
    return false;
}

} // namespace

bool checkAcross(const RecordDraft& draft, Complaint& complaint)
{
    const EvidenceRecord& record = draft;
    const auto lotKey = [](const IndicatorLot& lot) {
        return std::pair<std::string_view, std::string_view>(lot.product, lot.number);
    };
    return checkNames(record.products, viewOf<&IndicatorProduct::id>(), "/products", "id",
                      complaint)
           && checkNames(record.lots, lotKey, "/lots", "", complaint)
           && checkNames(record.packagings, viewOf<&Packaging::id>(), "/packagings", "id",
                         complaint)
           && checkNames(record.incubators, viewOf<&Incubator::id>(), "/incubators", "id",
                         complaint)
           && checkNames(record.load.pcds, viewOf<&ProcessChallengeDevice::id>(), "/load/pcds",
                         "id", complaint)
           && checkNames(record.load.traces, viewOf<&TraceFindings::id>(), "/load/traces", "id",
                         complaint)
           && checkNames(
               record.load.items, [](const Item& item) { return foldedPerson(item.label); },
               "/load/items", "label", complaint, " (blanks and the case of letters do not matter)")
           && (!record.sterilizer
               || checkNames(record.sterilizer->cycles, viewOf<&HistoryCycle::lot>(),
                             "/sterilizer/cycles", "lot", complaint))
           && checkVials(record, complaint) && checkLotOfLoad(record, complaint)
           && checkPurpose(draft, complaint);
}

} // namespace loadwarden::evidence_format
