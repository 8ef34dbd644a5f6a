#include "core/cycle/simulation/course.h"

#include "core/cycle/simulation/chamber.h"
#include "core/cycle/simulation/saturation_line.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace loadwarden::simulation {
namespace {

constexpr double longest = 86'400; ///< seconds; whatever the settings say, a cycle ends then

// A sterilizer holds its steam a little above the set temperature, and swings about that.
constexpr double holdAbove = 1.1;
constexpr double swingKelvin = 0.35;
constexpr double swingSeconds = 40;

constexpr double vacuumKPa = 3; ///< what the pump would reach in the end
constexpr double evacuationTau = 35;
constexpr double steamTau = 25;
constexpr double heatingTau = 45;
constexpr double holdTau = 2;
constexpr double exhaustTau = 18;
constexpr double gravityAirDecay = 40;
constexpr double littleAirKPa = 1.2;
constexpr double flushLowKPa = 112;
constexpr double dryVacuumKPa = 7;
constexpr double exhaustedAbove = 5;  ///< kPa above the atmosphere; a chamber counts as exhausted
constexpr double exhaustTowards = 20; ///< kPa below the atmosphere

/// The size of a fault, or nothing where it was not asked for.
const Fault* findFault(const Settings& settings, FaultKind kind)
{
    const auto found = std::ranges::find(settings.faults, kind, &Fault::kind);
    return found == settings.faults.end() ? nullptr : &*found;
}

double sizeOf(const Settings& settings, FaultKind kind)
{
    const Fault* const fault = findFault(settings, kind);
    return fault == nullptr ? 0 : fault->size;
}

class Sterilizer {
public:
    explicit Sterilizer(const Settings& settings)
        : m_settings(settings), m_random(settings.seed), m_chamber(settings.atmosphereKPa)
    {
        note();
    }

    Course cycle()
    {
        if (m_settings.program == Program::leakTest) {
            leakTest();
            return std::move(m_course);
        }
        removeAir();
        heat();
        hold();
        dry();
        return std::move(m_course);
    }

private:
    [[nodiscard]] double now() const { return m_course.end(); }
    [[nodiscard]] bool mayGoOn() const { return now() < longest; }

    void note()
    {
        m_course.chamber.push_back(m_chamber.chamberCelsius());
        m_course.drain.push_back(m_chamber.drainCelsius());
        m_course.load.push_back(m_chamber.loadCelsius());
        m_course.kPa.push_back(m_chamber.pressure());
    }

    void step(Chamber::Drive drive)
    {
        // Air comes in wherever it is pulled in.
        if (m_chamber.pressure() < m_settings.atmosphereKPa) {
            drive.leak = sizeOf(m_settings, FaultKind::leak) / 60;
        }
        m_chamber.step(drive, Truth::step);
        note();
    }

    void evacuateTo(double kPa)
    {
        while (m_chamber.pressure() > kPa && mayGoOn()) {
            step({.towards = vacuumKPa, .tau = evacuationTau, .evacuates = true});
        }
    }

    void steamTo(double kPa, double tau)
    {
        while (m_chamber.pressure() < kPa && mayGoOn()) {
            step({.towards = kPa * 1.25, .tau = tau});
        }
    }

    /// Keeps a pressure for some time.
    void keep(double kPa, double seconds)
    {
        for (const double until = now() + seconds; now() < until && mayGoOn();) {
            step({.towards = kPa, .tau = holdTau});
        }
    }

    void pulse(double low, double high)
    {
        PulseTruth pulse;
        evacuateTo(low);
        pulse.lowSeconds = now();
        pulse.lowKPa = m_chamber.pressure();
        steamTo(high, steamTau);
        pulse.highSeconds = now();
        pulse.highKPa = m_chamber.pressure();
        m_course.pulses.push_back(pulse);
    }

    void removeAir()
    {
        if (m_settings.program == Program::prevacuum) {
            for (int i = 0; i < m_settings.pulses && mayGoOn(); ++i) {
                pulse(m_settings.lowKPa, m_settings.highKPa);
            }
            // The last vacuum before heating belongs to no pulse: it is where heating begins.
            evacuateTo(m_settings.lowKPa);
        } else if (m_settings.program == Program::steamFlush) {
            while (m_chamber.air() > 8 && mayGoOn()) {
                step({.towards = flushLowKPa, .tau = steamTau, .airDecay = gravityAirDecay});
            }
            for (int i = 0; i < m_settings.pulses && mayGoOn(); ++i) {
                steamTo(m_settings.highKPa, steamTau);
                PulseTruth pulse{.highSeconds = now(), .highKPa = m_chamber.pressure()};
                evacuateTo(flushLowKPa);
                pulse.lowSeconds = now();
                pulse.lowKPa = m_chamber.pressure();
                m_course.pulses.push_back(pulse);
            }
        }
    }

    /// The temperature to which the steam is driven, without its swing.
    [[nodiscard]] double plateau() const
    {
        const double low = sizeOf(m_settings, FaultKind::lowTemperature);
        const double high = sizeOf(m_settings, FaultKind::highTemperature);
        if (low > 0) {
            return m_settings.setCelsius - low - swingKelvin;
        }
        if (high > 0) {
            return m_settings.setCelsius + m_settings.bandKelvin + high + swingKelvin;
        }
        return m_settings.setCelsius + holdAbove;
    }

    /// The chamber's pressure for a temperature of the sensors, air and superheat allowed for.
    [[nodiscard]] double pressureFor(double celsius)
    {
        const double superheat = sizeOf(m_settings, FaultKind::superheat);
        const double cooler = sizeOf(m_settings, FaultKind::residualAir);
        const double steam = saturationKPa(celsius - superheat);
        const double total = cooler > 0 ? saturationKPa(celsius - superheat + cooler) : steam;
        m_chamber.setSuperheat(superheat);
        m_chamber.keepAir(total - steam);
        return total;
    }

    void heat()
    {
        const double slower = sizeOf(m_settings, FaultKind::slowHeating);
        const double tau = heatingTau * (slower > 0 ? slower : 1);
        // Without a vacuum the drain goes on to let air go.
        const double airDecay = m_settings.program == Program::prevacuum ? 0 : gravityAirDecay;
        const double believed = plateau() - holdAbove;
        m_course.heating = {now(), now()};
        const double target = pressureFor(plateau());
        while (m_chamber.pressure() < target && mayGoOn()) {
            step({.towards = target * 1.15, .tau = tau, .airDecay = airDecay});
        }
        // Until every sensor shows what the sterilizer takes for the set temperature, for an hour
        // at most.
        const double latest = now() + 3600;
        const auto isThere = [&] {
            return m_chamber.chamberCelsius() >= believed && m_chamber.drainCelsius() >= believed
                   && m_chamber.loadCelsius() >= believed
                   && m_chamber.air() <= m_chamber.keptAir() + littleAirKPa;
        };
        while (!isThere() && now() < latest && mayGoOn()) {
            step({.towards = pressureFor(plateau()), .tau = holdTau, .airDecay = airDecay});
        }
        m_course.heating.to = now();
    }

    void hold()
    {
        const double asked =
            m_settings.exposureSeconds - sizeOf(m_settings, FaultKind::shortExposure);
        const Fault* const broken = findFault(m_settings, FaultKind::interruptedExposure);
        const double brokenFor = broken == nullptr ? 0 : broken->size;
        const double room = std::max(asked - brokenFor, 0.0);
        const double begin = now();
        // In the middle half of the time.
        const double breaks =
            begin + room * std::uniform_real_distribution<double>(0.25, 0.75)(m_random);
        const double phase = std::uniform_real_distribution<double>(0, 1)(m_random);
        while (now() < begin + asked && mayGoOn()) {
            double celsius = plateau();
            const bool isBroken =
                broken != nullptr && now() >= breaks && now() < breaks + brokenFor;
            if (isBroken) {
                celsius = m_settings.setCelsius - broken->kelvin - swingKelvin;
            }
            celsius += swingKelvin
                       * std::sin(2 * std::numbers::pi * ((now() - begin) / swingSeconds + phase));
            step({.towards = pressureFor(celsius), .tau = holdTau});
        }
        m_course.timed = Span{begin, now()};
    }

    void dry()
    {
        m_course.exhaust = {now(), now()};
        m_chamber.setSuperheat(0);
        m_chamber.keepAir(0);
        while (m_chamber.pressure() > m_settings.atmosphereKPa + exhaustedAbove && mayGoOn()) {
            step({.towards = m_settings.atmosphereKPa - exhaustTowards,
                  .tau = exhaustTau,
                  .evacuates = true});
        }
        m_course.exhaust.to = now();
        const double seconds =
            std::max(m_settings.dryingSeconds - sizeOf(m_settings, FaultKind::shortDrying), 0.0);
        m_course.drying = {now(), now()};
        const double until = now() + seconds;
        if (m_settings.program == Program::gravity) {
            while (now() < until && mayGoOn()) {
                m_chamber.admitAir(Truth::step);
                note();
            }
            m_course.airAdmission = m_course.drying.from;
        } else {
            evacuateTo(dryVacuumKPa);
            while (now() < until && mayGoOn()) {
                step({.towards = dryVacuumKPa, .tau = evacuationTau, .evacuates = true});
            }
            m_course.airAdmission = now();
        }
        m_course.drying.to = now();
        const double last = now() + 90;
        while (now() < last && mayGoOn()) {
            m_chamber.admitAir(Truth::step);
            note();
        }
        if (m_settings.program == Program::gravity) {
            m_course.drying.to = now(); // it dries with the drain open until the door is
        }
    }

    void leakTest()
    {
        // A leak test is run warm: the sensors' lag is behind it.
        keep(m_settings.highKPa, 60);
        evacuateTo(vacuumKPa + 2);
        const double before = now();
        while (now() < before + m_settings.settleSeconds && mayGoOn()) {
            step({.towards = m_chamber.pressure(), .tau = holdTau});
        }
        m_course.leak.from = now();
        while (now() < m_course.leak.from + m_settings.leakSeconds && mayGoOn()) {
            step({.towards = m_chamber.pressure(), .tau = holdTau});
        }
        m_course.leak.to = now();
        m_course.airAdmission = now();
        const double last = now() + 60;
        while (now() < last && mayGoOn()) {
            m_chamber.admitAir(Truth::step);
            note();
        }
    }

    const Settings& m_settings;
    std::mt19937_64 m_random;
    Chamber m_chamber;
    Course m_course;
};

} // namespace

Course run(const Settings& settings)
{
    return Sterilizer(settings).cycle();
}

} // namespace loadwarden::simulation
