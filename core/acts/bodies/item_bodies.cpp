#include "core/acts/bodies/bodies.h"
#include "core/acts/bodies/placed.h"
#include "core/loads/load_words.h"

namespace loadwarden::body_format {

template <class Io>
void members(Io& io, Ref<Io, ItemAdded> act)
{
    io.must("label", act.label, aName);
    io.must("implant", act.implant, oneOf<implantWords>);
    io.may("packaging", act.packaging, IdOf{"pk"});
    io.may("packagingExpires", act.packagingExpires, aDay);
    io.must("internalVisible", act.internalVisible, aFlag);
    io.may("devices", act.devices, listOf(IdOf{"dv"}));
    io.may("external", act.external, nested<PlacedIndicator>);
    io.may("internals", act.internals, listOf(nested<PlacedIndicator>, 100));
    io.require((!act.external || act.external->id.starts_with("ci-"))
                   && areAll("ci-", act.internals),
               "must name its indicators by ci-");
    io.may("cellulose", act.peroxide.cellulose, aFlag);
    io.may("liquidOrPowder", act.peroxide.liquidOrPowder, aFlag);
    io.may("moist", act.peroxide.moist, aFlag);
    io.may("lumen", act.peroxide.lumen, oneOf<lumenWords>);
}

template <class Io>
void members(Io& io, Ref<Io, ItemMoved> act)
{
    io.must("from", act.from, IdOf{"ld"});
    io.must("to", act.to, IdOf{"ld"});
    io.must("why", act.why, aText);
    io.require(act.from != act.to, "must name two loads");
}

template <class Io>
void members(Io& io, Ref<Io, ItemRemoved> act)
{
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io&, Ref<Io, ItemConfirmed>)
{
}

template <class Io>
void members(Io& io, Ref<Io, PackageChecked> act)
{
    io.may("cooled", act.cooled, aFlag);
    io.may("dry", act.dry, aFlag);
    io.may("intact", act.intact, aFlag);
    io.may("sealed", act.sealed, aFlag);
    io.may("labelAgrees", act.labelAgrees, aFlag);
}

template <class Io>
void members(Io&, Ref<Io, PackageCheckLost>)
{
}

template <class Io>
void members(Io& io, Ref<Io, ItemDistributed> act)
{
    io.must("to", act.to, aName);
}

template <class Io>
void members(Io& io, Ref<Io, ItemUsed> act)
{
    io.must("caseReference", act.caseReference, aName);
}

template <class Io>
void members(Io& io, Ref<Io, ItemReturned> act)
{
    io.must("why", act.why, aText);
}

LW_BODY(ItemAdded)
LW_BODY(ItemMoved)
LW_BODY(ItemRemoved)
LW_BODY(ItemConfirmed)
LW_BODY(PackageChecked)
LW_BODY(PackageCheckLost)
LW_BODY(ItemDistributed)
LW_BODY(ItemUsed)
LW_BODY(ItemReturned)

} // namespace loadwarden::body_format
