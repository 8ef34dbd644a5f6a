// The words of the item rules "was-inside", "package", "implant", "peroxide" and "in-test".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::itemInTwoLoads() const
{
    if (is(Outcome::note)) {
        return {tr("Another load lists a package of the same name. A lead confirmed that this one "
                   "was in this load."),
                {}};
    }
    return {
        tr("This item is recorded in another load, too."),
        tr("Set the package aside. Find out from its label in which load it was, and correct the "
           "record of the other load. Where the other load had another package of the same name, "
           "have a lead who did not record the item confirm that this one was in this load.")};
}

Words Sentences::itemRecordedLate() const
{
    return {
        tr("Nobody recorded in time, before the load started, that this item was in it."),
        tr("Have a lead who did not record the item look whether it was, and confirm it. If that "
           "cannot be shown, reprocess the item.")};
}

Words Sentences::itemWet() const
{
    return {
        tr("A check found the package wet. It counts as contaminated, also after it has dried."),
        tr("Do not use the package. Look for the cause. %1").arg(reprocessItem())};
}

Words Sentences::itemTorn() const
{
    return {tr("A check found the package damaged."),
            tr("Do not use the package. %1").arg(reprocessItem())};
}

Words Sentences::itemUnsealed() const
{
    return {tr("A check found the package not sealed or not closed."),
            tr("Do not use the package. Closing it again does not put it right. %1")
                .arg(reprocessItem())};
}

Words Sentences::itemNotChecked() const
{
    return withEntryCause(
        tr("The package has not been fully checked after the cycle."),
        tr("A check of the package is recorded, but it does not count."),
        tr("Check it now and record each under your name: dry, intact, sealed, cooled, and "
           "whether the label agrees with the record."));
}

Words Sentences::itemCheckLost() const
{
    return {tr("The check of this package after the cycle cannot be made up for."),
            tr("Do not use the package. %1").arg(reprocessItem())};
}

Words Sentences::itemNotCooled() const
{
    return {tr("The package had not cooled when it was checked."),
            tr("Let it cool where it stands, without touching it or setting it on a cold surface. "
               "Then check it again and record that.")};
}

Words Sentences::itemLabelDiffers() const
{
    return {tr("The label of the package does not agree with the record."),
            tr("Set the package aside and find out which is right. Correct the record or the label "
               "as your policy says, and record a new check. If it cannot be shown what is inside, "
               "reprocess the item.")};
}

Words Sentences::itemPackagingNotStated() const
{
    return {tr("It is not recorded what the item is packed in, or that this packaging is for the "
               "method of this cycle."),
            tr("Record the packaging, and look in its instructions for use whether it is for this "
               "method. If it is not, reprocess the item in one that is.")};
}

Words Sentences::itemPackagingExpired() const
{
    return {tr("The packaging was past its expiry date when the load started."),
            tr("Check the date on the packaging, and correct it where it was typed wrong. If it is "
               "right, reprocess the item in new packaging.")};
}

Words Sentences::itemImplantImmediateUse() const
{
    return {
        tr("This item is an implant, or is not recorded as none, and the cycle was for immediate "
           "use. That is no routine for an implant."),
        tr("Hold the item, and reprocess it in a routine cycle with a biological indicator (BI). "
           "In an emergency only a supervisor can let it go, with case, reason and who demands "
           "it on record. If it is not an implant, record that.")};
}

Words Sentences::itemImplantWaits() const
{
    return {tr("This item is an implant, or is not recorded as none, and waits for the biological "
               "and chemical indicators that an implant needs."),
            tr("Hold the item until the load's findings on implants are settled. If it is not an "
               "implant, record that.")};
}

Words Sentences::itemPeroxideUnsuitable() const
{
    return {tr("This item does not suit hydrogen peroxide: it has cellulose, liquid or powder, is "
               "moist, or has a lumen that its instructions for use do not list."),
            tr("Do not use the item. Reprocess it, dry, in a cycle and packaging that its "
               "instructions for use allow.")};
}

Words Sentences::itemPeroxideUnknown() const
{
    return {tr("It is not fully recorded whether this item suits hydrogen peroxide."),
            tr("Record for this item: cellulose, liquid or powder, moisture, and whether its "
               "instructions for use list its lumens for this cycle.")};
}

Words Sentences::itemInTest() const
{
    return {tr("This item stood in test cycle %1. A test cycle sterilizes nothing for use.")
                .arg(subject()),
            tr("Do not use the item. %1").arg(reprocessItem())};
}

} // namespace loadwarden
