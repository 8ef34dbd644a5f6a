#include "core/desk/journal_copy.h"

#include "core/desk/people.h"
#include "core/desk/sealing.h"
#include "core/store/act_entry.h"
#include "core/store/journal_reader.h"
#include "core/store/posix_file.h"
#include "core/store/store_error.h"

#include <algorithm>
#include <system_error>
#include <utility>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t blockBytes = std::size_t{1} << 20U;
constexpr std::int64_t entriesAStep = 256; ///< between two looks whether it was cancelled

/// A file that is being written and goes with this object unless it gets its name.
class PartFile {
public:
    explicit PartFile(const fs::path& target)
        : m_file(target.string() + ".part", PosixFile::Mode::createNew)
    {
    }
    ~PartFile()
    {
        if (!m_isPublished) {
            std::error_code ignored;
            fs::remove(m_file.path(), ignored);
        }
    }
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;

    void add(std::string_view line)
    {
        m_block += line;
        m_block += '\n';
        m_bytes += static_cast<std::int64_t>(line.size()) + 1;
        if (m_block.size() >= blockBytes) {
            flush();
        }
    }

    void publishAs(const fs::path& target, IfThere ifThere)
    {
        flush();
        m_file.sync();
        if (ifThere == IfThere::refuse) {
            publish(m_file.path(), target);
        } else {
            std::error_code error;
            fs::rename(m_file.path(), target, error);
            if (error) {
                throw StoreError(StoreFault::denied,
                                 target.string() + " cannot be replaced: " + error.message() + '.',
                                 "Choose another name.");
            }
            syncFolder(fs::absolute(target).parent_path());
        }
        m_isPublished = true;
    }

    [[nodiscard]] std::int64_t bytes() const { return m_bytes; }

private:
    void flush()
    {
        m_file.write(m_block);
        m_block.clear();
    }

    PosixFile m_file;
    std::string m_block;
    std::int64_t m_bytes = 0;
    bool m_isPublished = false;
};

} // namespace

VerifyReport verifyHere(Office& office, std::vector<Head> expected, bool pages, Progress& progress)
{
    VerifyRequest request{.expected = std::move(expected),
                          .seals = keptSeals(office.place(), office.identity().id),
                          .pages = pages};
    if (const auto seen = office.seenHere()) {
        request.expected.push_back(*seen);
    }
    return verifyJournal(office.connection(), request, progress);
}

std::vector<SealedBy> sealedBy(Office& office, const VerifyReport& report)
{
    ReadSnapshot snapshot(office.connection());
    const std::vector<Person> people = peopleOf(snapshot);
    JournalReader reader(snapshot);
    std::vector<SealedBy> keys;
    for (const SealsOfKey& each : report.sealKeys) {
        SealedBy by{.seals = each, .recordedBy = {}, .why = {}};
        const auto stored = each.key.recorded == 0 ? std::nullopt : reader.entry(each.key.recorded);
        if (stored) {
            const Entry entry = understand(stored->bytes, stored->hash);
            const auto person = personById(people, entry.actor);
            by.recordedBy = person ? person->name : entry.actor;
            by.recordedAt = entry.recordedAt.at;
            if (const auto* const recorded = std::get_if<SealKeyRecorded>(&entry.act)) {
                by.why = recorded->why;
            }
        }
        keys.push_back(std::move(by));
    }
    return keys;
}

bool forEachLine(Office& office, const std::function<void(std::string_view)>& take,
                 Progress& progress)
{
    ReadSnapshot snapshot(office.connection());
    JournalReader reader(snapshot);
    const std::int64_t total = reader.head().seq;
    EntryCursor cursor = reader.range(1);
    std::int64_t done = 0;
    while (const auto entry = cursor.next()) {
        take(entry->bytes);
        ++done;
        if (done % entriesAStep == 0 && !progress.goOn(done, total)) {
            return false;
        }
    }
    return progress.goOn(done, total);
}

bool isOfJournal(const fs::path& journal, const Workplace& place, const fs::path& target)
{
    const auto whole = [](const fs::path& path) {
        std::error_code ignored;
        return fs::weakly_canonical(fs::absolute(path), ignored);
    };
    const fs::path mine = whole(journal);
    const fs::path theirs = whole(target);
    std::error_code ignored;
    if (fs::equivalent(mine, theirs, ignored)) {
        return true;
    }
    if (theirs.parent_path() == mine.parent_path()) {
        for (const char* const beside : {"", "-wal", "-shm", "-journal", ".lock"}) {
            if (theirs.filename() == mine.filename().string() + beside) {
                return true;
            }
        }
    }
    if (place.keep.empty()) {
        return false;
    }
    const fs::path keep = whole(place.keep);
    return std::ranges::mismatch(keep, theirs).in1 == keep.end();
}

JournalCopy copyLines(Office& office, const fs::path& target, IfThere ifThere, Progress& progress)
{
    if (isOfJournal(office.file(), office.place(), target)) {
        throw StoreError(StoreFault::misuse, target.string() + " belongs to the journal itself.",
                         "Choose another name.");
    }
    if (ifThere == IfThere::refuse && fs::exists(target)) {
        throw StoreError(StoreFault::exists, "There is a file " + target.string() + " already.",
                         "Choose another name.");
    }
    PartFile part(target);
    JournalCopy copy;
    const bool isWhole = forEachLine(
        office,
        [&](std::string_view line) {
            part.add(line);
            ++copy.entries;
        },
        progress);
    if (!isWhole) {
        return {.isCancelled = true};
    }
    copy.bytes = part.bytes();
    part.publishAs(target, ifThere);
    return copy;
}

} // namespace loadwarden
