#include "tests/core/store/tampering/kinds.h"

#include "tests/core/store/test_journal.h"

#include <algorithm>
#include <array>

namespace loadwarden::testing {
namespace {

using Kind = JournalFaultKind;
using Random = std::mt19937_64;

/// An index from `least` to `most`.
std::size_t pick(Random& random, std::size_t least, std::size_t most)
{
    return std::uniform_int_distribution<std::size_t>(least, most)(random);
}

/// Any entry but the first.
std::size_t pickEntry(const Contents& contents, Random& random)
{
    return pick(random, 1, contents.entries.size() - 1);
}

std::int64_t seqAt(std::size_t at)
{
    return static_cast<std::int64_t>(at) + 1;
}

/// The entry behind a change of bytes and hash shows it; of the newest, p_head.
JournalFault shownBehind(const Contents& contents, std::size_t at)
{
    return at + 1 < contents.entries.size() ? JournalFault{Kind::unlinked, seqAt(at + 1), ""}
                                            : JournalFault{Kind::headRow, seqAt(at), ""};
}

/// Another text in the body.
void reword(Contents& contents, std::size_t at, Random& random)
{
    Envelope envelope = contents.envelope(at);
    envelope.body = "{\"text\":\"" + std::to_string(random()) + "\"}";
    contents.forge(at, envelope);
}

void dropSubjects(Contents& contents, std::int64_t seq)
{
    std::erase_if(contents.subjects, [seq](const auto& each) { return each.seq == seq; });
}

JournalFault editBytes(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    std::string& bytes = contents.entries[at].bytes;
    const std::size_t body = bytes.find(R"("body":)") + 8;
    bytes[pick(random, body, bytes.size() - 2)] ^= 1;
    return {Kind::edited, seqAt(at), ""};
}

JournalFault editActor(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    std::string& bytes = contents.entries[at].bytes;
    bytes.replace(bytes.find("st-1"), 4, "st-2");
    return {Kind::edited, seqAt(at), ""};
}

JournalFault editHash(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    char& digit = contents.entries[at].hash[pick(random, 0, 63)];
    digit = digit == '0' ? '1' : '0';
    return {Kind::edited, seqAt(at), ""};
}

JournalFault editWithHash(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    reword(contents, at, random);
    return shownBehind(contents, at);
}

JournalFault editTime(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    Envelope envelope = contents.envelope(at);
    const Duration shift = Duration::minutes(static_cast<std::int64_t>(pick(random, 1, 600)));
    (random() % 2 == 0 ? envelope.recordedAt : envelope.happenedAt).at.ms -= shift.ms;
    contents.forge(at, envelope);
    return shownBehind(contents, at);
}

JournalFault spoil(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    contents.entries[at].bytes = std::string(pick(random, 0, 200), 'x');
    contents.entries[at].hash = hexOf(hashOf(contents.entries[at].bytes));
    return {Kind::unreadable, seqAt(at), ""};
}

JournalFault removeOne(Contents& contents, Random& random)
{
    const std::size_t at = pick(random, 1, contents.entries.size() - 2);
    dropSubjects(contents, seqAt(at));
    contents.entries.erase(contents.entries.begin() + static_cast<std::ptrdiff_t>(at));
    return {Kind::missing, seqAt(at), "the next one there is " + std::to_string(seqAt(at + 1))};
}

JournalFault removeAndRenumber(Contents& contents, Random& random)
{
    const std::size_t at = pick(random, 1, contents.entries.size() - 2);
    dropSubjects(contents, seqAt(at));
    contents.entries.erase(contents.entries.begin() + static_cast<std::ptrdiff_t>(at));
    for (auto& entry : contents.entries) {
        entry.seq -= entry.seq > seqAt(at) ? 1 : 0;
    }
    for (auto& subject : contents.subjects) {
        subject.seq -= subject.seq > seqAt(at) ? 1 : 0;
    }
    contents.headSeq -= 1;
    return {Kind::number, seqAt(at), ""};
}

JournalFault swapTwo(Contents& contents, Random& random)
{
    const std::size_t a = pick(random, 1, contents.entries.size() - 2);
    const std::size_t b = pick(random, a + 1, contents.entries.size() - 1);
    std::swap(contents.entries[a], contents.entries[b]);
    std::swap(contents.entries[a].seq, contents.entries[b].seq);
    return {Kind::number, seqAt(a), ""};
}

JournalFault duplicate(Contents& contents, Random& random)
{
    Contents::Entry copy = contents.entries[pickEntry(contents, random)];
    copy.seq = seqAt(contents.entries.size());
    contents.headSeq = copy.seq;
    contents.headHash = copy.hash;
    contents.entries.push_back(copy);
    return {Kind::number, copy.seq, ""};
}

JournalFault insertOne(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    for (auto& subject : contents.subjects) {
        subject.seq += subject.seq > seqAt(at - 1) ? 1 : 0;
    }
    for (auto& entry : contents.entries) {
        entry.seq += entry.seq > seqAt(at - 1) ? 1 : 0;
    }
    contents.headSeq += 1;
    Envelope forged = contents.envelope(at);
    forged.prev = hashOf(contents.entries[at - 1].bytes);
    forged.subjects.clear();
    contents.entries.insert(contents.entries.begin() + static_cast<std::ptrdiff_t>(at),
                            {seqAt(at), "", "", ""});
    contents.forge(at, forged);
    return {Kind::number, seqAt(at + 1), ""};
}

JournalFault rechainSealed(Contents& contents, Random& random)
{
    const std::size_t lastSealed = contents.entries.size() / sealEvery * sealEvery;
    const std::size_t at = pick(random, 1, lastSealed - 1);
    reword(contents, at, random);
    contents.chainFrom(at);
    return {Kind::sealedEntryChanged, static_cast<std::int64_t>(lastSealed), ""};
}

JournalFault rechainUnsealed(Contents& contents, Random& random)
{
    const std::size_t lastSealed = contents.entries.size() / sealEvery * sealEvery;
    const std::size_t at = pick(random, lastSealed, contents.entries.size() - 1);
    reword(contents, at, random);
    contents.chainFrom(at);
    return {Kind::expectedEntryChanged, seqAt(contents.entries.size() - 1), ""};
}

JournalFault cutTail(Contents& contents, Random& random)
{
    const auto left = static_cast<std::int64_t>(pick(random, 1, contents.entries.size() - 1));
    contents.entries.resize(static_cast<std::size_t>(left));
    contents.indexAnew();
    std::erase_if(contents.seals,
                  [left](const auto& seal) { return readSeal(seal.second)->head.seq > left; });
    return {Kind::expectedEntryGone, static_cast<std::int64_t>(entriesOfJournal), ""};
}

JournalFault cutTailWithoutTheTables(Contents& contents, Random& random)
{
    const std::size_t left = pick(random, 33, contents.entries.size() - 1);
    contents.entries.resize(left);
    return {Kind::headRow, static_cast<std::int64_t>(left), ""};
}

JournalFault rewriteAllWithSealsOfHisOwn(Contents& contents, Random& random)
{
    for (std::size_t at = 1; at < contents.entries.size(); ++at) {
        reword(contents, at, random);
    }
    contents.chainFrom(1);
    const SealKey forgers = SealKey::create();
    std::int64_t last = 0;
    for (auto& [number, line] : contents.seals) {
        const Seal before = readSeal(line).value();
        last = before.head.seq;
        const auto hash = parseHash(contents.entries[static_cast<std::size_t>(last) - 1].hash);
        line = writeSeal(makeSeal(before.journal, {last, hash.value()}, before.at, forgers));
    }
    return {Kind::sealOfUnknownKey, last, ""};
}

JournalFault rewriteAllWithoutSeals(Contents& contents, Random& random)
{
    for (std::size_t at = 1; at < contents.entries.size(); ++at) {
        reword(contents, at, random);
    }
    contents.chainFrom(1);
    contents.seals.clear();
    return {Kind::expectedEntryChanged, seqAt(contents.entries.size() - 1), ""};
}

JournalFault becomeAnotherJournal(Contents& contents, Random& /*random*/)
{
    Envelope opening = contents.envelope(0);
    opening.body.replace(opening.body.find("jn-1"), 4, "jn-2");
    contents.forge(0, opening);
    contents.chainFrom(0);
    return {Kind::sealOfOtherJournal, static_cast<std::int64_t>(sealEvery), "jn-1"};
}

JournalFault loseTheOpening(Contents& contents, Random& /*random*/)
{
    Envelope opening = contents.envelope(0);
    opening.kind = "note";
    contents.forge(0, opening);
    contents.chainFrom(0);
    return {Kind::opening, 1, ""};
}

JournalFault removeSubject(Contents& contents, Random& random)
{
    const std::size_t at = pick(random, 0, contents.subjects.size() - 1);
    const std::int64_t seq = contents.subjects[at].seq;
    contents.subjects.erase(contents.subjects.begin() + static_cast<std::ptrdiff_t>(at));
    return {Kind::subjectRows, seq, ""};
}

JournalFault changeSubject(Contents& contents, Random& random)
{
    auto& subject = contents.subjects[pick(random, 0, contents.subjects.size() - 1)];
    subject.subject += '9';
    return {Kind::subjectRows, subject.seq, ""};
}

JournalFault addSubject(Contents& contents, Random& random)
{
    const std::int64_t seq = seqAt(pickEntry(contents, random));
    contents.subjects.push_back({seq, 9, "ld-9"});
    return {Kind::subjectRows, seq, ""};
}

JournalFault changeKind(Contents& contents, Random& random)
{
    const std::size_t at = pickEntry(contents, random);
    contents.entries[at].kind = "other";
    return {Kind::kindColumn, seqAt(at), ""};
}

JournalFault changeHead(Contents& contents, Random& random)
{
    const std::size_t at = pick(random, 0, contents.entries.size() - 2);
    contents.headSeq = contents.entries[at].seq;
    contents.headHash = contents.entries[at].hash;
    return {Kind::headRow, seqAt(contents.entries.size() - 1), ""};
}

JournalFault editSeal(Contents& contents, Random& random)
{
    auto& [number, line] = contents.seals[pick(random, 0, contents.seals.size() - 1)];
    const std::int64_t seq = readSeal(line)->head.seq;
    char& digit = line[line.size() - 3 - pick(random, 0, 120)];
    digit = digit == '0' ? '1' : '0';
    return {Kind::sealNotGenuine, seq, ""};
}

JournalFault spoilSeal(Contents& contents, Random& random)
{
    auto& [number, line] = contents.seals[pick(random, 0, contents.seals.size() - 1)];
    line.resize(pick(random, 0, line.size() - 1));
    return {Kind::sealUnreadable, number, ""};
}

JournalFault removeSeal(Contents& contents, Random& random)
{
    const std::size_t at = pick(random, 0, contents.seals.size() - 2);
    const std::int64_t number = contents.seals[at].first;
    contents.seals.erase(contents.seals.begin() + static_cast<std::ptrdiff_t>(at));
    return {Kind::sealMissing, number, ""};
}

JournalFault dropGuards(Contents& contents, Random& /*random*/)
{
    contents.guarded = false;
    return {Kind::guards, 0, "j_entry"};
}

constexpr std::array<Tampering, 28> everyKind{{
    {"an entry's body edited", false, editBytes},
    {"an entry's author edited", false, editActor},
    {"an entry's hash edited", false, editHash},
    {"an entry edited with its hash", false, editWithHash},
    {"an entry's time edited with its hash", false, editTime},
    {"an entry replaced by rubbish", false, spoil},
    {"an entry deleted", false, removeOne},
    {"an entry deleted and the rest renumbered", false, removeAndRenumber},
    {"two entries swapped", false, swapTwo},
    {"an entry duplicated at the end", false, duplicate},
    {"an entry inserted", false, insertOne},
    {"chained anew from before a seal", false, rechainSealed},
    {"chained anew behind the last seal", true, rechainUnsealed},
    {"the tail cut off with all that names it", true, cutTail},
    {"the tail cut off", false, cutTailWithoutTheTables},
    {"written anew with another key's seals", false, rewriteAllWithSealsOfHisOwn},
    {"written anew without seals", true, rewriteAllWithoutSeals},
    {"another journal's id given", false, becomeAnotherJournal},
    {"the opening replaced", false, loseTheOpening},
    {"a subject's row deleted", false, removeSubject},
    {"a subject's row changed", false, changeSubject},
    {"a subject's row added", false, addSubject},
    {"a kind beside an entry changed", false, changeKind},
    {"the head changed", false, changeHead},
    {"a seal edited", false, editSeal},
    {"a seal spoiled", false, spoilSeal},
    {"a seal deleted", false, removeSeal},
    {"the guards dropped", false, dropGuards},
}};

} // namespace

std::span<const Tampering> tamperings()
{
    return everyKind;
}

} // namespace loadwarden::testing
