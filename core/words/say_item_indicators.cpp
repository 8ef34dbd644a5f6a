// The words of the item rules "external" and "internal".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::itemExternalAbsent() const
{
    return {tr("The package has no external indicator."),
            tr("Do not use the package. %1").arg(reprocessItem())};
}

Words Sentences::itemExternalRejected() const
{
    return {
        tr("The external indicator of this package was rejected. An indicator that rejects is a "
           "failure even where it is expired or otherwise invalid."),
        tr("Do not use the package. %1").arg(reprocessItem())};
}

Words Sentences::itemExternalNotRead() const
{
    return {tr("The external indicator of this package has not been read."),
            tr("Look at it, after the cycle, and record what you see. A type 1 indicator, such as "
               "tape, shows that the package was exposed; it does not show that it is sterile.")};
}

Words Sentences::itemExternalUnclear() const
{
    return {tr("The external indicator of this package was read as unclear."), secondReader()};
}

Words Sentences::itemExternalInvalid() const
{
    return withCause(
        {tr("The external indicator of this package does not count as accepted."),
         tr("Check product, lot, expiry date and time of reading, and correct what was typed "
            "wrong.")},
        tr("If that does not make it count, reprocess the item."));
}

Words Sentences::itemExternalLost() const
{
    const QString next = tr("Do not use the package. %1").arg(reprocessItem());
    if (hasCause()) {
        return {tr("The external indicator of this package cannot be obtained, and what was read "
                   "of it does not count. %1")
                    .arg(because().says),
                next};
    }
    return {tr("The external indicator of this package cannot be obtained."), next};
}

Words Sentences::itemInternalAbsent() const
{
    return {tr("The internal chemical indicator of this package (%1) is not there.").arg(place()),
            tr("Do not use the contents. %1").arg(reprocessItem())};
}

Words Sentences::itemInternalRejected() const
{
    return {
        tr("The internal chemical indicator of this package (%1) was rejected. An indicator that "
           "rejects is a failure even where it is expired or otherwise invalid.")
            .arg(place()),
        tr("Do not use the contents, and tell the supervisor. %1").arg(reprocessItem())};
}

Words Sentences::itemInternalLost() const
{
    return {tr("The internal chemical indicator of this package (%1) cannot be obtained, and the "
               "package needs it.")
                .arg(place()),
            tr("Do not use the contents. %1").arg(reprocessItem())};
}

Words Sentences::itemInternalLostNoted() const
{
    return {
        tr("The internal chemical indicator of this package (%1) cannot be obtained; the package "
           "does not need it to be released.")
            .arg(place()),
        {}};
}

Words Sentences::itemInternalUnclear() const
{
    return {tr("The internal chemical indicator of this package (%1) was read as unclear. Until it "
               "is settled, the contents are not used.")
                .arg(place()),
            secondReader()};
}

Words Sentences::itemInternalOnOpening() const
{
    return {
        tr("The internal chemical indicator of this container (%1) is read when the container is "
           "opened at the point of use.")
            .arg(place()),
        tr("Whoever opens the container reads it first. Where it is rejected, unclear or not "
           "there, the contents are not used.")};
}

Words Sentences::itemInternalInvalid() const
{
    if (is(Outcome::note)) {
        return withCause(
            {tr("An internal chemical indicator that this package does not need to be released "
                "(%1) does not count as accepted.")
                 .arg(place()),
             {}},
            {});
    }
    return withCause(
        {tr("This package needs an internal chemical indicator, and the one recorded (%1) does not "
            "count as accepted.")
             .arg(place()),
         tr("Check product, lot, expiry date and time of reading, and correct what was typed "
            "wrong.")},
        tr("If that does not make it count, reprocess the item."));
}

Words Sentences::itemInternalNotRead() const
{
    return {
        tr("The internal chemical indicator of this package (%1) has not been read.").arg(place()),
        readDirections()};
}

Words Sentences::itemInternalMissing() const
{
    return {tr("This package needs an internal chemical indicator, and none is recorded."),
            tr("Record the indicator that is in the package, and read it. If there is none, "
               "reprocess the item with one.")};
}

} // namespace loadwarden
