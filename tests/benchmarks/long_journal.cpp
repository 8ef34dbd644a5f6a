#include "tests/benchmarks/long_journal.h"

#include "core/store/journal_reader.h"
#include "tests/core/acts/journal_support.h"
#include "tests/core/store/bulk_writer.h"

#include <cstdio>
#include <cstdlib>

namespace loadwarden::benchmarks {
namespace {

using namespace loadwarden::tests;
using loadwarden::testing::BulkWriter;

constexpr std::int64_t sterilizers = 4;

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
        m_minute = day * 1440 + 7 * 60 + ofDay / sterilizers * 60 / 2;
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
        m_writer.add(loadwarden::testing::draftOf(entry));
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
        for (int i = 0; i < 4; ++i) {
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
        for (int i = 0; i < 4; ++i) {
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

LongJournal made()
{
    const char* const asked = std::getenv("LOADWARDEN_LOADS");
    LongJournal journal;
    journal.loads = asked == nullptr ? 200'000 : std::atoll(asked);
    // The number belongs to what is written: another generator writes another file.
    journal.file = std::filesystem::path(LOADWARDEN_BENCHMARK_FOLDER)
                   / ("journal-1-" + std::to_string(journal.loads) + ".lw");
    if (!std::filesystem::exists(journal.file)) {
        std::filesystem::path unfinished = journal.file;
        unfinished += ".unfinished";
        std::filesystem::remove(unfinished);
        {
            Writing writing(unfinished);
            for (std::int64_t number = 0; number < journal.loads; ++number) {
                writing.load(number);
            }
            writing.finish();
        }
        std::filesystem::rename(unfinished, journal.file);
    }
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

std::string loadId(std::int64_t number)
{
    return "ld-" + std::to_string(number);
}

} // namespace loadwarden::benchmarks
