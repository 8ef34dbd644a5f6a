#include "tests/core/store/survival/forgetful_disk.h"

#include <algorithm>
#include <cstring>
#include <map>
#include <memory>
#include <random>
#include <sqlite3.h>
#include <stdexcept>
#include <string>
#include <unistd.h>
#include <vector>

namespace loadwarden::testing::forgetful_disk {
namespace {

/// One change of a file that is not synced.
struct Change {
    sqlite3_int64 at = 0;
    std::vector<char> data;
    bool truncates = false; ///< to `at`
};

/// A file as the process sees it, and what of it is not on the disk.
struct Content {
    std::vector<char> now;
    std::vector<Change> unsynced;
};

/// What SQLite gives room for; the file below lies behind it.
struct File {
    sqlite3_file base;
    std::shared_ptr<Content>* content;

    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File& fileOf(sqlite3_file* file)
{
    return *reinterpret_cast<File*>(file);
}

Content& contentOf(sqlite3_file* file)
{
    return **fileOf(file).content;
}

/// All state of the disk; SQLite knows a VFS only by functions, so there is one for the process.
struct Disk {
    sqlite3_vfs vfs{};
    sqlite3_vfs* below = nullptr;
    sqlite3_io_methods methods{};
    std::map<std::string, std::weak_ptr<Content>> contents;
    std::map<std::string, sqlite3_file*> reals;
    std::int64_t syncs = 0;
    std::int64_t writesLeft = -1;
    std::mt19937_64 random{0};
};

Disk& disk()
{
    static Disk only;
    return only;
}

void apply(sqlite3_file* real, const Change& change, std::size_t bytes)
{
    const int code = change.truncates ? real->pMethods->xTruncate(real, change.at)
                                      : real->pMethods->xWrite(real, change.data.data(),
                                                               static_cast<int>(bytes), change.at);
    if (code != SQLITE_OK) {
        _exit(3);
    }
}

[[noreturn]] void cut()
{
    constexpr std::size_t sector = 512;
    for (const auto& [path, real] : disk().reals) {
        const auto content = disk().contents[path].lock();
        for (const Change& change : content->unsynced) {
            switch (disk().random() % 3) {
            case 0: break;
            case 1: apply(real, change, change.data.size()); break;
            default:
                if (!change.truncates) {
                    const std::size_t sectors = change.data.size() / sector;
                    apply(real, change, (disk().random() % (sectors + 1)) * sector);
                }
            }
        }
    }
    _exit(cutStatus);
}

void countWrite()
{
    if (disk().writesLeft > 0 && --disk().writesLeft == 0) {
        cut();
    }
}

int closeFile(sqlite3_file* file)
{
    File& mine = fileOf(file);
    // A file that is closed without a sync is forgotten all the same, unless it is closed for good.
    std::erase_if(disk().reals, [&mine](const auto& each) { return each.second == mine.real(); });
    delete mine.content;
    return mine.real()->pMethods->xClose(mine.real());
}

int readFile(sqlite3_file* file, void* out, int size, sqlite3_int64 at)
{
    const std::vector<char>& now = contentOf(file).now;
    const auto wanted = static_cast<std::size_t>(size);
    const std::size_t from = std::min(static_cast<std::size_t>(at), now.size());
    const std::size_t there = std::min(wanted, now.size() - from);
    std::memcpy(out, now.data() + from, there);
    std::memset(static_cast<char*>(out) + there, 0, wanted - there);
    return there == wanted ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

int writeFile(sqlite3_file* file, const void* data, int size, sqlite3_int64 at)
{
    Content& content = contentOf(file);
    const char* const bytes = static_cast<const char*>(data);
    const auto end = static_cast<std::size_t>(at) + static_cast<std::size_t>(size);
    if (content.now.size() < end) {
        content.now.resize(end);
    }
    std::copy(bytes, bytes + size, content.now.begin() + at);
    content.unsynced.push_back({at, {bytes, bytes + size}, false});
    countWrite();
    return SQLITE_OK;
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size)
{
    Content& content = contentOf(file);
    content.now.resize(static_cast<std::size_t>(size));
    content.unsynced.push_back({size, {}, true});
    return SQLITE_OK;
}

int syncFile(sqlite3_file* file, int /*flags*/)
{
    ++disk().syncs;
    Content& content = contentOf(file);
    for (const Change& change : content.unsynced) {
        apply(fileOf(file).real(), change, change.data.size());
    }
    content.unsynced.clear();
    return SQLITE_OK;
}

int sizeOfFile(sqlite3_file* file, sqlite3_int64* size)
{
    *size = static_cast<sqlite3_int64>(contentOf(file).now.size());
    return SQLITE_OK;
}

// Locks and shared memory are as they are; none of them outlives a power cut.

int lockFile(sqlite3_file* file, int level)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xLock(real, level);
}

int unlockFile(sqlite3_file* file, int level)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xUnlock(real, level);
}

int checkLock(sqlite3_file* file, int* out)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xCheckReservedLock(real, out);
}

int control(sqlite3_file* /*file*/, int /*what*/, void* /*argument*/)
{
    return SQLITE_NOTFOUND;
}

int sectorSize(sqlite3_file* file)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xSectorSize(real);
}

int characteristics(sqlite3_file* file)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xDeviceCharacteristics(real);
}

int mapShared(sqlite3_file* file, int page, int size, int extend, void volatile** out)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xShmMap(real, page, size, extend, out);
}

int lockShared(sqlite3_file* file, int offset, int count, int flags)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xShmLock(real, offset, count, flags);
}

void barrier(sqlite3_file* file)
{
    sqlite3_file* const real = fileOf(file).real();
    real->pMethods->xShmBarrier(real);
}

int unmapShared(sqlite3_file* file, int erase)
{
    sqlite3_file* const real = fileOf(file).real();
    return real->pMethods->xShmUnmap(real, erase);
}

std::shared_ptr<Content> contentAt(const std::string& path, sqlite3_file* real)
{
    std::weak_ptr<Content>& known = disk().contents[path];
    if (auto content = known.lock()) {
        return content;
    }
    auto content = std::make_shared<Content>();
    sqlite3_int64 size = 0;
    real->pMethods->xFileSize(real, &size);
    content->now.resize(static_cast<std::size_t>(size));
    if (size > 0) {
        real->pMethods->xRead(real, content->now.data(), static_cast<int>(size), 0);
    }
    known = content;
    return content;
}

int openFile(sqlite3_vfs* /*vfs*/, const char* name, sqlite3_file* file, int flags, int* outFlags)
{
    constexpr int lasting = SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL
                            | SQLITE_OPEN_SUPER_JOURNAL;
    if (name == nullptr || (flags & lasting) == 0) {
        return disk().below->xOpen(disk().below, name, file, flags, outFlags);
    }
    File& mine = fileOf(file);
    const int code = disk().below->xOpen(disk().below, name, mine.real(), flags, outFlags);
    if (code != SQLITE_OK) {
        mine.base.pMethods = nullptr;
        return code;
    }
    mine.content = new std::shared_ptr<Content>(contentAt(name, mine.real()));
    mine.base.pMethods = &disk().methods;
    disk().reals[name] = mine.real();
    return SQLITE_OK;
}

} // namespace

void install()
{
    Disk& mine = disk();
    mine.below = sqlite3_vfs_find(nullptr);
    mine.methods = {.iVersion = 2,
                    .xClose = closeFile,
                    .xRead = readFile,
                    .xWrite = writeFile,
                    .xTruncate = truncateFile,
                    .xSync = syncFile,
                    .xFileSize = sizeOfFile,
                    .xLock = lockFile,
                    .xUnlock = unlockFile,
                    .xCheckReservedLock = checkLock,
                    .xFileControl = control,
                    .xSectorSize = sectorSize,
                    .xDeviceCharacteristics = characteristics,
                    .xShmMap = mapShared,
                    .xShmLock = lockShared,
                    .xShmBarrier = barrier,
                    .xShmUnmap = unmapShared,
                    .xFetch = nullptr,
                    .xUnfetch = nullptr};
    mine.vfs = *mine.below;
    mine.vfs.zName = "forgetful";
    mine.vfs.pNext = nullptr;
    mine.vfs.szOsFile = static_cast<int>(sizeof(File)) + mine.below->szOsFile;
    mine.vfs.xOpen = openFile;
    if (sqlite3_vfs_register(&mine.vfs, 1) != SQLITE_OK) {
        throw std::runtime_error("the forgetful disk cannot be installed");
    }
}

void cutAfterWrites(std::int64_t writes, std::uint64_t seed)
{
    disk().writesLeft = writes;
    disk().random.seed(seed);
}

std::int64_t syncs()
{
    return disk().syncs;
}

} // namespace loadwarden::testing::forgetful_disk
