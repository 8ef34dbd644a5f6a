#include "core/desk/look_up.h"

#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"
#include "core/desk/load_view.h"
#include "core/desk/names.h"
#include "core/desk/people.h"
#include "core/quantities/person.h"
#include "core/store/finder.h"

#include <algorithm>
#include <functional>
#include <utility>
#include <vector>

namespace loadwarden {
namespace {

using What = LookedUp::What;

constexpr std::int64_t mostLabels = 100;

LookedUp person(ReadSnapshot& snapshot, std::string_view text)
{
    for (const Person& each : peopleOf(snapshot)) {
        if (each.id == text || (!each.badge.empty() && isSamePerson(each.badge, text))) {
            return {.what = What::person, .id = each.id, .cycle = {}, .name = each.name};
        }
    }
    return {};
}

LookedUp cycle(ReadSnapshot& snapshot, std::string_view text)
{
    const auto found = findCycle(snapshot, text);
    if (!found) {
        return {};
    }
    const auto row = Finder(snapshot).cycle(*found);
    return {.what = What::cycle,
            .id = *found,
            .cycle = *found,
            .name = row && !row->lot.empty() ? row->lot : *found};
}

LookedUp item(ReadSnapshot& snapshot, std::string_view text)
{
    std::vector<LookedUp> items = lookUpItems(snapshot, text);
    return items.empty() ? LookedUp() : std::move(items.front());
}

LookedUp productLot(ReadSnapshot& snapshot, std::string_view text)
{
    const std::vector<std::string> lots = productLotsNumbered(snapshot, text);
    if (lots.empty()) {
        return {};
    }
    const std::string number = Names(snapshot).of(lots.front());
    if (lots.size() > 1) {
        return {.what = What::several, .id = {}, .cycle = {}, .name = number};
    }
    return {.what = What::productLot, .id = lots.front(), .cycle = {}, .name = number};
}

} // namespace

std::vector<LookedUp> lookUpItems(ReadSnapshot& snapshot, std::string_view label)
{
    std::vector<std::pair<std::int64_t, LookedUp>> found;
    if (foldedPerson(label).empty()) {
        return {};
    }
    Finder finder(snapshot);
    for (const FoundLabel& each : finder.labelsFrom(label, mostLabels)) {
        if (isSamePerson(each.label, label)) { // else it only begins so
            const auto row = finder.cycle(each.cycle);
            found.emplace_back(row ? row->at : 0, LookedUp{.what = What::item,
                                                           .id = each.item,
                                                           .cycle = each.cycle,
                                                           .name = each.label});
        }
    }
    std::ranges::reverse(found); // of loads of one moment that which comes later
    std::ranges::stable_sort(found, std::greater(), &std::pair<std::int64_t, LookedUp>::first);
    std::vector<LookedUp> items;
    for (auto& [at, item] : found) {
        items.push_back(std::move(item));
    }
    return items;
}

std::vector<std::string> productLotsNumbered(ReadSnapshot& snapshot, std::string_view number)
{
    std::vector<std::string> lots;
    const std::vector<Entry> entries = registerEntries(snapshot, "pl");
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        const auto* const lot = std::get_if<ProductLotRecorded>(&fact.current().act);
        const std::string& id = fact.origin->subjects.front();
        if (lot != nullptr && isSamePerson(lot->number, number)
            && peekRevision<ProductLotRecorded>(book, id, newest) == &fact) {
            lots.push_back(id);
        }
    }
    return lots;
}

LookedUp lookUp(ReadSnapshot& snapshot, std::string_view text)
{
    if (foldedPerson(text).empty()) {
        return {};
    }
    for (const auto look : {person, cycle, item, productLot}) {
        if (LookedUp found = look(snapshot, text); found.what != What::nothing) {
            return found;
        }
    }
    return {};
}

} // namespace loadwarden
