#pragma once

#include "core/journal/hash.h"
#include "core/store/read_snapshot.h"
#include "core/store/verify.h"
#include "core/store/write_transaction.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace loadwarden {

/// Keeps the bytes of a file whose hash is `content`, in the transaction of the act that names it.
/// What is there already stays as it is.
void keepAttachment(WriteTransaction& transaction, const Hash& content, std::string_view bytes);

/// Whether the journal has the bytes of that hash, hexadecimal; whether they fit is not asked.
[[nodiscard]] bool hasAttachment(ReadSnapshot& snapshot, std::string_view content);

/// The bytes as they were kept; nullopt where there are none of that hash. Throws
/// StoreFault::damaged where their hash is another.
[[nodiscard]] std::optional<std::string> readAttachment(ReadSnapshot& snapshot,
                                                        std::string_view content);

/// An entry that names a file by its hash.
struct NamesAttachment {
    std::int64_t seq = 0;
    std::string content;
};

/// The hash of the file that an entry names; empty where it names none, or cannot be read.
[[nodiscard]] std::string attachmentNamedIn(std::string_view entry);

/// Reports the files that are missing, or differ; a part of verifyJournal(). False: it was
/// cancelled.
[[nodiscard]] bool verifyAttachments(ReadSnapshot& snapshot, std::span<const NamesAttachment> named,
                                     Progress& progress, VerifyReport& report);

/// Whether a database has the table: those of schemas before 4 have not.
[[nodiscard]] bool keepsAttachments(ReadSnapshot& snapshot);

} // namespace loadwarden
