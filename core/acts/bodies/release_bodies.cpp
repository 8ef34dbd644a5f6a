#include "core/acts/bodies/bodies.h"
#include "core/loads/load_words.h"

namespace loadwarden::body_format {
namespace {

constexpr Whole aSeq{1, std::int64_t{1} << 53U};

} // namespace

template <class Io>
void members(Io& io, Ref<Io, ReviewRecorded> act)
{
    io.must("finding", act.finding, aName);
    io.may("subject", act.subject, aName);
    io.must("answer", act.answer, oneOf<reviewAnswerWords>);
    io.must("why", act.why, aText);
    io.must("seen", act.seen, aSeq);
}

template <class Io>
void members(Io& io, Ref<Io, SignedFinding> finding)
{
    io.must("key", finding.key, aName);
    io.may("subject", finding.subject, aName);
    io.may("item", finding.item, IdOf{"it"});
    io.must("outcome", finding.outcome, wordUpTo<Outcome::fails>);
}

template <class Io>
void members(Io& io, Ref<Io, SignedItem> item)
{
    io.must("item", item.item, IdOf{"it"});
    io.must("meaning", item.meaning, wordUpTo<Verdict::reprocess>);
}

template <class Io>
void groundsOf(Io& io, Ref<Io, SignedGrounds> grounds)
{
    io.may("findings", grounds.findings, listOf(nested<SignedFinding>, 10'000));
    io.must("evidence", grounds.evidence, aDigest);
    io.must("policy", grounds.policy, aDigest);
    io.must("rules", grounds.rules, aName);
}

template <class Io>
void members(Io& io, Ref<Io, DispositionSigned> act)
{
    io.must("meaning", act.meaning, wordUpTo<Verdict::reprocess>);
    io.must("verdict", act.verdict, wordUpTo<Verdict::reprocess>);
    io.may("items", act.items, listOf(nested<SignedItem>, 1'000));
    groundsOf(io, act.grounds);
}

template <class Io>
void members(Io& io, Ref<Io, EmergencyReleased> act)
{
    io.must("caseReference", act.caseReference, aName);
    io.must("demandedBy", act.demandedBy, aName);
    io.must("why", act.why, aText);
    io.must("wouldHavePrevented", act.wouldHavePrevented, aText);
    groundsOf(io, act.grounds);
}

template <class Io>
void members(Io&, Ref<Io, EntryVoided>)
{
}

template <class Io>
void members(Io& io, Ref<Io, EntryAnnotated> act)
{
    io.must("note", act.note, aText);
}

LW_BODY(ReviewRecorded)
LW_BODY(DispositionSigned)
LW_BODY(EmergencyReleased)
LW_BODY(EntryVoided)
LW_BODY(EntryAnnotated)

} // namespace loadwarden::body_format
