#include "tests/benchmarks/load_writer.h"

#include "core/exchange/policy_reader.h"
#include "tests/benchmarks/long_journal.h"

namespace loadwarden::benchmarks {

using namespace loadwarden::tests;

namespace {

constexpr std::int64_t sterilizers = 10;
constexpr std::int64_t loadsASterilizer = loadsADay / sterilizers;
constexpr int items = 12;
constexpr int minutesADay = 1440;
constexpr int minutesALoad = 45;
constexpr int firstMinute = 7 * 60;
constexpr auto longLasting = "2039-01-01";

} // namespace

Instant momentOfDay(std::int64_t day, std::int64_t minute)
{
    return at(0, 0) + Duration::minutes(day * minutesADay + minute);
}

std::int64_t dayAfter(std::int64_t loads)
{
    return (loads + loadsADay - 1) / loadsADay + 1;
}

LoadWriter::LoadWriter(const std::filesystem::path& file)
    : m_writer(SqliteFile{file}, at(4, 0), 10'000)
{
    const Journal usual = morning();
    for (const Entry& entry : usual.entries()) {
        if (entry.seq > 1) {
            m_writer.add(loadwarden::testing::draftOf(entry));
        }
    }
    registers();
}

/// What people see of a department beyond what its evidence needs.
void LoadWriter::registers()
{
    const Instant early = at(6, 10);
    add(supervisorE, early, {"po-2"},
        PolicyRecorded{defaultPolicy().id, defaultPolicy().revision,
                       hexOf(hashOf(defaultPolicyText())), std::string(defaultPolicyText())});
    add(supervisorE, early, {supervisorE.id},
        StaffRecorded{.name = "Supervisor", .role = Role::supervisor, .badge = "B-1"});
    add(supervisorE, early, {operatorA.id},
        StaffRecorded{.name = "Operator", .role = Role::operating, .badge = "B-2"});
    add(supervisorE, early, {leadC.id},
        StaffRecorded{.name = "Lead", .role = Role::lead, .badge = "B-3"});
    for (std::int64_t i = 1; i < sterilizers; ++i) {
        const std::string number = std::to_string(i + 1);
        add(supervisorE, early, {"sz-" + number},
            SterilizerRecorded{.name = "S" + number, .model = "M1"});
        add(supervisorE, early, {"sz-" + number}, SterilizerReturned{"new"});
    }
    for (const char* number : {"1", "2", "3"}) {
        // Good for as long as there are loads.
        add(operatorA, early, {std::string("pl-long") + number, std::string("pr-") + number},
            ProductLotRecorded{std::string("LONG") + number, parseDate(longLasting)});
    }
}

void LoadWriter::load(std::int64_t number)
{
    const std::int64_t day = number / loadsADay + 1;
    const std::int64_t ofDay = number % loadsADay;
    if (ofDay == 0) {
        control(day);
    }
    if (ofDay < sterilizers) {
        test(day, ofDay);
    }
    load(number, day, ofDay, {.hasVial = number % 5 == 0, .isMissed = number % 100 == 37});
    if (number % 100 == 37 && number % 1'000 != 37) {
        add(leadC, now(600), {m_cycle}, FailureResolved{true, Reach::thatLoad, "mended"});
    }
}

void LoadWriter::load(std::int64_t number, std::int64_t day, std::int64_t ofDay, const Kind& kind)
{
    m_sterilizer = "sz-" + std::to_string(ofDay % sterilizers + 1);
    m_minute = day * minutesADay + firstMinute + ofDay / sterilizers * minutesALoad;
    m_cycle = loadId(number);
    m_number = std::to_string(number);
    fill(number, kind);
    if (kind.stage == Stage::beingLoaded) {
        return;
    }
    start(number);
    if (kind.stage == Stage::running) {
        return;
    }
    end(number, kind);
    if (kind.stage == Stage::ended) {
        return;
    }
    read(kind);
    if (kind.hasVial) {
        vial(number, kind);
    }
    if (kind.stage == Stage::done) {
        const std::string digest(64, '0');
        add(operatorA, now(90), {m_cycle},
            DispositionSigned{.meaning = Verdict::release,
                              .verdict = Verdict::release,
                              .items = {},
                              .grounds = {{}, digest, digest, "1"}});
    }
}

void LoadWriter::finish()
{
    record();
    m_writer.flush();
}

Instant LoadWriter::now(std::int64_t minutes) const
{
    return momentOfDay(0, m_minute + minutes);
}

template <class Act>
void LoadWriter::add(const Person& who, Instant when, std::vector<std::string> subjects,
                     const Act& act)
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

void LoadWriter::record()
{
    if (!m_together.empty()) {
        m_writer.add(m_together, m_recordedAt);
        m_together.clear();
    }
}

void LoadWriter::test(std::int64_t day, std::int64_t sterilizer)
{
    m_minute = day * minutesADay + firstMinute - 60;
    const std::string number = std::to_string((day - 1) * loadsADay + sterilizer);
    const std::string id = "ld-t" + number;
    const std::string sheet = "ci-t" + number;
    add(operatorA, now(), {id, "sz-" + std::to_string(sterilizer + 1), "sp-2"},
        CycleReserved{.lot = "T" + number, .purpose = Purpose::bowieDick});
    add(operatorA, now(), {sheet, id}, SheetPlaced{"pr-3", "pl-long3"});
    add(operatorA, now(1), {id}, CycleStarted{ClockSource::facility, {now(1), 0}, {}});
    add(operatorA, now(6), {id}, CycleEnded{{now(6), 0}, CycleOutcome::ended, {}, {}});
    add(operatorA, now(7), {id},
        TestConditionsRecorded{.chamberEmpty = true,
                               .dryingRun = false,
                               .exposureMinutes = TypedNumber{"3.5", 3'500},
                               .exposureCelsius = TypedNumber{"134", 134'000}});
    add(operatorA, now(8), {sheet, id}, ChemicalRead{Seen::uniformComplete});
}

void LoadWriter::control(std::int64_t day)
{
    m_minute = day * minutesADay + firstMinute;
    // A lot a month.
    const std::string month = std::to_string(day / 30);
    if (m_lot.empty() || day % 30 == 0) {
        m_lot = "pl-m" + month;
        add(operatorA, now(), {m_lot, "pr-4"},
            ProductLotRecorded{"M" + month, parseDate(longLasting)});
    }
    const std::string id = "bc-" + std::to_string(day);
    add(operatorA, now(50), {id}, ControlPrepared{"pr-4", m_lot, {}});
    add(operatorA, now(50), {id}, BiologicalActivated{});
    add(operatorA, now(50), {id, "in-1"}, BiologicalIncubated{});
    add(operatorA, now(90), {id}, BiologicalRead{Seen::growth});
}

void LoadWriter::lot(std::int64_t day, const std::string& number, std::int64_t expires)
{
    const auto date = Zone::find("UTC")->dateOf(momentOfDay(expires, 0));
    add(operatorA, momentOfDay(day, firstMinute - 90), {"pl-" + number, "pr-1"},
        ProductLotRecorded{number, date});
}

void LoadWriter::saidLater(std::int64_t number, Instant when)
{
    add(operatorA, when, {loadId(number)}, FailureRecorded{FailureKind::physical});
}

void LoadWriter::fill(std::int64_t number, const Kind& kind)
{
    add(operatorA, now(), {m_cycle, m_sterilizer, "sp-1"},
        CycleReserved{.lot = m_sterilizer.substr(3) + "-" + m_number});
    for (int i = 0; i < items; ++i) {
        const std::string end = m_number + "-" + std::to_string(i);
        ItemAdded item{.label = "Set " + std::to_string(number % 997) + "/" + end,
                       .implant = kind.hasImplant && i == 0 ? Implant::yes : Implant::no,
                       .packaging = "pk-1",
                       .devices = {"dv-1"}};
        item.external = PlacedIndicator{"ci-" + end, "pr-1", "pl-long1", {}};
        add(operatorA, now(1), {"it-" + end, m_cycle, "ci-" + end}, item);
    }
    PcdPlaced pcd{"PCD", {{"ci-p" + m_number, "pr-2", "pl-long2", {}}}, {}};
    std::vector<std::string> subjects{"pd-" + m_number, m_cycle, "ci-p" + m_number};
    if (kind.hasVial) {
        pcd.vials = {{"bv-" + m_number, "pr-4", m_lot, {}}};
        subjects.push_back("bv-" + m_number);
    }
    add(operatorA, now(1), subjects, pcd);
}

void LoadWriter::start(std::int64_t number)
{
    const std::int64_t counter = 1'000 + number / sterilizers;
    add(operatorA, now(2), {m_cycle}, CycleStarted{ClockSource::facility, {now(2), 0}, counter});
}

void LoadWriter::end(std::int64_t number, const Kind& kind)
{
    const std::int64_t counter = 1'000 + number / sterilizers;
    add(operatorA, now(27), {m_cycle}, CycleEnded{{now(27), 0}, CycleOutcome::ended, {}, {}});
    if (kind.stage == Stage::ended) {
        return;
    }
    add(operatorA, now(28), {m_cycle},
        PrintoutRecorded{"P1", "S" + m_sterilizer.substr(3), counter, JournalTime{now(2), 0},
                         JournalTime{now(27), 0}});
    if (kind.isMissed) {
        add(operatorA, now(28), {m_cycle}, FailureRecorded{FailureKind::physical});
    }
}

void LoadWriter::read(const Kind& kind)
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
        const bool isWrong = kind.stage == Stage::unreviewed && i == 0;
        add(operatorA, now(31), {"ci-" + end, m_cycle},
            ChemicalRead{isWrong ? Seen::unclear : Seen::endColourReached});
        add(operatorA, now(60), {"it-" + end, m_cycle},
            PackageChecked{true, true, true, true, true});
    }
    add(operatorA, now(32), {"ci-p" + m_number, m_cycle}, ChemicalRead{Seen::frontInAcceptZone});
}

void LoadWriter::vial(std::int64_t number, const Kind& kind)
{
    const std::string id = "bv-" + m_number;
    add(operatorA, now(35), {id, m_cycle}, BiologicalActivated{});
    add(operatorA, now(35), {id, m_cycle, "in-1"}, BiologicalIncubated{});
    if (kind.stage != Stage::incubating) {
        add(operatorA, now(65), {id, m_cycle},
            BiologicalRead{number % 20'000 == 15'000 ? Seen::growth : Seen::noGrowth});
    }
}

void writeLastDay(LoadWriter& writer, std::int64_t loads)
{
    const std::int64_t day = dayAfter(loads);
    writer.lot(day, "SOON", day + 5);
    writer.lot(day, "OVER", day - 1);
    writer.control(day);
    for (std::int64_t i = 0; i + 1 < sterilizers; ++i) { // the last one's is forgotten
        writer.test(day, i);
    }
    constexpr std::int64_t rounds = 8; // the last one began at 12:15
    static_assert(rounds <= loadsASterilizer);
    for (std::int64_t i = 0; i < rounds * sterilizers; ++i) {
        const std::int64_t round = i / sterilizers;
        Kind kind{.hasVial = i % 5 == 0};
        switch (round) {
        case 3: kind.stage = i % 2 == 0 ? Stage::unsignedYet : Stage::unreviewed; break;
        case 4: kind = {.hasVial = true, .hasImplant = i % 3 == 0, .stage = Stage::incubating}; break;
        case 5: kind = {.hasVial = true, .hasImplant = i % 5 == 0, .stage = Stage::incubating}; break;
        case 6: kind.stage = Stage::ended; break;
        case 7: kind.stage = i % 3 == 0 ? Stage::beingLoaded : Stage::running; break;
        default: break;
        }
        writer.load(loads + i, day, i, kind);
    }
    for (const std::int64_t i : {3, 14}) {
        writer.saidLater(loads + i, momentOfDay(day, 12 * 60 + 30));
    }
}

std::string loadId(std::int64_t number)
{
    return "ld-" + std::to_string(number);
}

} // namespace loadwarden::benchmarks
