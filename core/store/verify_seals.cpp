#include "core/store/verify_seals.h"

#include "core/store/verify_entries.h"

#include <algorithm>

namespace loadwarden {
namespace {

enum class Standing : std::uint8_t { holds, gone, changed };

Standing standingOf(ReadSnapshot& snapshot, const Head& head)
{
    Statement row = snapshot.statement("SELECT hash FROM j_entry WHERE seq = :seq");
    row.bind(":seq", head.seq);
    if (!row.step()) {
        return Standing::gone;
    }
    return row.text(0) == hexOf(head.hash) ? Standing::holds : Standing::changed;
}

void verifySeal(ReadSnapshot& snapshot, const Seal& seal, const std::string& journalId,
                const VerifyRequest& request, VerifyReport& report)
{
    const std::int64_t seq = seal.head.seq;
    if (!isGenuine(seal)) {
        addFault(report, {JournalFaultKind::sealNotGenuine, seq, ""});
        return;
    }
    const auto ofKey = std::ranges::find_if(
        report.sealKeys, [&](const SealsOfKey& each) { return each.key.key == seal.key; });
    // A journal whose seals were all taken away names no key: whoever brings one vouches for it.
    const bool isKnown = request.keys.empty()
                             ? report.sealKeys.empty() || ofKey != report.sealKeys.end()
                             : std::ranges::find(request.keys, seal.key) != request.keys.end();
    if (!isKnown) {
        addFault(report, {JournalFaultKind::sealOfUnknownKey, seq, ""});
        return;
    }
    if (seal.journal != journalId) {
        addFault(report, {JournalFaultKind::sealOfOtherJournal, seq, seal.journal});
        return;
    }
    switch (standingOf(snapshot, seal.head)) {
    case Standing::holds:
        ++report.sealsHeld;
        report.sealedTo = std::max(report.sealedTo, seq);
        if (ofKey != report.sealKeys.end()) {
            ++ofKey->held;
            ofKey->from = ofKey->from == 0 ? seq : std::min(ofKey->from, seq);
            ofKey->to = std::max(ofKey->to, seq);
        }
        break;
    case Standing::gone: addFault(report, {JournalFaultKind::sealedEntryGone, seq, ""}); break;
    case Standing::changed:
        addFault(report, {JournalFaultKind::sealedEntryChanged, seq, ""});
        break;
    }
}

} // namespace

void verifySeals(ReadSnapshot& snapshot, const std::string& journalId, const VerifyRequest& request,
                 VerifyReport& report)
{
    std::vector<std::pair<std::int64_t, std::string>> lines;
    {
        Statement rows = snapshot.statement("SELECT number, line FROM j_seal ORDER BY number");
        while (rows.step()) {
            lines.emplace_back(rows.integer(0), rows.text(1));
        }
    }
    for (const JournalKey& key : sealKeysOf(snapshot)) {
        report.sealKeys.push_back({.key = key});
    }
    std::int64_t expected = 1;
    for (const auto& [number, line] : lines) {
        if (number != expected) {
            addFault(report, {JournalFaultKind::sealMissing, expected, ""});
        }
        expected = number + 1;
        if (const auto seal = readSeal(line)) {
            verifySeal(snapshot, *seal, journalId, request, report);
        } else {
            addFault(report, {JournalFaultKind::sealUnreadable, number, ""});
        }
    }
    for (const Seal& seal : request.seals) {
        verifySeal(snapshot, seal, journalId, request, report);
    }
    for (const Head& head : request.expected) {
        const Standing standing = standingOf(snapshot, head);
        if (standing != Standing::holds) {
            addFault(report, {standing == Standing::gone ? JournalFaultKind::expectedEntryGone
                                                         : JournalFaultKind::expectedEntryChanged,
                              head.seq, ""});
        }
    }
}

} // namespace loadwarden
