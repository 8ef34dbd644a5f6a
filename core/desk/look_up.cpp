#include "core/desk/look_up.h"

#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"
#include "core/desk/load_view.h"
#include "core/desk/names.h"
#include "core/desk/people.h"
#include "core/quantities/person.h"
#include "core/store/finder.h"

#include <utility>
#include <vector>

namespace loadwarden {
namespace {

using What = LookedUp::What;

constexpr std::size_t mostLabels = 100;

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
    std::vector<LookedUp> items;
    if (foldedPerson(label).empty()) {
        return items;
    }
    for (const FoundLabel& each : Finder(snapshot).labelled(label, mostLabels)) {
        items.push_back(
            {.what = What::item, .id = each.item, .cycle = each.cycle, .name = each.label});
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
