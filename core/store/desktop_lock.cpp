#include "core/store/desktop_lock.h"

#include "core/store/store_error.h"

#include <array>
#include <unistd.h>

namespace loadwarden {
namespace {

std::string hostName()
{
    std::array<char, 256> name{};
    gethostname(name.data(), name.size() - 1);
    return name.data();
}

struct Holder {
    std::string process;
    std::string host;
};

/// "PID HOST"; nullopt for a file that nobody has written into or that was given back.
std::optional<Holder> holderOf(const std::string& text)
{
    const std::size_t blank = text.find(' ');
    const std::size_t end = text.find('\n');
    if (blank == std::string::npos || end == std::string::npos || end < blank) {
        return std::nullopt;
    }
    return Holder{text.substr(0, blank), text.substr(blank + 1, end - blank - 1)};
}

} // namespace

std::filesystem::path DesktopLock::fileOf(const std::filesystem::path& journal)
{
    return journal.string() + ".lock";
}

DesktopLock::DesktopLock(const std::filesystem::path& journal)
    : m_file(fileOf(journal), PosixFile::Mode::readWrite)
{
    const bool mine = m_file.lock();
    const auto holder = holderOf(m_file.read());
    const std::string who = holder ? "process " + holder->process + " on computer " + holder->host
                                   : std::string("another process");
    if (!mine) {
        throw StoreError(StoreFault::inUse,
                         "The journal " + journal.string() + " is open in another Loadwarden, "
                             + who + '.',
                         "Close it there first. To look into it, open it for reading.");
    }
    if (holder && holder->host != hostName()) {
        throw StoreError(StoreFault::inUse,
                         "The journal " + journal.string() + " is marked as open by " + who
                             + ", and from here it cannot be seen whether it still is.",
                         "Close it there. If that computer is gone, delete "
                             + m_file.path().string() + '.');
    }
    if (holder) {
        m_stale = who;
    }
    m_file.replace(std::to_string(getpid()) + ' ' + hostName() + '\n');
}

DesktopLock::~DesktopLock()
{
    try {
        m_file.replace("");
    } catch (const StoreError&) {
        // The next one finds a stale lock, which is all that it is.
        return;
    }
}

} // namespace loadwarden
