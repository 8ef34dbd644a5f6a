#include "core/store/head_witness.h"

#include "core/store/journal_reader.h"
#include "core/store/verify.h"

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

fs::path prepared(const fs::path& folder, const std::string& journalId)
{
    // The id is of a journal that anybody may have made: no path is made of it.
    makePrivateFolder(folder);
    return folder / ("head-" + hexOf(hashOf(journalId)).substr(0, 32));
}

} // namespace

HeadWitness::HeadWitness(const fs::path& folder, const std::string& journalId)
    : m_file(prepared(folder, journalId), PosixFile::Mode::readWrite)
{
}

std::optional<Head> HeadWitness::seen() const
{
    std::string text = m_file.read();
    if (text.empty() || text.back() != '\n') {
        return std::nullopt;
    }
    text.pop_back();
    return parseHead(text);
}

void HeadWitness::note(const Head& head)
{
    m_file.replace(std::to_string(head.seq) + ':' + hexOf(head.hash) + '\n');
}

void HeadWitness::check(ReadSnapshot& snapshot) const
{
    const auto before = seen();
    if (!before) {
        return;
    }
    JournalReader reader(snapshot);
    const auto entry = reader.entry(before->seq);
    if (entry && entry->hash == before->hash) {
        return;
    }
    const std::string seq = std::to_string(before->seq);
    if (!entry) {
        throw StoreError(
            StoreFault::headChanged,
            "This computer has recorded entry " + seq + ", but the journal ends with entry "
                + std::to_string(reader.head().seq) + ": its newest entries are missing.",
            "Do not work in it. If the file was copied or moved, copy it again together with those "
            "beside it that begin with its name (the newest entries may stand in the one that ends "
            "in -wal). If the file is lost, restore a backup with Loadwarden, which skips the lot "
            "control numbers that may be on labels.");
    }
    throw StoreError(StoreFault::headChanged,
                     "Entry " + seq
                         + " is not the one that this computer has recorded: the "
                           "journal was rewritten, or this is another copy of it in "
                           "which somebody went on working.",
                     "Do not work in it. Verify it, and compare it with the newest backup and with "
                     "heads on paper.");
}

} // namespace loadwarden
