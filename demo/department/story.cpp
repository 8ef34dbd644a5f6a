#include "demo/department/load_steps.h"
#include "demo/department/vial_steps.h"

#include <memory>

// What happens in three weeks: mostly what should, and some of what does.

namespace loadwarden::demo {

namespace {

constexpr int days = 21;
constexpr int loadsPlanned = 300;
constexpr int positiveDay = 11;    ///< a vial of sterilizer 2 grows
constexpr int livingLoads = 1'000; ///< from this number on: those of the living day

class Weeks {
public:
    explicit Weeks(Department& department)
        : m_department(department), m_steps(department, m_counters), m_vials(department, m_counters)
    {
    }

    void plan()
    {
        int number = 0;
        for (int day = 0; day < days; ++day) {
            m_department.at(onDay(day, 5, 0), [this] { m_department.seal(); });
            for (const int which : {1, 2}) {
                planTest(day, which);
            }
            const int perSterilizer = day % 7 == 6 ? 6 : 8; // Sundays are quieter
            for (int turn = 0; turn < perSterilizer && number < loadsPlanned; ++turn) {
                for (const int which : {1, 2}) {
                    const bool isOut = which == 2 && day == positiveDay && turn > 0;
                    if (number < loadsPlanned && !isOut) {
                        planLoad(day, which, turn, number++, matterOf(day, which, turn), false);
                    }
                }
            }
        }
    }

    /// What somebody finds who comes in on the Friday at ten past one, besides the three weeks.
    void planLivingDay()
    {
        for (int day = livingDay - 2; day <= livingDay; ++day) {
            planTest(day, 3);
            if (day != livingDay) {
                planTest(day, 4); // on the Friday it is forgotten
            }
        }
        int number = livingLoads;
        const auto left = [&](int turn, Matter matter) {
            planLoad(livingDay, 3, turn, number++, matter, true);
        };
        planLoad(livingDay - 1, 3, 0, number++, Matter::nothing, false);
        left(0, Matter::airInSteam);
        left(1, Matter::controlDead);
        left(2, Matter::secondReaderAwaited);
        left(3, Matter::wetPackage);
    }

private:
    static std::string idOf(int which) { return "sz-" + std::to_string(which); }

    void planTest(int day, int which)
    {
        const Instant start = onDay(day, 5, 30 + which * 7);
        const auto cycle = std::make_shared<std::string>();
        const auto sheet = std::make_shared<std::string>();
        const std::string sterilizer = idOf(which);
        m_department.at(after(start, -5), [=, this] {
            *cycle = m_department
                         .reserve(morning(), {.sterilizer = sterilizer,
                                              .specification = "sp-air",
                                              .purpose = Purpose::bowieDick})
                         .cycle;
            *sheet = m_department.newId("ci");
            m_department.record(morning(), SheetPlaced{"pr-sheet", "pl-sheet"}, {*sheet, *cycle});
        });
        m_department.at(start, [=, this] {
            m_department.record(morning(),
                                CycleStarted{ClockSource::facility, m_department.shown(),
                                             m_counters.next(sterilizer)},
                                {*cycle});
        });
        m_department.at(after(start, 6), [=, this] {
            m_department.record(
                morning(), CycleEnded{m_department.shown(), CycleOutcome::ended, {}, {}}, {*cycle});
            m_department.record(
                morning(),
                TestConditionsRecorded{.chamberEmpty = true,
                                       .dryingRun = false,
                                       .exposureMinutes = TypedNumber{"3.5", 3'500},
                                       .exposureCelsius = TypedNumber{"134", 134'000}},
                {*cycle});
            m_department.record(morning(), ChemicalRead{Seen::uniformComplete}, {*sheet, *cycle});
        });
    }

    Matter matterOf(int day, int which, int turn)
    {
        if (day == positiveDay && which == 2 && turn == 0) {
            return Matter::positive;
        }
        const int drawn = m_department.draw(99); // also where it is not asked
        return hiddenMatter(day, which, turn).value_or(drawnMatter(drawn));
    }

    void planLoad(int day, int which, int turn, int number, Matter matter, bool isLeft)
    {
        const auto load = std::make_shared<Load>();
        load->sterilizer = idOf(which);
        load->number = number;
        load->start = onDay(day, 6, 20 + which * 11) + Duration::minutes(turn * 95);
        load->matter = matter;
        load->hasVial = turn == 0 || hasImplant(*load);
        load->isLeft = isLeft;
        m_department.at(after(load->start, -12), [=, this] { m_steps.fill(*load, day); });
        m_department.at(load->start, [=, this] { m_steps.start(*load, day); });
        m_department.at(after(load->start, 52), [=, this] { m_steps.end(*load, day); });
        m_department.at(after(load->start, 57), [=, this] { m_steps.read(*load, day); });
        if (isRecorded(*load)) {
            m_department.at(after(load->start, 60), [=, this] { m_steps.attach(*load, day); });
        }
        m_department.at(after(load->start, 75), [=, this] { m_steps.check(*load, day); });
        if (load->hasVial) {
            m_department.at(after(load->start, 62), [=, this] { m_vials.incubate(*load, day); });
            m_department.at(after(load->start, 124), [=, this] { m_vials.read(*load, day); });
        }
        if (isLeft) {
            return;
        }
        const int wait = load->matter == Matter::implant ? 130 : 80;
        m_department.at(after(load->start, wait), [=, this] { m_steps.sign(*load, day); });
    }

    Department& m_department;
    Counters m_counters;
    LoadSteps m_steps;
    VialSteps m_vials;
};

} // namespace

void planThreeWeeks(Department& department, bool withLivingDay)
{
    // The agenda keeps what it is given until it is done.
    static std::unique_ptr<Weeks> weeks;
    weeks = std::make_unique<Weeks>(department);
    weeks->plan();
    if (withLivingDay) {
        registerForLivingDay(department);
        weeks->planLivingDay();
        planGasLoad(department);
        planImmediateUse(department);
    }
}

} // namespace loadwarden::demo
