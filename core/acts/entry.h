#pragma once

#include "core/acts/codec.h"
#include "core/journal/envelope.h"
#include "core/journal/hash.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// An entry of the journal with its act understood.
struct Entry {
    std::int64_t seq = 0;
    Hash hash;
    JournalTime recordedAt;
    JournalTime happenedAt;
    TimeSource happenedFrom = TimeSource::clock;
    std::string actor;        ///< empty: the program itself
    Role role = Role::viewer; ///< of the actor
    std::string workstation;
    std::vector<std::string> subjects;
    std::string reason;
    std::int64_t supersedes = 0;
    std::int64_t basedOn = 0;
    AnyAct act;
    std::optional<FromPaper> paper;

    /// The first subject with that prefix ("ld"); empty: none.
    [[nodiscard]] std::string_view subject(std::string_view prefix) const;
    [[nodiscard]] bool isAbout(std::string_view id) const;
};

/// Whether an id has that prefix and a rest: "ld-1" has "ld".
[[nodiscard]] constexpr bool hasPrefix(std::string_view id, std::string_view prefix)
{
    return id.size() > prefix.size() + 1 && id[prefix.size()] == '-' && id.starts_with(prefix);
}

/// Understands an entry and checks what concerns envelope and body together: actor and the role's
/// word, times within those of evidence, the subjects that its kind needs, the indicators in its
/// body among its subjects, a reason for a correction, `supersedes` where the kind must or must not
/// name an entry, paper.
[[nodiscard]] std::variant<Entry, ActFault> readEntry(Envelope envelope, const Hash& hash);

/// The envelope of an entry, without `prev`: what readEntry() reads back.
[[nodiscard]] Envelope envelopeOf(const Entry& entry);

} // namespace loadwarden
