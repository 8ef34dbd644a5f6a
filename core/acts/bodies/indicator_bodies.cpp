#include "core/acts/bodies/bodies.h"
#include "core/acts/bodies/placed.h"
#include "core/indicators/indicator_words.h"

namespace loadwarden::body_format {

template <class Io>
void members(Io& io, Ref<Io, PcdPlaced> act)
{
    io.may("mark", act.mark, aName);
    io.may("indicators", act.indicators, listOf(nested<PlacedIndicator>, 100));
    io.may("vials", act.vials, listOf(nested<PlacedIndicator>, 100));
    io.require(areAll("ci-", act.indicators) && areAll("bv-", act.vials),
               "must name chemical indicators by ci- and vials by bv-");
}

template <class Io>
void members(Io& io, Ref<Io, SheetPlaced> act)
{
    io.may("product", act.product, IdOf{"pr"});
    io.may("lot", act.lot, IdOf{"pl"});
}

template <class Io>
void members(Io& io, Ref<Io, ChemicalRead> act)
{
    io.must("seen", act.seen, oneOf<chemicalSeenWords>);
}

template <class Io>
void members(Io& io, Ref<Io, ChemicalReread> act)
{
    io.must("seen", act.seen, oneOf<chemicalSeenWords>);
}

template <class Io>
void members(Io&, Ref<Io, ChemicalLost>)
{
}

template <class Io>
void members(Io& io, Ref<Io, ChemicalUnsettled> act)
{
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io& io, Ref<Io, ControlPrepared> act)
{
    io.may("product", act.product, IdOf{"pr"});
    io.may("lot", act.lot, IdOf{"pl"});
    io.may("forLoad", act.forLoad, IdOf{"ld"});
}

template <class Io>
void members(Io&, Ref<Io, BiologicalActivated>)
{
}

template <class Io>
void members(Io&, Ref<Io, BiologicalIncubated>)
{
}

template <class Io>
void members(Io& io, Ref<Io, ProcessIndicatorRead> act)
{
    io.must("seen", act.seen, oneOf<processIndicatorWords>);
}

template <class Io>
void members(Io& io, Ref<Io, BiologicalRead> act)
{
    io.must("seen", act.seen, oneOf<growthSeenWords>);
}

template <class Io>
void members(Io& io, Ref<Io, BiologicalReread> act)
{
    io.must("seen", act.seen, oneOf<growthSeenWords>);
}

template <class Io>
void members(Io&, Ref<Io, BiologicalLost>)
{
}

template <class Io>
void members(Io& io, Ref<Io, BiologicalUnsettled> act)
{
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io& io, Ref<Io, BiologicalVoided> act)
{
    io.must("why", act.why, aText);
}

LW_BODY(PcdPlaced)
LW_BODY(SheetPlaced)
LW_BODY(ChemicalRead)
LW_BODY(ChemicalReread)
LW_BODY(ChemicalLost)
LW_BODY(ChemicalUnsettled)
LW_BODY(ControlPrepared)
LW_BODY(BiologicalActivated)
LW_BODY(BiologicalIncubated)
LW_BODY(ProcessIndicatorRead)
LW_BODY(BiologicalRead)
LW_BODY(BiologicalReread)
LW_BODY(BiologicalLost)
LW_BODY(BiologicalUnsettled)
LW_BODY(BiologicalVoided)

} // namespace loadwarden::body_format
