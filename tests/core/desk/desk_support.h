#pragma once

#include "core/desk/dispositions.h"
#include "core/desk/founding.h"
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/core/store/store_support.h"

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

// A department's journal for tests, at work on 4 March 2031 in Chicago.

namespace loadwarden::testing {

inline const std::string supervisorPin = "482915";

inline Instant local(const std::string& time, const std::string& day = "2031-03-04")
{
    return *parseInstant(day + "T" + time + "-06:00");
}

template <class Value>
Value must(OrRefusal<Value> answer)
{
    if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
        ADD_FAILURE() << "refused: " << static_cast<int>(refusal->why) << ' ' << refusal->subject
                      << ' ' << refusal->detail;
        throw std::runtime_error("refused");
    }
    return std::get<Value>(std::move(answer));
}

template <class Value>
std::optional<RefusalWhy> whyOf(const OrRefusal<Value>& answer)
{
    const auto* const refusal = std::get_if<Refusal>(&answer);
    return refusal == nullptr ? std::nullopt : std::optional(refusal->why);
}

class Department {
public:
    Department()
    {
        must(foundDepartment(file(),
                             {.facility = "Facility",
                              .timeZone = "America/Chicago",
                              .atmosphereKPa = "101.3",
                              .supervisorId = "st-sup",
                              .supervisorName = "Supervisor",
                              .supervisorBadge = "B-1",
                              .supervisorPin = supervisorPin},
                             place()));
        open();
    }

    [[nodiscard]] std::filesystem::path file() const { return m_folder / "department.lwj"; }
    [[nodiscard]] const TempFolder& folder() const { return m_folder; }
    [[nodiscard]] Workplace place()
    {
        return {.clock = m_clock,
                .ids = m_ids,
                .workstation = "ws-1",
                .keep = m_folder / "keep",
                .syncing = Syncing::off,
                .pinCost = PinCost::least()};
    }
    void open() { m_office = std::make_unique<Office>(file(), Access::write, place()); }
    void close() { m_office.reset(); }
    [[nodiscard]] Office& office() { return *m_office; }
    void setClock(Instant now) { m_clock.set(now); }
    [[nodiscard]] Instant now() const { return m_clock.now(); }

    [[nodiscard]] SignedIn in(const std::string& who, const std::string& pin)
    {
        return must(SignIn(office()).enter(who, pin));
    }
    [[nodiscard]] SignedIn supervisor() { return in("st-sup", supervisorPin); }
    [[nodiscard]] Signature signature(const SignedIn& who, const std::string& pin)
    {
        return must(SignIn(office()).sign(who, pin));
    }

    /// Registers somebody with a PIN of their own.
    SignedIn hire(const std::string& id, Role role, const std::string& pin)
    {
        const SignedIn boss = supervisor();
        must(Recorder(office()).record(
            boss,
            {.act = StaffRecorded{.name = "Name of " + id, .role = role, .badge = "badge-" + id},
             .subjects = {id}},
            signature(boss, supervisorPin)));
        must(SignIn(office()).setPin(boss, signature(boss, supervisorPin), id, pin));
        return in(id, pin);
    }

    Appended record(const SignedIn& who, AnyAct act, std::vector<std::string> subjects)
    {
        return must(Recorder(office()).record(
            who, {.act = std::move(act), .subjects = std::move(subjects)}));
    }
    Appended sign(const SignedIn& who, const std::string& pin, AnyAct act,
                  std::vector<std::string> subjects)
    {
        return must(Recorder(office()).record(
            who, {.act = std::move(act), .subjects = std::move(subjects)}, signature(who, pin)));
    }

    [[nodiscard]] CycleView view(const std::string& cycle)
    {
        ReadSnapshot snapshot(office().connection());
        return viewCycle(snapshot, office().entries(), cycle, now()).value();
    }

private:
    TempFolder m_folder;
    FixedClock m_clock{local("05:00")};
    CountingIdSource m_ids;
    std::unique_ptr<Office> m_office;
};

} // namespace loadwarden::testing
