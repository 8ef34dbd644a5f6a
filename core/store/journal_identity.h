#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// What entry 1 says of its journal (core/journal/FORMAT.md).
struct JournalIdentity {
    std::string id; ///< stands in every seal
    std::string facility;
    std::string timeZone; ///< IANA
};

/// The text of entry 1's body.
[[nodiscard]] std::string writeIdentity(const JournalIdentity& identity);

/// Reads entry 1 from its bytes; nullopt when they do not open a journal.
[[nodiscard]] std::optional<JournalIdentity> readIdentity(std::string_view bytes);

/// The kind of entry 1, and what it is about: the facility (core/acts/ACTS.md, 2).
inline constexpr std::string_view openingKind = "journal.opened";
inline constexpr const char* openingSubject = "fa-1";

} // namespace loadwarden
