#include "core/acts/bodies/bodies.h"

namespace loadwarden::body_format {
namespace {

constexpr Text oldWords{1, 200, false};
constexpr Text oldRecord{1, 65'536};

} // namespace

template <class Io>
void members(Io& io, Ref<Io, HistoryImported> act)
{
    io.must("source", act.source, aName);
    io.must("lot", act.lot, aName);
    io.unless("dayOnly", false, act.dayOnly, aFlag);
    io.may("end", act.end, aTime);
    io.may("sterilizer", act.sterilizer, aName);
    io.must("outcome", act.outcome, oldWords);
    io.may("labels", act.labels, listOf(aName));
    io.may("record", act.record, oldRecord);
}

LW_BODY(HistoryImported)

} // namespace loadwarden::body_format
