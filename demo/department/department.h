#pragma once

#include "core/desk/dispositions.h"
#include "core/desk/founding.h"
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "demo/department/recordings.h"

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

// An invented department at work: its people, its clock, and what they do through the desk.

namespace loadwarden::demo {

/// Somebody of the invented department and the PIN, which is no secret here.
struct Worker {
    std::string id;
    std::string name;
    Role role = Role::operating;
    std::string pin;
};

/// The workers by what they do.
[[nodiscard]] const Worker& boss();
[[nodiscard]] const Worker& lead();
[[nodiscard]] const Worker& morning();
[[nodiscard]] const Worker& evening();
[[nodiscard]] const std::vector<Worker>& workers();

/// The facility's local time on a day of the demo, counted from 0.
[[nodiscard]] Instant onDay(int day, int hour, int minute);

/// The department's journal, and a clock that jumps from one thing that is done to the next.
class Department {
public:
    /// Makes the file; what is kept outside it goes into `keep`. Throws what the desk throws.
    Department(const std::filesystem::path& file, const std::filesystem::path& keep);

    /// Has something done at that time.
    void at(Instant when, std::function<void()> what);
    /// Does everything up to a moment in its order, also what is added meanwhile.
    void run(Instant until = lastMoment);

    /// Seals the newest entry, once a day.
    void seal();

    [[nodiscard]] Instant now() const { return m_clock.now(); }
    [[nodiscard]] Office& office() { return *m_office; }
    [[nodiscard]] std::string newId(std::string_view prefix) { return m_ids.next(prefix); }
    [[nodiscard]] JournalTime shown() const;

    /// Records; a refusal is a mistake of the demo and throws std::logic_error.
    Appended record(const Worker& who, AnyAct act, std::vector<std::string> subjects);
    /// Attaches the recorder's file of a cycle to a load, whose cycle it should be, read as the
    /// sterilizer's files were read before; the first as that person confirms.
    Appended attach(const Worker& who, const std::string& load, const std::string& trace,
                    const RecordedCycle& recorded);
    /// Corrects an entry about the same subjects.
    Appended correct(const Worker& who, std::int64_t seq, const std::string& reason, AnyAct act,
                     std::vector<std::string> subjects);
    ReservedCycle reserve(const Worker& who, const CycleWanted& wanted);
    [[nodiscard]] CycleView view(const std::string& cycle);
    /// Signs what is decided now: release, quarantine or reprocess.
    Verdict signAsDecided(const Worker& who, const std::string& cycle);
    void review(const Worker& who, const std::string& cycle, const ReviewAsked& asked);

    /// How many loads have been reserved, without tests.
    [[nodiscard]] int loads() const { return m_loads; }

    /// How many recorders' files were attached, and how large they are.
    [[nodiscard]] int recordings() const { return m_recordings; }
    [[nodiscard]] std::size_t recordedBytes() const { return m_recordedBytes; }

    /// One of 0 to `most`, the same in every run.
    [[nodiscard]] int draw(int most);

private:
    [[nodiscard]] const SignedIn& in(const Worker& who);
    [[nodiscard]] Signature signature(const Worker& who);

    FixedClock m_clock;
    CountingIdSource m_ids;
    std::unique_ptr<Office> m_office;
    std::map<std::string, SignedIn> m_in;
    std::multimap<Instant, std::function<void()>> m_agenda;
    std::uint64_t m_state = 20310304;
    int m_loads = 0;
    int m_recordings = 0;
    std::size_t m_recordedBytes = 0;
};

/// Registers sterilizers, specifications, products, packagings, devices and incubators.
void registerEverything(Department& department);

/// Three weeks: 300 loads and the tests around them. With the living day also what somebody finds
/// who comes in at ten past one on Friday 14 March: seven loads more, on three sterilizers more.
void planThreeWeeks(Department& department, bool withLivingDay);

/// The living day's day, counted from 0.
inline constexpr int livingDay = 11;

/// Registers what only the living day uses: sterilizers 3 and 4, one for ethylene oxide.
void registerForLivingDay(Department& department);

/// A load of ethylene oxide that is sterilized and still aerating.
void planGasLoad(Department& department);

/// A load for immediate use for which nobody wrote down why.
void planImmediateUse(Department& department);

} // namespace loadwarden::demo
