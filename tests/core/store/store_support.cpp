#include "tests/core/store/store_support.h"

#include <QFile>
#include <QSqlDatabase>

#include <cstdlib>
#include <iostream>
#include <unistd.h>

namespace loadwarden::testing {
namespace {

namespace fs = std::filesystem;

/// A folder of the system's own for temporary files, where the server's user may enter too.
fs::path makeFolder(const fs::path& in)
{
    std::string pattern = (in / "loadwarden-store-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) {
        throw std::runtime_error("no temporary folder can be made");
    }
    return pattern;
}

/// Memory where there is enough, since the tests sync thousands of times; what they look at is the
/// same there. Else the system's folder.
fs::path quickFolder()
{
    constexpr std::uintmax_t enough = std::uintmax_t{256} << 20U;
    std::error_code none;
    const fs::space_info room = fs::space("/dev/shm", none);
    const bool fits = !none && room.available != static_cast<std::uintmax_t>(-1)
                      && room.available >= enough && access("/dev/shm", W_OK) == 0;
    return fits ? fs::path("/dev/shm") : fs::temp_directory_path();
}

int shell(const std::string& command)
{
    return std::system(command.c_str());
}

/// The newest of the folders in which Debian keeps the server's programs.
fs::path serverPrograms()
{
    fs::path newest;
    int newestVersion = 0;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator("/usr/lib/postgresql", none)) {
        const int version = std::atoi(entry.path().filename().c_str());
        if (version > newestVersion && fs::exists(entry.path() / "bin" / "initdb")) {
            newestVersion = version;
            newest = entry.path() / "bin";
        }
    }
    return newest;
}

class TestServer {
public:
    TestServer()
    {
        if (!QSqlDatabase::isDriverAvailable("QPSQL")) {
            m_why = "PostgreSQL is not tested: the package libqt6sql6-psql is missing";
            return;
        }
        m_programs = serverPrograms();
        if (m_programs.empty()) {
            m_why = "PostgreSQL is not tested: the package postgresql is missing";
            return;
        }
        m_folder = makeFolder(fs::temp_directory_path());
        // The server does not run as root.
        const bool root = geteuid() == 0;
        m_as = root ? "runuser -u postgres -- " : "";
        m_user = root ? "postgres" : "loadwarden";
        if (root) {
            shell("chown postgres " + m_folder.string());
        }
        const std::string data = (m_folder / "data").string();
        const std::string log = (m_folder / "log").string();
        const bool runs = shell("cd / && " + m_as + (m_programs / "initdb").string() + " -D " + data
                                + " -A trust -U " + m_user + " -E UTF8 --locale=C --no-sync >"
                                + (m_folder / "initdb.log").string() + " 2>&1")
                              == 0
                          && shell("cd / && " + m_as + (m_programs / "pg_ctl").string() + " -D "
                                   + data + " -l " + log + " -w -o \"-c listen_addresses='' -k "
                                   + m_folder.string() + " -c fsync=off\" start >/dev/null 2>&1")
                                 == 0;
        if (!runs) {
            shell("cat " + (m_folder / "initdb.log").string() + " " + log + " >&2");
            throw std::runtime_error("the PostgreSQL server of the tests does not start");
        }
        m_owner = getpid();
    }

    ~TestServer()
    {
        // A child process that ends is not to stop its parent's server.
        if (m_owner != getpid()) {
            return;
        }
        shell("cd / && " + m_as + (m_programs / "pg_ctl").string() + " -D "
              + (m_folder / "data").string() + " -m immediate stop >/dev/null 2>&1");
        std::error_code ignored;
        fs::remove_all(m_folder, ignored);
    }

    TestServer(const TestServer&) = delete;
    TestServer& operator=(const TestServer&) = delete;

    [[nodiscard]] const std::string& why() const { return m_why; }

    [[nodiscard]] std::optional<PostgresServer> place() const
    {
        if (!m_why.empty()) {
            return std::nullopt;
        }
        PostgresServer server;
        server.host = m_folder.string();
        server.database = "postgres";
        server.user = m_user;
        return server;
    }

private:
    std::string m_why;
    fs::path m_programs;
    fs::path m_folder;
    std::string m_as;
    std::string m_user;
    pid_t m_owner = 0;
};

const TestServer& server()
{
    static const TestServer only;
    return only;
}

} // namespace

TempFolder::TempFolder() : m_path(makeFolder(quickFolder())) {}

TempFolder::~TempFolder()
{
    std::error_code ignored;
    fs::remove_all(m_path, ignored);
}

std::optional<PostgresServer> testServer()
{
    return server().place();
}

std::string whyNoServer()
{
    return server().why();
}

std::optional<StorePlace> newPlace(Dialect::Engine engine, const TempFolder& folder)
{
    if (engine == Dialect::Engine::sqlite) {
        return SqliteFile{folder / "journal.lw"};
    }
    auto place = testServer();
    if (!place) {
        return std::nullopt;
    }
    // The folder's name is nobody else's.
    for (const char c : folder.path().filename().string()) {
        const bool upper = c >= 'A' && c <= 'Z';
        place->schema += c == '-' ? '_' : upper ? static_cast<char>(c - 'A' + 'a') : c;
        if (upper) {
            place->schema += '_';
        }
    }
    return *place;
}

} // namespace loadwarden::testing
