#include "core/acts/fold/cycle_parts.h"
#include "core/acts/fold/indicator_fold.h"
#include "core/acts/fold/members.h"
#include "core/acts/fold/registers.h"

#include <algorithm>
#include <set>

// The items of a load.

namespace loadwarden {
namespace {

/// Of two statements about one thing the worse: yes, unknown, no.
std::optional<bool> worse(const std::optional<bool>& a, const std::optional<bool>& b)
{
    if (a.value_or(false) || b.value_or(false)) {
        return true;
    }
    return a && b ? a : std::nullopt;
}

std::optional<Lumen> worse(const std::optional<Lumen>& a, const std::optional<Lumen>& b)
{
    if (a == Lumen::unlisted || b == Lumen::unlisted) {
        return Lumen::unlisted;
    }
    return a && b ? std::max(a, b) : std::nullopt;
}

Implant worse(Implant a, Implant b)
{
    if (a == Implant::yes || b == Implant::yes) {
        return Implant::yes;
    }
    return a == b ? a : Implant::unknown;
}

/// Takes over what another statement about the same item has that harms.
void addHarm(ItemAdded& into, const ItemAdded& other)
{
    into.implant = worse(into.implant, other.implant);
    if (into.packaging != other.packaging || into.internalVisible != other.internalVisible) {
        // What is asked of the package then is not known: as if nothing were stated.
        into.packaging.clear();
    }
    if (other.packagingExpires
        && (!into.packagingExpires || *other.packagingExpires < *into.packagingExpires)) {
        into.packagingExpires = other.packagingExpires;
    }
    into.internalVisible = into.internalVisible || other.internalVisible;
    for (const std::string& device : other.devices) {
        if (std::ranges::find(into.devices, device) == into.devices.end()) {
            into.devices.push_back(device);
        }
    }
    const auto addInside = [&into](const PlacedIndicator& indicator) {
        if (std::ranges::find(into.internals, indicator.id, &PlacedIndicator::id)
            == into.internals.end()) {
            into.internals.push_back(indicator);
        }
    };
    std::ranges::for_each(other.internals, addInside);
    if (other.external) {
        if (!into.external) {
            into.external = other.external;
        } else if (into.external->id != other.external->id) {
            addInside(*other.external);
        }
    }
    into.peroxide.cellulose = worse(into.peroxide.cellulose, other.peroxide.cellulose);
    into.peroxide.liquidOrPowder =
        worse(into.peroxide.liquidOrPowder, other.peroxide.liquidOrPowder);
    into.peroxide.moist = worse(into.peroxide.moist, other.peroxide.moist);
    into.peroxide.lumen = worse(into.peroxide.lumen, other.peroxide.lumen);
}

/// A statement about an item, as it was made or, rarely, mixed from several.
class Stated {
public:
    Stated() = default;
    explicit Stated(const ItemAdded& as) : m_as(&as) {}

    [[nodiscard]] bool any() const { return m_as != nullptr; }
    [[nodiscard]] const ItemAdded& value() const { return m_mixed ? *m_mixed : *m_as; }

    void mix(const ItemAdded& other)
    {
        if (!m_mixed) {
            m_mixed = *m_as;
        }
        addHarm(*m_mixed, other);
    }

private:
    const ItemAdded* m_as = nullptr; ///< of an entry
    std::optional<ItemAdded> m_mixed;
};

/// What was said of an item when it was put into the load, or, where it came from another, there.
Stated addedAs(Folding& folding, const std::string& item, const CycleFold& into, bool own)
{
    Stated added;
    Stated elsewhere;
    folding.each<ItemAdded>(item, own, [&](const Fact& fact) {
        if (!fact.stands()) {
            return;
        }
        Stated said(std::get<ItemAdded>(fact.current().act));
        for (const Entry* const entry : fact.counting) {
            if (entry != &fact.current()) {
                said.mix(std::get<ItemAdded>(entry->act));
            }
        }
        if (!fact.origin->isAbout(into.id)) {
            elsewhere = std::move(said);
        } else if (!added.any() || !into.hasStarted() || fact.origin->seq < into.boundAt) {
            added = std::move(said);
        } else {
            added.mix(said.value());
            folding.misfit(*fact.origin, MisfitWhy::saidTwice);
        }
    });
    return added.any() ? added : elsewhere;
}

void addDevice(Folding& folding, const std::string& id, bool own, std::vector<Device>& devices)
{
    const auto* const recorded = findRecorded<DeviceRecorded>(folding, id);
    if (own) { // another cycle's history does not say them
        // A device in no register allows no cycle, as far as is known.
        devices.push_back(recorded == nullptr ? Device{.name = id} : recorded->device);
    }
}

/// What was found when an item was opened is one more check of its package and, where an indicator
/// inside did not pass, one more indicator of no product: it can only fail or wait. What was not
/// found wrong stays as the check before said.
void foldReports(Folding& folding, Item& item, const std::string& id, const CycleFold& into,
                 bool own)
{
    folding.eachValue<ItemReported>(id, own, [&](const Entry& entry, const ItemReported& report) {
        if (!entry.isAbout(into.id)) {
            return;
        }
        PackageCheck check;
        std::optional<Instant> newest;
        for (const PackageCheck& each : item.checks) {
            const bool isBefore = each.act.happenedAt <= entry.happenedAt.at;
            if (isBefore && isSigned(each.act) && (!newest || each.act.happenedAt >= *newest)) {
                newest = each.act.happenedAt;
                check = each;
            }
        }
        check.act = actOf(entry);
        for (const PackageFault fault : report.faults) {
            switch (fault) {
            case PackageFault::wet: check.dry = false; break;
            case PackageFault::torn: check.intact = false; break;
            case PackageFault::unsealed: check.sealed = false; break;
            case PackageFault::labelDiffers: check.labelAgrees = false; break;
            }
        }
        // What says nothing against the package itself is no check where none can be had any more.
        const bool isCheck = newest || !item.checkLost || check.dry || check.intact || check.sealed;
        if (!report.faults.empty() && isCheck) {
            item.checks.push_back(check);
        }
        if (report.indicator) {
            ChemicalIndicator inside;
            inside.readings.push_back({.seen = *report.indicator, .act = actOf(entry)});
            item.internals.push_back(std::move(inside));
        }
    });
}

void foldPackage(Folding& folding, Item& item, const std::string& id, const CycleFold& into,
                 bool own)
{
    const auto here = [&into](const Entry& entry) { return entry.isAbout(into.id); };
    folding.eachValue<PackageChecked>(id, own, [&](const Entry& entry, const PackageChecked& act) {
        if (here(entry)) {
            item.checks.push_back({.cooled = act.cooled,
                                   .dry = act.dry,
                                   .intact = act.intact,
                                   .sealed = act.sealed,
                                   .labelAgrees = act.labelAgrees,
                                   .act = actOf(entry)});
        }
    });
    folding.eachValue<PackageCheckLost>(id, own, [&](const Entry& entry, const PackageCheckLost&) {
        if (here(entry) && !item.checkLost) {
            item.checkLost = actOf(entry);
        }
    });
    foldReports(folding, item, id, into, own);
    folding.eachValue<ItemConfirmed>(id, own, [&](const Entry& entry, const ItemConfirmed&) {
        const Act act = actOf(entry);
        if (here(entry) && (!item.confirmed || item.confirmed->role < Role::lead)) {
            item.confirmed = act;
        }
    });
}

} // namespace

void foldItems(Folding& folding, CycleFold& into, bool own)
{
    std::set<std::string> labels; // as they are compared
    for (Member& member : membersOf(folding, into.id, own)) {
        Item item;
        item.recorded = std::move(member.recorded);
        if (const Stated stated = addedAs(folding, member.id, into, own); stated.any()) {
            const ItemAdded& added = stated.value();
            item.label = added.label;
            item.implant = added.implant;
            item.packaging = added.packaging;
            item.packagingExpires = added.packagingExpires;
            item.internalVisible = added.internalVisible;
            item.peroxide = added.peroxide;
            for (const std::string& device : added.devices) {
                addDevice(folding, device, own, item.devices);
            }
            const auto fold = [&](const PlacedIndicator& placed) {
                into.placed.push_back(placed.id);
                return foldChemical(folding, placed, into.id, own);
            };
            if (added.external) {
                item.external = fold(*added.external);
            }
            item.internals.reserve(added.internals.size());
            for (const PlacedIndicator& placed : added.internals) {
                item.internals.push_back(fold(placed));
            }
        }
        item.alsoInLots = otherLotsOf(folding, member.id, into.id);
        foldPackage(folding, item, member.id, into, own);
        std::string compared = foldedPerson(item.label);
        const bool taken = labels.contains(compared);
        if (taken) {
            folding.each<ItemAdded>(member.id, own, [&](const Fact& fact) {
                folding.misfit(*fact.origin, MisfitWhy::sameLabel);
            });
        }
        if (taken || item.label.empty()) {
            item.label = member.id;
            compared = foldedPerson(item.label);
        }
        // Another item may have its id for a label.
        for (int number = 2; !labels.insert(compared).second; ++number) {
            item.label = member.id + '@' + std::to_string(number);
            compared = foldedPerson(item.label);
        }
        into.load.items.push_back(std::move(item));
        into.itemIds.push_back(std::move(member.id));
    }
}

} // namespace loadwarden
