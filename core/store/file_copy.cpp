#include "core/store/file_copy.h"

#include "core/store/posix_file.h"

#include <utility>

namespace loadwarden {
namespace {

std::string quoted(const std::string& text)
{
    std::string out = "'";
    for (const char c : text) {
        out += c == '\'' ? std::string("''") : std::string(1, c);
    }
    return out + "'";
}

} // namespace

FileCopy::FileCopy(Connection& from, std::filesystem::path to) : m_path(std::move(to))
{
    if (from.dialect().engine() != Dialect::Engine::sqlite) {
        throw StoreError(StoreFault::misuse, "A journal on a server has no file to copy.",
                         "Make its backups with the tools of the database server.");
    }
    remove();
    try {
        const bool reader = from.access() == Access::read;
        if (reader) {
            from.say("PRAGMA query_only = OFF"); // forbids to write any file, also the new one
        }
        from.say("VACUUM INTO " + quoted(m_path.string()));
        if (reader) {
            from.say("PRAGMA query_only = ON");
        }
        syncFile(m_path);
    } catch (...) {
        remove();
        throw;
    }
}

FileCopy::~FileCopy()
{
    if (!m_published) {
        remove();
    }
}

void FileCopy::publishAs(const std::filesystem::path& name)
{
    publish(m_path, name);
    m_published = true;
}

void FileCopy::remove() const
{
    std::error_code ignored;
    for (const char* const suffix : {"", "-wal", "-shm", "-journal"}) {
        std::filesystem::remove(m_path.string() + suffix, ignored);
    }
}

} // namespace loadwarden
