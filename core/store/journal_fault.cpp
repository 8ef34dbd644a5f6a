#include "core/store/journal_fault.h"

namespace loadwarden {
namespace {

std::string plainSentence(JournalFaultKind kind, const std::string& seq)
{
    const std::string entry = "Entry " + seq;
    switch (kind) {
    case JournalFaultKind::unreadable: return entry + " cannot be read as an entry of a journal";
    case JournalFaultKind::number:
        return entry + " calls itself by another number: it was moved or copied";
    case JournalFaultKind::edited:
        return entry + " was changed after it was written: its hash does not fit";
    case JournalFaultKind::unlinked:
        return entry + " does not follow the entry before it: one of the two was replaced";
    case JournalFaultKind::missing: return "Entries are missing from number " + seq + " on";
    case JournalFaultKind::opening:
        return "The journal does not begin with the entry that opens a journal";
    case JournalFaultKind::kindColumn:
        return "The column kind beside entry " + seq + " does not say the entry's kind";
    case JournalFaultKind::subjectRows:
        return "The table p_subject does not say what entry " + seq + " is about";
    case JournalFaultKind::headRow:
        return "The table p_head does not name the newest entry, " + seq
               + ": entries were cut off or added by another program";
    case JournalFaultKind::guards:
        return "A table that may only grow has lost what guards it against changes";
    case JournalFaultKind::attachmentMissing:
        return "The file that entry " + seq + " names is not there";
    case JournalFaultKind::attachmentChanged:
        return "The file that entry " + seq
               + " names was changed after it was recorded: its hash does not fit";
    case JournalFaultKind::file:
        return "The database's file is damaged, or was changed by another program";
    case JournalFaultKind::start:
        return entry + " is not the entry that was trusted: it was rewritten, or cut off";
    case JournalFaultKind::sealUnreadable: return "Seal " + seq + " cannot be read as a seal";
    case JournalFaultKind::sealMissing: return "Seals are missing from number " + seq + " on";
    case JournalFaultKind::sealNotGenuine:
        return "The seal of entry " + seq + " is not genuine: its signature does not fit";
    case JournalFaultKind::sealOfUnknownKey:
        return "The seal of entry " + seq + " was made with a key that is not known here";
    case JournalFaultKind::sealOfOtherJournal:
        return "The seal of entry " + seq + " is of another journal";
    case JournalFaultKind::sealedEntryGone:
        return entry + " was sealed and is not there: the journal was cut off";
    case JournalFaultKind::sealedEntryChanged:
        return entry + " is not the entry that was sealed: the journal was rewritten";
    case JournalFaultKind::expectedEntryGone:
        return entry + " is expected and is not there: the journal was cut off";
    case JournalFaultKind::expectedEntryChanged:
        return entry + " is not the entry that is expected: the journal was rewritten";
    }
    return {};
}

} // namespace

std::string sentenceOf(const JournalFault& fault)
{
    std::string sentence = plainSentence(fault.kind, std::to_string(fault.seq));
    if (!fault.detail.empty()) {
        sentence += " (" + fault.detail + ')';
    }
    return sentence + '.';
}

} // namespace loadwarden
