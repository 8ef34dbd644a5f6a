// The words of the rules "packages", "aeration", "peroxide" (of the load) and "reviews".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::packagesOneRejected() const
{
    return {
        tr("One package of this load has a rejected chemical indicator."),
        tr("Keep that package out of use. Look at the physical record, the other indicators and "
           "the place of the package in the load, judge whether the whole load is affected, and "
           "write why.")};
}

Words Sentences::packagesSeveralRejected() const
{
    return {tr("Packages of this load with a rejected chemical indicator: %1.").arg(count()),
            tr("Keep those packages out of use. Look at the physical record, the other indicators "
               "and the places of the packages in the load, judge whether the whole load is "
               "affected, and write why.")};
}

Words Sentences::packagesWet() const
{
    return {
        tr("Wet packages in this load: %1.").arg(count()),
        tr("Keep those packages out of use: they count as contaminated. Check the others, look "
           "for the cause in steam, drying, packing and loading, judge whether the whole load is "
           "affected, and write why.")};
}

Words Sentences::packagesAllUnchanged() const
{
    return {tr("No external indicator of this load was accepted, and at least one was rejected: "
               "nothing shows that the load went through the cycle at all."),
            tr("Keep the load apart as not sterile, and find out whether the cycle was run. %1")
                .arg(reprocessLoad())};
}

Words Sentences::aerationNotStated() const
{
    return {
        tr("It is not recorded how long and how warm this load must aerate: for the sterilizer, a "
           "package or a device it is missing, or cannot be: a time above 0 but below 60 min, or "
           "no time of at least 4 h."),
        tr("Look the time and temperature of aeration up in the instructions for use of "
           "sterilizer, packaging and devices, and record them in minutes and °C. Where a "
           "package or device asks for less than an hour, record 60 min. Leave the load in the "
           "aerator until then.")};
}

Words Sentences::aerationImplausible() const
{
    return {tr("An aeration is recorded as more than 30 K warmer than the sterilizer's "
               "instructions ask. It does not count."),
            tr("Read its temperature and unit again, and correct what was typed wrong. A value in "
               "Fahrenheit may have been typed as Celsius.")};
}

Words Sentences::aerationRunning() const
{
    if (hasTime()) {
        return {tr("The load is being aerated; the required time is reached at %1.").arg(time()),
                tr("Leave the load in the aerator until %1, then record the end. Take nothing out "
                   "before that, not even to reprocess it.")
                    .arg(time())};
    }
    return {tr("The load is being aerated."),
            tr("Leave the load in the aerator for the required time, then record the end. Take "
               "nothing out before that, not even to reprocess it.")};
}

Words Sentences::aerationEndAwaited() const
{
    return {tr("The required time of aeration has passed, but its end is not recorded."),
            tr("Check that aeration ran through, then record its end and its temperature.")};
}

Words Sentences::aerationNotDone() const
{
    return {
        tr("No complete aeration is recorded: after the cycle, without interruption, warm enough "
           "and long enough."),
        tr("Put the load into the aerator, in the gloves that the instructions for use name, and "
           "record the start. An interrupted aeration starts again from the beginning. Aerate "
           "before anybody handles the items, also before reprocessing. If it was aerated: check "
           "start, end and temperature of the aeration, and that the end of the cycle is recorded "
           "as the moment at which aeration could begin.")};
}

Words Sentences::peroxideItemUnsuitable() const
{
    return {
        tr("Item %1 does not suit hydrogen peroxide: it has cellulose, liquid or powder, is "
           "moist, or has a lumen that its instructions for use do not list. That can spoil the "
           "cycle for the rest of the load.")
            .arg(subject()),
        tr("Keep that item out of use. Judge from the physical record and the indicators whether "
           "the rest of the load is affected, and write why.")};
}

Words Sentences::reviewNotCounted() const
{
    return withCause(
        {tr("A review of the finding “%1” is recorded, but it answers nothing.").arg(subject()),
         tr("Have it reviewed again as the finding asks.")},
        {});
}

Words Sentences::voidingBadAnswer() const
{
    return {tr("A rejected reading at %1 was declared void by a lead and does not count. The "
               "record keeps it.")
                .arg(subject()),
            {}};
}

Words Sentences::voidingNotCounted() const
{
    return {tr("A reading at %1 was declared void, but it counts all the same. Only a lead who did "
               "not read it can declare a rejected reading void, after it was recorded; growth and "
               "unclear readings cannot be declared void.")
                .arg(subject()),
            {}};
}

Words Sentences::reviewNotIsolated() const
{
    return {tr("A review of the finding “%1” came to the answer that this load is affected.")
                .arg(subject()),
            reprocessLoad()};
}

} // namespace loadwarden
