#include "core/cycle/simulation/chamber.h"

#include "core/cycle/simulation/saturation_line.h"

#include <algorithm>
#include <cmath>

namespace loadwarden::simulation {
namespace {

// Time constants in seconds, of no particular sterilizer.
constexpr double chamberLag = 2;
constexpr double drainLag = 4;
constexpr double loadLag = 12;
/// Where there is hardly any steam a sensor is warmed by the walls alone, and slowly.
constexpr double wallLag = 400;
constexpr double wallCelsius = 105;
constexpr double hardlySteamKPa = 25;
constexpr double admissionTau = 12;

void follow(double& sensor, double target, double lag, double seconds)
{
    sensor += (target - sensor) * (1 - std::exp(-seconds / lag));
}

} // namespace

Chamber::Chamber(double atmosphereKPa) : m_atmosphere(atmosphereKPa), m_air(atmosphereKPa) {}

void Chamber::step(const Drive& drive, double seconds)
{
    const double before = pressure();
    const double after =
        before + (drive.towards - before) * (1 - std::exp(-seconds / std::max(drive.tau, 0.1)));
    if (after < before || drive.evacuates) {
        const double share = before > 0 ? std::max(after, 0.01) / before : 0;
        m_steam *= share;
        m_air *= share;
    } else {
        m_steam += after - before;
    }
    if (drive.airDecay > 0) {
        // The drain lets air go, and steam takes its place.
        const double gone = m_air * (1 - std::exp(-seconds / drive.airDecay));
        m_air -= gone;
        m_steam += gone;
    }
    if (m_air < m_keptAir) {
        m_steam = std::max(m_steam - (m_keptAir - m_air), 0.01);
        m_air = m_keptAir;
    }
    m_air += drive.leak * seconds;
    warm(seconds);
}

void Chamber::admitAir(double seconds)
{
    m_keptAir = 0;
    m_air += (m_atmosphere * 1.02 - pressure()) * (1 - std::exp(-seconds / admissionTau));
    warm(seconds);
}

void Chamber::warm(double seconds)
{
    if (m_steam < hardlySteamKPa) {
        for (double* const sensor : {&m_chamber, &m_drain, &m_load}) {
            follow(*sensor, wallCelsius, wallLag, seconds);
        }
        return;
    }
    const double steam = saturationCelsius(m_steam) + m_superheat;
    follow(m_chamber, steam, chamberLag, seconds);
    follow(m_drain, steam, drainLag, seconds);
    follow(m_load, steam, loadLag, seconds);
}

} // namespace loadwarden::simulation
