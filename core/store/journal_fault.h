#pragma once

#include <cstdint>
#include <string>

namespace loadwarden {

/// What verification can find wrong with a journal.
enum class JournalFaultKind : std::uint8_t {
    // of an entry itself
    unreadable, ///< does not begin as an entry does
    number,     ///< calls itself another than it stands as
    edited,     ///< its bytes are not those of the hash beside it
    unlinked,   ///< does not name the hash of the entry before
    missing,    ///< entries are not there
    opening,    ///< entry 1 does not open a journal
    // of the tables beside the journal
    kindColumn,        ///< the kind beside an entry is not its kind
    subjectRows,       ///< p_subject does not say what an entry is about
    headRow,           ///< p_head does not name the newest entry
    guards,            ///< a table that only grows has lost its triggers
    attachmentMissing, ///< a file that an entry names; detail: its hash
    attachmentChanged, ///< its bytes are not those of the hash
    file,              ///< the database itself cannot be read there
    // of seals and heads from elsewhere
    start,              ///< the head to begin behind is not in the journal
    sealUnreadable,     ///< no seal
    sealMissing,        ///< the seals of the database are not numbered without gaps
    sealNotGenuine,     ///< its signature is not that of its key
    sealOfUnknownKey,   ///< genuine, but of a key that is not among those named
    sealOfOtherJournal, ///< of a journal with another id
    sealedEntryGone,    ///< the sealed entry is not there: cut off
    sealedEntryChanged, ///< another entry stands there: rewritten
    expectedEntryGone,
    expectedEntryChanged
};

/// One thing that is wrong.
struct JournalFault {
    JournalFaultKind kind{};
    std::int64_t seq = 0; ///< the entry, or the number of the seal; 0: of none in particular
    std::string detail;   ///< may be empty

    friend bool operator==(const JournalFault&, const JournalFault&) = default;
};

/// The fault in a plain English sentence that names the entry.
[[nodiscard]] std::string sentenceOf(const JournalFault& fault);

} // namespace loadwarden
