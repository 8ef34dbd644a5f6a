#include "core/acts/bodies/bodies.h"
#include "core/acts/floor_words.h"
#include "core/indicators/chemical.h"
#include "core/indicators/indicator_words.h"

#include <algorithm>
#include <set>

namespace loadwarden::body_format {
namespace {

constexpr Whole checkNumbers{1, 1'000'000'000};
constexpr Whole inAnswerMilliseconds{0, 86'400'000};
constexpr std::size_t mostDrawings = 100;

} // namespace

template <class Io>
void members(Io& io, Ref<Io, ItemReported> act)
{
    io.may("indicator", act.indicator, oneOf<chemicalSeenWords>);
    io.may("faults", act.faults, listOf(oneOf<packageFaultWords>, 4));
    io.must("place", act.place, aName);
    io.may("by", act.by, aName);
    io.may("note", act.note, aText);
    io.require(act.indicator || !act.faults.empty(), "must say what was found");
    io.require(!act.indicator || isBadAnswer(*act.indicator),
               "must report an indicator that does not pass");
    io.require(std::set(act.faults.begin(), act.faults.end()).size() == act.faults.size(),
               "must name each fault once");
}

template <class Io>
void members(Io& io, Ref<Io, QuestionLogged> act)
{
    io.must("asked", act.asked, aText);
    io.must("place", act.place, aName);
    io.may("by", act.by, aName);
    io.may("topic", act.topic, aName);
    io.may("label", act.label, aName);
    io.may("lot", act.lot, aName);
    io.must("answer", act.answer, aText);
    io.must("wasMisread", act.wasMisread, aFlag);
}

template <class Io>
void members(Io& io, Ref<Io, CheckedDrawing> drawing)
{
    io.must("product", drawing.product, IdOf{"pr"});
    io.must("drawn", drawing.drawn, oneOf<chemicalSeenWords>);
    io.must("answer", drawing.answer, oneOf<readAsWords>);
    io.must("ms", drawing.ms, inAnswerMilliseconds);
}

template <class Io>
void members(Io& io, Ref<Io, ReadingCheckTaken> act)
{
    io.must("number", act.number, checkNumbers);
    io.must("drawings", act.drawings, listOf(nested<CheckedDrawing>, mostDrawings));
}

LW_BODY(ItemReported)
LW_BODY(QuestionLogged)
LW_BODY(ReadingCheckTaken)

} // namespace loadwarden::body_format
