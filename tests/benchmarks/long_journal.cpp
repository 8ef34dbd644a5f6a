#include "tests/benchmarks/long_journal.h"

#include "core/store/journal_reader.h"
#include "core/store/migration.h"
#include "tests/core/acts/journal_support.h"
#include "tests/core/store/bulk_writer.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <sqlite3.h>

namespace loadwarden::benchmarks {
namespace {

using namespace loadwarden::tests;
using loadwarden::testing::BulkWriter;

constexpr std::int64_t sterilizers = 10;
constexpr int items = 12;

/// Writes loads as they usually are, straight into the file.
class Writing {
public:
    explicit Writing(const std::filesystem::path& file)
        : m_writer(SqliteFile{file}, at(4, 0), 10'000)
    {
        const Journal registers = morning();
        for (const Entry& entry : registers.entries()) {
            if (entry.seq > 1) {
                m_writer.add(loadwarden::testing::draftOf(entry));
            }
        }
        for (int i = 2; i <= sterilizers; ++i) {
            add(supervisorE, at(5, 40), {"sz-" + std::to_string(i)},
                SterilizerRecorded{.name = "S" + std::to_string(i), .model = "M1"});
            add(supervisorE, at(5, 40), {"sz-" + std::to_string(i)}, SterilizerReturned{"new"});
        }
    }

    void load(std::int64_t number)
    {
        const std::int64_t day = number / loadsADay + 1;
        const std::int64_t ofDay = number % loadsADay;
        m_sterilizer = "sz-" + std::to_string(ofDay % sterilizers + 1);
        m_minute = day * 1440 + 7 * 60 + ofDay / sterilizers * 45;
        if (ofDay < sterilizers) {
            m_minute -= 60;
            test(number);
            m_minute += 60;
        }
        if (ofDay == 0) {
            control(day);
        }
        m_cycle = loadId(number);
        m_number = std::to_string(number);
        loadIt(number);
        run(number);
        read(number);
        if (number % 5 == 0) {
            vial(number);
        }
        if (number % 100 == 37 && number % 1'000 != 37) {
            add(leadC, now(600), {m_cycle}, FailureResolved{true, Reach::thatLoad, "mended"});
        }
        const std::string digest(64, '0');
        add(operatorA, now(90), {m_cycle},
            DispositionSigned{.meaning = Verdict::release,
                              .verdict = Verdict::release,
                              .items = {},
                              .grounds = {{}, digest, digest, "1"}});
    }

    std::int64_t finish()
    {
        record();
        m_writer.flush();
        return m_writer.newest();
    }

private:
    [[nodiscard]] Instant now(std::int64_t minutes = 0) const
    {
        return at(0, 0) + Duration::minutes(m_minute + minutes);
    }

    template <class Act>
    void add(const Person& who, Instant when, std::vector<std::string> subjects, const Act& act)
    {
        Entry entry{.recordedAt = {when, 0}, .happenedAt = {when, 0}, .actor = who.id};
        entry.role = who.role;
        entry.workstation = "ws-1";
        entry.subjects = std::move(subjects);
        entry.act = act;
        // What is recorded in one minute is recorded together.
        if (!m_together.empty() && when != m_recordedAt) {
            record();
        }
        m_recordedAt = when;
        m_together.push_back(loadwarden::testing::draftOf(entry).draft);
    }

    void record()
    {
        if (!m_together.empty()) {
            m_writer.add(m_together, m_recordedAt);
            m_together.clear();
        }
    }

    void test(std::int64_t number)
    {
        const std::string id = "ld-t" + std::to_string(number);
        const std::string sheet = "ci-t" + std::to_string(number);
        add(operatorA, now(), {id, m_sterilizer, "sp-2"},
            CycleReserved{.lot = "T" + std::to_string(number), .purpose = Purpose::bowieDick});
        add(operatorA, now(), {sheet, id}, SheetPlaced{"pr-3", "pl-3"});
        add(operatorA, now(1), {id}, CycleStarted{ClockSource::facility, {now(1), 0}, {}});
        add(operatorA, now(6), {id}, CycleEnded{{now(6), 0}, CycleOutcome::ended, {}, {}});
        add(operatorA, now(7), {id},
            TestConditionsRecorded{.chamberEmpty = true,
                                   .dryingRun = false,
                                   .exposureMinutes = TypedNumber{"3.5", 3'500},
                                   .exposureCelsius = TypedNumber{"134", 134'000}});
        add(operatorA, now(8), {sheet, id}, ChemicalRead{Seen::uniformComplete});
    }

    void control(std::int64_t day)
    {
        // A lot a month.
        const std::string month = std::to_string(day / 30);
        m_lot = "pl-m" + month;
        if (day % 30 == 0 || day == 1) {
            add(operatorA, now(), {m_lot, "pr-4"},
                ProductLotRecorded{"M" + month, parseDate("2039-01-01")});
        }
        const std::string id = "bc-" + std::to_string(day);
        add(operatorA, now(50), {id}, ControlPrepared{"pr-4", m_lot, {}});
        add(operatorA, now(50), {id, "in-1"}, BiologicalIncubated{});
        add(operatorA, now(90), {id}, BiologicalRead{Seen::growth});
    }

    void loadIt(std::int64_t number)
    {
        add(operatorA, now(), {m_cycle, m_sterilizer, "sp-1"},
            CycleReserved{.lot = m_sterilizer.substr(3) + "-" + m_number});
        for (int i = 0; i < items; ++i) {
            const std::string end = m_number + "-" + std::to_string(i);
            ItemAdded item{.label = "Set " + std::to_string(number % 997) + "/" + end,
                           .implant = Implant::no,
                           .packaging = "pk-1",
                           .devices = {"dv-1"}};
            item.external = PlacedIndicator{"ci-" + end, "pr-1", "pl-1", {}};
            add(operatorA, now(1), {"it-" + end, m_cycle, "ci-" + end}, item);
        }
        PcdPlaced pcd{"PCD", {{"ci-p" + m_number, "pr-2", "pl-2", {}}}, {}};
        std::vector<std::string> subjects{"pd-" + m_number, m_cycle, "ci-p" + m_number};
        if (number % 5 == 0) {
            pcd.vials = {{"bv-" + m_number, "pr-4", m_lot, {}}};
            subjects.push_back("bv-" + m_number);
        }
        add(operatorA, now(1), subjects, pcd);
    }

    void run(std::int64_t number)
    {
        const std::int64_t counter = 1'000 + number / sterilizers;
        add(operatorA, now(2), {m_cycle},
            CycleStarted{ClockSource::facility, {now(2), 0}, counter});
        add(operatorA, now(27), {m_cycle}, CycleEnded{{now(27), 0}, CycleOutcome::ended, {}, {}});
        add(operatorA, now(28), {m_cycle},
            PrintoutRecorded{"P1", "S" + m_sterilizer.substr(3), counter, JournalTime{now(2), 0},
                             JournalTime{now(27), 0}});
        if (number % 100 == 37) {
            add(operatorA, now(28), {m_cycle}, FailureRecorded{FailureKind::physical});
        }
    }

    void read(std::int64_t /*number*/)
    {
        add(operatorA, now(29), {m_cycle},
            PhysicalRead{Parameter::temperature, typed("132.4", Unit::celsius, 132'400)});
        add(operatorA, now(29), {m_cycle},
            PhysicalRead{Parameter::exposure, typed("4", Unit::minutes, 4'000)});
        add(operatorA, now(29), {m_cycle},
            PhysicalRead{Parameter::drying, typed("20", Unit::minutes, 20'000)});
        add(operatorA, now(30), {m_cycle}, PhysicalVerified{});
        for (int i = 0; i < items; ++i) {
            const std::string end = m_number + "-" + std::to_string(i);
            add(operatorA, now(31), {"ci-" + end, m_cycle}, ChemicalRead{Seen::endColourReached});
            add(operatorA, now(60), {"it-" + end, m_cycle},
                PackageChecked{true, true, true, true, true});
        }
        add(operatorA, now(32), {"ci-p" + m_number, m_cycle},
            ChemicalRead{Seen::frontInAcceptZone});
    }

    void vial(std::int64_t number)
    {
        const std::string id = "bv-" + m_number;
        add(operatorA, now(35), {id, m_cycle}, BiologicalActivated{});
        add(operatorA, now(35), {id, m_cycle, "in-1"}, BiologicalIncubated{});
        add(operatorA, now(65), {id, m_cycle},
            BiologicalRead{number % 20'000 == 15'000 ? Seen::growth : Seen::noGrowth});
    }

    BulkWriter m_writer;
    std::vector<EntryDraft> m_together;
    Instant m_recordedAt{};
    std::int64_t m_minute = 0;
    std::string m_sterilizer;
    std::string m_cycle;
    std::string m_number;
    std::string m_lot;
};

std::int64_t newestOf(const std::filesystem::path& file)
{
    Connection connection(SqliteFile{file}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    return JournalReader(snapshot).head().seq;
}

std::filesystem::path folder()
{
    const char* const asked = std::getenv("LOADWARDEN_BENCHMARK_FILES");
    return asked == nullptr ? LOADWARDEN_BENCHMARK_FOLDER : asked;
}

/// Makes a file by `write` where it is not there yet. One that was left unfinished is made anew.
void makeOnce(const std::filesystem::path& file,
              const std::function<void(const std::filesystem::path&)>& write)
{
    if (std::filesystem::exists(file)) {
        return;
    }
    std::filesystem::path unfinished = file;
    unfinished += ".unfinished";
    for (const char* end : {"", "-wal", "-shm"}) {
        std::filesystem::path each = unfinished;
        each += end;
        std::filesystem::remove(each);
    }
    write(unfinished);
    std::filesystem::rename(unfinished, file);
}

void writeLoads(const std::filesystem::path& file, std::int64_t loads)
{
    using Clock = std::chrono::steady_clock;
    const auto begun = Clock::now();
    Writing writing(file);
    const std::int64_t step = std::max<std::int64_t>(loads / 100, 1);
    for (std::int64_t number = 0; number < loads; ++number) {
        writing.load(number);
        if ((number + 1) % step == 0) {
            const std::chrono::duration<double> taken = Clock::now() - begun;
            std::fprintf(stderr, "\rwriting loads: %lld of %lld, %.0f s",
                         static_cast<long long>(number + 1), static_cast<long long>(loads),
                         taken.count());
        }
    }
    writing.finish();
    std::fputc('\n', stderr);
}

LongJournal made()
{
    const char* const asked = std::getenv("LOADWARDEN_LOADS");
    LongJournal journal;
    journal.loads = asked == nullptr ? 200'000 : std::atoll(asked);
    // The number belongs to what is written: another generator writes another file.
    journal.file = folder() / ("journal-2-" + std::to_string(journal.loads) + ".lw");
    makeOnce(journal.file, [&](const auto& file) { writeLoads(file, journal.loads); });
    journal.entries = newestOf(journal.file);
    const auto bytes = static_cast<std::int64_t>(std::filesystem::file_size(journal.file));
    std::printf("%lld loads, %lld entries, %lld MB, %lld bytes a load\n",
                static_cast<long long>(journal.loads), static_cast<long long>(journal.entries),
                static_cast<long long>(bytes / 1'000'000),
                static_cast<long long>(bytes / journal.loads));
    return journal;
}

} // namespace

const LongJournal& longJournal()
{
    static const LongJournal journal = made();
    return journal;
}

const std::filesystem::path& searchTables()
{
    static const std::filesystem::path file = [] {
        std::filesystem::path made = folder() / "search-1-2000000.lw";
        makeOnce(made, [](const auto& unfinished) {
            {
                Connection connection(SqliteFile{unfinished},
                                      {.access = Access::create, .syncing = Syncing::off});
                migrate(connection, migrations(), FixedClock(Instant{}));
            }
            std::fprintf(stderr, "filling the tables of %d loads for searching\n", searchedLoads);
            sqlite3* database = nullptr;
            std::string sql = "PRAGMA synchronous = OFF; BEGIN; WITH RECURSIVE n(i) AS (SELECT 0 "
                              "UNION ALL SELECT i + 1 FROM n WHERE i < {loads} - 1) INSERT INTO "
                              "p_cycle_lot SELECT printf('%d-%09d', i % 10 + 1, i), 'ld-' || i, i "
                              "FROM n ORDER BY 1; WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL "
                              "SELECT i + 1 FROM n WHERE i < {loads} * 12 - 1) INSERT INTO p_label "
                              "SELECT printf('set%d/%d', i % 997, i), 'it-' || i, 'ld-' || i / 12, "
                              "printf('Set %d/%d', i % 997, i), i FROM n ORDER BY 1; COMMIT";
            const std::string place = "{loads}";
            for (auto at = sql.find(place); at != std::string::npos; at = sql.find(place)) {
                sql.replace(at, place.size(), std::to_string(searchedLoads));
            }
            char* fault = nullptr;
            if (sqlite3_open(unfinished.c_str(), &database) != SQLITE_OK
                || sqlite3_exec(database, sql.c_str(), nullptr, nullptr, &fault) != SQLITE_OK) {
                std::fprintf(stderr, "%s\n", fault == nullptr ? "cannot open it" : fault);
                std::exit(1);
            }
            sqlite3_close(database);
        });
        return made;
    }();
    return file;
}

std::string loadId(std::int64_t number)
{
    return "ld-" + std::to_string(number);
}

} // namespace loadwarden::benchmarks
