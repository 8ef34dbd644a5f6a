#include "core/desk/choices.h"

#include "core/desk/journal_entries.h"
#include "core/desk/newest_facts.h"
#include "core/quantities/person.h"
#include "core/store/finder.h"

#include <algorithm>
#include <map>
#include <set>

namespace loadwarden {
namespace {

/// Calls visit(fact, id, value) for the newest revision of each thing in a register.
template <class Recorded, class Visit>
void eachNewest(ReadSnapshot& snapshot, std::string_view prefix, Visit visit)
{
    const std::vector<Entry> entries = registerEntries(snapshot, prefix);
    const FactBook book(entries);
    for (const Fact* const fact : newestFacts<Recorded>(book)) {
        visit(*fact, fact->origin->subjects.front(), std::get<Recorded>(fact->current().act));
    }
}

std::set<std::string> recalledLots(ReadSnapshot& snapshot)
{
    std::set<std::string> lots;
    const std::vector<Entry> entries = registerEntries(snapshot, "pl");
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        if (fact.stands() && std::holds_alternative<LotRecalled>(fact.current().act)) {
            lots.emplace(fact.origin->subject("pl"));
        }
    }
    return lots;
}

std::vector<LotChoice> lotsOf(ReadSnapshot& snapshot)
{
    std::map<std::string, ProductRecorded> products;
    eachNewest<ProductRecorded>(
        snapshot, "pr", [&](const Fact&, const std::string& id, const ProductRecorded& recorded) {
            products.emplace(id, recorded);
        });
    const std::set<std::string> recalled = recalledLots(snapshot);
    std::map<std::string, ReadingDirections> directions;
    eachNewest<DirectionsRecorded>(
        snapshot, "pr",
        [&](const Fact&, const std::string& id, const DirectionsRecorded& recorded) {
            directions.emplace(id, recorded.directions);
        });
    const auto directionsOf = [&](const std::string& product) {
        const auto said = directions.find(product);
        return said == directions.end() ? std::nullopt : std::optional(said->second);
    };
    std::vector<LotChoice> lots;
    eachNewest<ProductLotRecorded>(
        snapshot, "pl",
        [&](const Fact& fact, const std::string& id, const ProductLotRecorded& recorded) {
            const std::string product(fact.origin->subject("pr"));
            const auto known = products.find(product);
            if (known == products.end()) {
                return;
            }
            lots.push_back({.product = product,
                            .lot = id,
                            .productName = known->second.name,
                            .number = recorded.number,
                            .expires = recorded.expires,
                            .kind = known->second.product.kind,
                            .response = known->second.product.response,
                            .type = known->second.product.type,
                            .methods = known->second.product.methods,
                            .directions = directionsOf(product)});
        });
    // A lot recalled is one whatever its id: several may have its number.
    for (LotChoice& each : lots) {
        each.isRecalled = std::ranges::any_of(lots, [&](const LotChoice& other) {
            return recalled.contains(other.lot) && other.product == each.product
                   && isSamePerson(other.number, each.number);
        });
    }
    return lots;
}

std::vector<SterilizerChoice> sterilizersOf(ReadSnapshot& snapshot)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "sz");
    std::vector<SterilizerChoice> choices;
    const FactBook book(entries);
    for (const Fact* const fact : newestFacts<SterilizerRecorded>(book)) {
        const std::string& id = fact->origin->subjects.front();
        choices.push_back(
            {.id = id,
             .name = std::get<SterilizerRecorded>(fact->current().act).name,
             .service = serviceIn(book, id),
             .methods = {},
             .aerates = std::get<SterilizerRecorded>(fact->current().act).aeration.has_value()});
    }
    return choices;
}

/// By which method a cycle was to run, as it was reserved.
Method methodOf(ReadSnapshot& snapshot, const std::string& cycle, const Choices& choices)
{
    for (const Entry& entry : entriesAbout(snapshot, cycle)) {
        const auto* const reserved = std::get_if<CycleReserved>(&entry.act);
        if (reserved == nullptr) {
            continue;
        }
        const auto program = std::ranges::find(
            choices.specifications, entry.subject("sp"),
            [](const SpecificationChoice& each) { return std::string_view(each.id); });
        return program == choices.specifications.end() ? reserved->method
                                                       : program->specification.method;
    }
    return Method::unknown;
}

} // namespace

const LotChoice* Choices::lot(std::string_view id) const
{
    const auto found = std::ranges::find(lots, id, &LotChoice::lot);
    return found == lots.end() ? nullptr : &*found;
}

Choices choicesOf(ReadSnapshot& snapshot)
{
    Choices choices{.sterilizers = sterilizersOf(snapshot),
                    .specifications = {},
                    .lots = lotsOf(snapshot),
                    .packagings = {},
                    .devices = {}};
    eachNewest<SpecificationRecorded>(
        snapshot, "sp",
        [&](const Fact&, const std::string& id, const SpecificationRecorded& recorded) {
            choices.specifications.push_back({id, recorded.specification});
        });
    eachNewest<PackagingRecorded>(
        snapshot, "pk", [&](const Fact&, const std::string& id, const PackagingRecorded& recorded) {
            choices.packagings.push_back({id, recorded.name, recorded.packaging.methods});
        });
    eachNewest<DeviceRecorded>(
        snapshot, "dv", [&](const Fact&, const std::string& id, const DeviceRecorded& device) {
            choices.devices.push_back({id, device.device});
        });
    return choices;
}

void lookForMethods(ReadSnapshot& snapshot, Choices& choices)
{
    constexpr std::int64_t lastCycles = 12; // more than a day's tests and warm-ups
    Finder finder(snapshot);
    for (SterilizerChoice& sterilizer : choices.sterilizers) {
        if (sterilizer.aerates) {
            sterilizer.methods.add(Method::ethyleneOxide);
        }
        for (const FoundCycle& cycle : finder.newestBehind(sterilizer.id, {}, 0, lastCycles)) {
            const Method method = methodOf(snapshot, cycle.id, choices);
            if (method != Method::unknown) {
                sterilizer.methods.add(method);
            }
        }
    }
}

} // namespace loadwarden
