#include "demo/department/department.h"

#include "core/desk/sealing.h"
#include "core/desk/trace_work.h"
#include "core/words/say_refusal.h"

#include <stdexcept>
#include <utility>

namespace loadwarden::demo {

namespace {

constexpr auto zoneName = "America/Chicago";

const std::vector<Worker> everybody = {
    {"st-arden", "Arden Quill", Role::supervisor, "704162"},
    {"st-brook", "Brook Tamsin", Role::lead, "815273"},
    {"st-corin", "Corin Vale", Role::operating, "926384"},
    {"st-dara", "Dara Wren", Role::operating, "137495"},
};

template <class Value>
Value must(OrRefusal<Value> answer)
{
    if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
        const Told told = say(*refusal, {});
        throw std::logic_error("the demo was refused: " + told.says + ' ' + told.next);
    }
    return std::get<Value>(std::move(answer));
}

} // namespace

const Worker& boss()
{
    return everybody[0];
}

const Worker& lead()
{
    return everybody[1];
}

const Worker& morning()
{
    return everybody[2];
}

const Worker& evening()
{
    return everybody[3];
}

const std::vector<Worker>& workers()
{
    return everybody;
}

Instant onDay(int day, int hour, int minute)
{
    static const Zone zone = *Zone::find(zoneName);
    static const Date first = *parseDate("2031-03-03");
    return zone.resolve(first + day, hour * 60 + minute);
}

Department::Department(const std::filesystem::path& file, const std::filesystem::path& keep)
    : m_clock(onDay(0, 4, 30))
{
    const Workplace place{.clock = m_clock,
                          .ids = m_ids,
                          .workstation = "ws-demo",
                          .keep = keep,
                          .syncing = Syncing::off, // made anew after a power cut
                          .pinCost = PinCost::least()};
    (void)must(foundDepartment(file,
                               {.facility = "Alder Creek Surgical Center",
                                .timeZone = zoneName,
                                .atmosphereKPa = "99.6",
                                .supervisorId = boss().id,
                                .supervisorName = boss().name,
                                .supervisorBadge = "1001",
                                .supervisorPin = boss().pin},
                               place));
    m_office = std::make_unique<Office>(file, Access::write, place);
    for (const Worker& worker : everybody) {
        if (worker.id == boss().id) {
            continue;
        }
        record(boss(), StaffRecorded{.name = worker.name, .role = worker.role}, {worker.id});
        (void)must(SignIn(office()).setPin(in(boss()), signature(boss()), worker.id, worker.pin));
    }
}

void Department::seal()
{
    (void)sealDaily(office());
}

void Department::at(Instant when, std::function<void()> what)
{
    m_agenda.emplace(when, std::move(what));
}

void Department::run(Instant until)
{
    while (!m_agenda.empty() && m_agenda.begin()->first <= until) {
        auto next = m_agenda.extract(m_agenda.begin());
        m_clock.set(next.key());
        next.mapped()();
    }
}

JournalTime Department::shown() const
{
    return journalTime(now(), m_office->zone());
}

const SignedIn& Department::in(const Worker& who)
{
    const auto found = m_in.find(who.id);
    if (found != m_in.end()) {
        return found->second;
    }
    return m_in.emplace(who.id, must(SignIn(office()).enter(who.id, who.pin))).first->second;
}

Signature Department::signature(const Worker& who)
{
    return must(SignIn(office()).sign(in(who), who.pin));
}

Appended Department::record(const Worker& who, AnyAct act, std::vector<std::string> subjects)
{
    const ToRecord asked{.act = std::move(act), .subjects = std::move(subjects)};
    if (!rightOf(taskOf(asked.act)).signs) {
        return must(Recorder(office()).record(in(who), asked));
    }
    return must(Recorder(office()).record(in(who), asked, signature(who)));
}

Appended Department::attach(const Worker& who, const std::string& load, const std::string& trace,
                            const RecordedCycle& recorded)
{
    constexpr double micropascalsInKPa = 1e9;
    std::optional<TraceBasis> basis;
    {
        ReadSnapshot snapshot(office().connection());
        basis = traceBasisOf(snapshot, office().entries(), load, now());
    }
    const double atmosphere =
        static_cast<double>(basis.value().atmosphere.value().micropascals()) / micropascalsInKPa;
    const RecorderFile file = recorderFileOf(recorded, office().zone(), atmosphere);
    const ChosenMapping chosen = chooseMapping(file.text, basis->remembered);
    const bool isKnown = chosen.origin == MappingOrigin::remembered;
    TraceWork work =
        readForLoad(*basis, trace, file.name, file.text, isKnown ? chosen.mapping : file.mapping);
    ++m_recordings;
    m_recordedBytes += file.text.size();
    return must(Recorder(office()).attach(in(who), std::move(work.act), file.text));
}

Appended Department::correct(const Worker& who, std::int64_t seq, const std::string& reason,
                             AnyAct act, std::vector<std::string> subjects)
{
    return must(Recorder(office()).record(in(who),
                                          {.act = std::move(act),
                                           .subjects = std::move(subjects),
                                           .reason = reason,
                                           .supersedes = seq},
                                          signature(who)));
}

ReservedCycle Department::reserve(const Worker& who, const CycleWanted& wanted)
{
    ReservedCycle reserved = must(reserveCycle(office(), in(who), wanted));
    if (wanted.purpose == Purpose::routine || wanted.purpose == Purpose::immediateUse) {
        ++m_loads;
    }
    return reserved;
}

CycleView Department::view(const std::string& cycle)
{
    ReadSnapshot snapshot(office().connection());
    return viewCycle(snapshot, office().entries(), cycle, now()).value();
}

Verdict Department::signAsDecided(const Worker& who, const std::string& cycle)
{
    const CycleView seen = view(cycle);
    const Verdict verdict = seen.decision.verdict;
    (void)must(Dispositions(office()).sign(in(who), signature(who), sightFrom(seen), verdict));
    return verdict;
}

void Department::review(const Worker& who, const std::string& cycle, const ReviewAsked& asked)
{
    (void)must(
        Dispositions(office()).review(in(who), signature(who), sightFrom(view(cycle)), asked));
}

int Department::draw(int most)
{
    // A linear congruential generator (Knuth, MMIX): the same on every machine.
    m_state = m_state * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<int>((m_state >> 33U) % static_cast<std::uint64_t>(most + 1));
}

} // namespace loadwarden::demo
