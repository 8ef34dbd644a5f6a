#include "core/acts/fold/indicator_fold.h"
#include "core/acts/fold/out_of_range.h"
#include "core/acts/fold/product_parts.h"
#include "core/acts/fold/registers.h"

// The controls beside a record's vials, and the incubators of both.

namespace loadwarden {
namespace {

/// A control's product and lot.
struct OfControl {
    std::string product; ///< pr-; empty: not known
    std::string lot;     ///< number, where the register has it as one of that product; else id

    /// Whether a control of these can be one of a vial's.
    [[nodiscard]] bool fits(const Vial& vial) const
    {
        return !product.empty() && product == idIn(vial.product) && !lot.empty() && lot == vial.lot;
    }
};

OfControl ofControl(const FactBook& book, std::string_view product, std::string_view lot)
{
    OfControl of{std::string(product), std::string(lot)};
    const Fact* const known = peekRevision<ProductLotRecorded>(book, lot, newest);
    if (known == nullptr) {
        return of;
    }
    const std::string_view ofLot = known->origin->subject("pr");
    if (of.product.empty()) {
        of.product = ofLot;
    }
    if (of.product == ofLot) {
        of.lot = std::get<ProductLotRecorded>(known->current().act).number;
    }
    return of;
}

/// Whether anybody ever said, also if it was struck or amended, that a control is of the product
/// and lot of a vial.
bool wasSaidToFit(const FactBook& book, std::string_view id, const Vial& vial)
{
    for (const std::uint32_t index : book.about(id)) {
        for (const Entry* const entry : book.facts()[index].chain) {
            const auto* const prepared = std::get_if<ControlPrepared>(&entry->act);
            if (prepared != nullptr
                && ofControl(book, prepared->product, prepared->lot).fits(vial)) {
                return true;
            }
        }
    }
    return false;
}

} // namespace

void addControls(Folding& folding, EvidenceRecord& record, VialsOfRecord& vials,
                 const ProductNames& names)
{
    const FactBook& book = folding.book();
    for (const std::string& id : idsOf<ControlPrepared>(book, "bc")) {
        // A control beside no vial of the record is no evidence.
        bool said = false;
        bool own = false;
        for (const Vial* const vial : vials.all) {
            if (wasSaidToFit(book, id, *vial)) {
                said = true;
                own = own || vials.own.contains(vial->id);
            }
        }
        if (!said) {
            continue;
        }
        Control control = foldControl(folding, id, own);
        const OfControl of = ofControl(book, control.product, control.lot);
        control.lot = of.lot;
        const auto fits = [&of](const Vial* vial) { return of.fits(*vial); };
        if (std::ranges::none_of(vials.all, fits)) {
            continue;
        }
        if (!control.incubator.empty()) {
            vials.incubators.insert(control.incubator);
        }
        for (const auto& [bound, name] : names) {
            if (idIn(bound) != of.product) {
                continue;
            }
            Control copy = control;
            copy.product = name;
            copy.id = name == of.product ? id : id + name.substr(name.find('@'));
            record.controls.push_back(std::move(copy));
        }
    }
}

void addIncubators(Folding& folding, EvidenceRecord& record, const VialsOfRecord& vials)
{
    for (const std::string& id : vials.incubators) {
        record.incubators.push_back(
            {.id = id,
             .outOfRange = spansOutOfRange(folding, id, vials.ownIncubators.contains(id))});
    }
}

} // namespace loadwarden
