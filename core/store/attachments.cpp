#include "core/store/attachments.h"

#include "core/journal/envelope.h"
#include "core/store/act_entry.h"
#include "core/store/store_error.h"
#include "core/store/verify_entries.h"

#include <map>

namespace loadwarden {
namespace {

/// What became of one file.
enum class Kept : std::uint8_t { whole, missing, changed };

Kept lookAt(ReadSnapshot& snapshot, std::string_view content)
{
    Statement row =
        snapshot.statement("SELECT size, bytes FROM j_attachment WHERE content = :content");
    row.bind(":content", content);
    if (!row.step()) {
        return Kept::missing;
    }
    const std::string_view bytes = row.bytesNow(1);
    const bool isWhole = row.integer(0) == static_cast<std::int64_t>(bytes.size())
                         && hexOf(hashOf(bytes)) == content;
    return isWhole ? Kept::whole : Kept::changed;
}

} // namespace

std::string attachmentNamedIn(std::string_view entry)
{
    if (!std::holds_alternative<Envelope>(readEnvelope(entry))) {
        return {};
    }
    const Entry understood = understand(entry, {});
    const auto* const read = std::get_if<TraceRead>(&understood.act);
    return read == nullptr ? std::string() : read->content;
}

void keepAttachment(WriteTransaction& transaction, const Hash& content, std::string_view bytes)
{
    transaction
        .statement("INSERT INTO j_attachment (content, size, bytes) VALUES (:content, :size, "
                   ":bytes) ON CONFLICT DO NOTHING")
        .bind(":content", hexOf(content))
        .bind(":size", static_cast<std::int64_t>(bytes.size()))
        .bindBytes(":bytes", bytes)
        .run();
}

bool hasAttachment(ReadSnapshot& snapshot, std::string_view content)
{
    Statement row = snapshot.statement("SELECT 1 FROM j_attachment WHERE content = :content");
    row.bind(":content", content);
    return row.step();
}

std::optional<std::string> readAttachment(ReadSnapshot& snapshot, std::string_view content)
{
    Statement row = snapshot.statement("SELECT bytes FROM j_attachment WHERE content = :content");
    row.bind(":content", content);
    if (!row.step()) {
        return std::nullopt;
    }
    std::string bytes = row.bytes(0);
    if (hexOf(hashOf(bytes)) != content) {
        throw StoreError(StoreFault::damaged,
                         "The file that was kept under the hash " + std::string(content)
                             + " is not the one that was recorded.",
                         "Verify the journal, and take the file from a backup that is sound.");
    }
    return bytes;
}

bool verifyAttachments(ReadSnapshot& snapshot, std::span<const NamesAttachment> named,
                       Progress& progress, VerifyReport& report)
{
    const bool isThere = keepsAttachments(snapshot);
    std::map<std::string, Kept> seen;
    for (const NamesAttachment& each : named) {
        auto found = seen.find(each.content);
        if (found == seen.end()) {
            if (!progress.goOn(report.entries, report.entries)) {
                return false;
            }
            const Kept kept = isThere ? lookAt(snapshot, each.content) : Kept::missing;
            found = seen.emplace(each.content, kept).first;
        }
        if (found->second != Kept::whole) {
            addFault(report, {found->second == Kept::missing ? JournalFaultKind::attachmentMissing
                                                             : JournalFaultKind::attachmentChanged,
                              each.seq, each.content});
        }
    }
    return true;
}

bool keepsAttachments(ReadSnapshot& snapshot)
{
    Statement named = snapshot.statement(snapshot.dialect().countTablesNamed());
    named.bind(":name", "j_attachment");
    return named.step() && named.integer(0) == 1;
}

} // namespace loadwarden
