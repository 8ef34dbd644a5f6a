#include "core/store/attachments.h"

#include "core/journal/header.h"
#include "core/store/act_entry.h"
#include "core/store/store_error.h"
#include "core/store/verify_entries.h"

#include <map>
#include <vector>

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

/// An entry that names a file by its hash.
struct Naming {
    std::int64_t seq = 0;
    std::string content;
};

/// The hash that an entry names; empty where it names none, or cannot be read, which is said
/// elsewhere.
std::string contentIn(std::string_view entry)
{
    if (EntryHeader header; !readHeader(entry, header)) {
        return {};
    }
    const Entry understood = understand(entry, {});
    const auto* const read = std::get_if<TraceRead>(&understood.act);
    return read == nullptr ? std::string() : read->content;
}

std::vector<Naming> namingsBehind(ReadSnapshot& snapshot, const Head& after)
{
    std::vector<Naming> namings;
    Statement rows = snapshot.statement(
        "SELECT seq, " + snapshot.dialect().bytesOf("bytes")
        + " FROM j_entry WHERE kind = 'trace.read' AND seq > :after ORDER BY seq");
    rows.bind(":after", after.seq);
    while (rows.step()) {
        if (std::string content = contentIn(rows.bytesNow(1)); !content.empty()) {
            namings.push_back({rows.integer(0), std::move(content)});
        }
    }
    return namings;
}

} // namespace

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

bool verifyAttachments(ReadSnapshot& snapshot, const Head& after, Progress& progress,
                       VerifyReport& report)
{
    const bool isThere = keepsAttachments(snapshot);
    std::map<std::string, Kept> seen;
    for (const Naming& each : namingsBehind(snapshot, after)) {
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
