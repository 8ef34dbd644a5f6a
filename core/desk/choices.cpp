#include "core/desk/choices.h"

#include "core/desk/journal_entries.h"
#include "core/desk/newest_facts.h"

#include <algorithm>
#include <map>

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

std::vector<LotChoice> lotsOf(ReadSnapshot& snapshot)
{
    std::map<std::string, ProductRecorded> products;
    eachNewest<ProductRecorded>(
        snapshot, "pr", [&](const Fact&, const std::string& id, const ProductRecorded& recorded) {
            products.emplace(id, recorded);
        });
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
                            .type = known->second.product.type});
        });
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
            {id, std::get<SterilizerRecorded>(fact->current().act).name, serviceIn(book, id)});
    }
    return choices;
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
            choices.devices.push_back({id, device.device.name});
        });
    return choices;
}

} // namespace loadwarden
