#include "core/store/posix_file.h"

#include "core/store/store_error.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

StoreError fileError(const fs::path& path, int code)
{
    const std::string detail = path.string() + ": " + std::strerror(code);
    switch (code) {
    case ENOSPC:
    case EDQUOT: return engineError(StoreFault::full, detail);
    case EROFS: return engineError(StoreFault::readOnly, detail);
    case EACCES:
    case EPERM: return engineError(StoreFault::denied, detail);
    case ENOENT:
    case ENOTDIR: return engineError(StoreFault::missing, detail);
    case EEXIST: return engineError(StoreFault::exists, detail);
    default: return engineError(StoreFault::device, detail);
    }
}

int flagsOf(PosixFile::Mode mode)
{
    switch (mode) {
    case PosixFile::Mode::read: return O_RDONLY;
    case PosixFile::Mode::readWrite: return O_RDWR | O_CREAT;
    case PosixFile::Mode::createNew: return O_WRONLY | O_CREAT | O_EXCL;
    case PosixFile::Mode::append: return O_WRONLY | O_CREAT | O_APPEND;
    }
    return O_RDONLY;
}

constexpr mode_t ownersFile = S_IRUSR | S_IWUSR;
constexpr mode_t others = S_IRWXG | S_IRWXO;

} // namespace

PosixFile::PosixFile(fs::path path, Mode mode)
    : m_path(std::move(path)),
      m_descriptor(open(m_path.c_str(), flagsOf(mode) | O_CLOEXEC, ownersFile))
{
    if (m_descriptor < 0) {
        throw fileError(m_path, errno);
    }
}

PosixFile::~PosixFile()
{
    close(m_descriptor);
}

std::string PosixFile::read() const
{
    std::string text(64 * 1024, '\0');
    const ssize_t size = pread(m_descriptor, text.data(), text.size(), 0);
    if (size < 0) {
        throw fileError(m_path, errno);
    }
    text.resize(static_cast<std::size_t>(size));
    return text;
}

void PosixFile::replace(std::string_view text)
{
    if (lseek(m_descriptor, 0, SEEK_SET) != 0) {
        throw fileError(m_path, errno);
    }
    write(text);
    if (ftruncate(m_descriptor, static_cast<off_t>(text.size())) != 0) {
        throw fileError(m_path, errno);
    }
}

void PosixFile::write(std::string_view text)
{
    while (!text.empty()) {
        const ssize_t size = ::write(m_descriptor, text.data(), text.size());
        if (size < 0 && errno != EINTR) {
            throw fileError(m_path, errno);
        }
        text.remove_prefix(static_cast<std::size_t>(size < 0 ? 0 : size));
    }
}

void PosixFile::sync()
{
    if (fsync(m_descriptor) != 0) {
        throw fileError(m_path, errno);
    }
}

bool PosixFile::lock()
{
    if (flock(m_descriptor, LOCK_EX | LOCK_NB) == 0) {
        return true;
    }
    if (errno != EWOULDBLOCK) {
        throw fileError(m_path, errno);
    }
    return false;
}

bool PosixFile::isPrivate() const
{
    struct stat status {};
    if (fstat(m_descriptor, &status) != 0) {
        throw fileError(m_path, errno);
    }
    return S_ISREG(status.st_mode) && status.st_uid == geteuid() && (status.st_mode & others) == 0;
}

void syncFolder(const fs::path& folder)
{
    const fs::path path = folder.empty() ? fs::path(".") : folder;
    const int descriptor = open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) {
        throw fileError(path, errno);
    }
    const int code = fsync(descriptor) == 0 ? 0 : errno;
    close(descriptor);
    if (code != 0) {
        throw fileError(path, code);
    }
}

void makePrivateFolder(const fs::path& folder)
{
    if (folder.empty() || fs::is_directory(folder)) {
        return;
    }
    makePrivateFolder(folder.parent_path());
    if (mkdir(folder.c_str(), S_IRWXU) != 0 && errno != EEXIST) {
        throw fileError(folder, errno);
    }
}

void publish(const fs::path& from, const fs::path& to)
{
    // A second name first: rename() would take the place of a file that is there.
    if (link(from.c_str(), to.c_str()) != 0) {
        throw fileError(to, errno);
    }
    if (unlink(from.c_str()) != 0) {
        throw fileError(from, errno);
    }
    syncFolder(to.parent_path());
}

void syncFile(const fs::path& path)
{
    PosixFile(path, PosixFile::Mode::read).sync();
}

} // namespace loadwarden
