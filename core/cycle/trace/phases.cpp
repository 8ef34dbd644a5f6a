#include "core/cycle/trace/phases.h"

#include "core/cycle/trace/pulses.h"
#include "core/cycle/trace/turning_points.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

class Divider {
public:
    Divider(const Trace& trace, const Band& band, const Exposure& exposure, AirRemoval airRemoval,
            double atmosphereKPa, const TraceSettings& settings)
        : m_trace(trace),
          m_band(band),
          m_exposure(exposure),
          m_airRemoval(airRemoval),
          m_atmosphere(atmosphereKPa),
          m_settings(settings),
          m_pressure(pressureOf(trace))
    {
    }

    Phases divide()
    {
        if (m_exposure.rule == HoldRule::none) {
            return {};
        }
        const bool isPlateau = m_exposure.rule == HoldRule::plateau;
        const Boundary begin{m_exposure.begin, isPlateau ? BoundaryRule::plateauBegan
                                                         : BoundaryRule::everyChannelInBand};
        const Boundary end{m_exposure.end,
                           isPlateau ? BoundaryRule::plateauEnded : BoundaryRule::leftBand};
        const Boundary heating = heatingBegin();
        const std::optional<Boundary> equilibration = equilibrationBegin(heating);
        add(PhaseKind::heating, heating, equilibration.value_or(begin));
        if (equilibration) {
            add(PhaseKind::equilibration, *equilibration, begin);
        }
        add(PhaseKind::exposure, begin, end);
        addAfterExposure(end);
        return std::move(m_result);
    }

private:
    /// `seconds`: of the samples that the phase is told by.
    void add(PhaseKind kind, const Boundary& begin, const Boundary& end,
             std::span<const double> seconds)
    {
        const double unseen =
            unrecorded(seconds, begin.at.latest, end.at.earliest, m_settings.mostStepSeconds);
        const double sure = end.at.earliest - begin.at.latest - unseen;
        m_result.phases.push_back(
            {kind, begin, end, {std::max(sure, 0.0), end.at.latest - begin.at.earliest}});
    }

    void add(PhaseKind kind, const Boundary& begin, const Boundary& end)
    {
        add(kind, begin, end, m_trace.seconds);
    }

    Boundary traceBegan() const
    {
        return {{-unbounded, m_trace.seconds.front()}, BoundaryRule::traceBegan};
    }

    Boundary traceEnded() const
    {
        return {{m_pressure.seconds.back(), unbounded}, BoundaryRule::traceEnded};
    }

    Boundary after(std::size_t place, BoundaryRule rule) const
    {
        return {{m_pressure.seconds[place],
                 place + 1 < m_pressure.size() ? m_pressure.seconds[place + 1] : unbounded},
                rule};
    }

    /// When heating began; adds air removal before it where it can be told.
    Boundary heatingBegin()
    {
        const std::size_t known = m_pressure.upTo(m_trace.seconds[m_exposure.hold.first]);
        if (known == 0) {
            return traceBegan();
        }
        const std::size_t last = known - 1; // at exposure
        const AirRemovalLook look =
            findPulses(m_pressure, last, m_airRemoval, m_atmosphere, m_settings);
        m_result.pulses = look.pulses;
        const bool byAtmosphere = m_airRemoval == AirRemoval::gravity
                                  || (m_airRemoval == AirRemoval::unknown && look.pulses.empty());
        Boundary began = traceBegan();
        Boundary ended = began;
        std::size_t rose = 0;
        if (byAtmosphere) {
            const double near = m_atmosphere + m_settings.nearAtmosphereKPa;
            rose = lastAtMost(m_pressure, 0, last, near);
            if (!(m_pressure.kPa[rose] <= near)) {
                return began;
            }
            ended = after(rose, BoundaryRule::roseAboveAtmosphere);
        } else if (!look.pulses.empty()) {
            rose = lastAtMost(m_pressure, look.lastTrough, last,
                              m_pressure.kPa[look.lastTrough] + m_settings.flatKPa);
            began = after(leftStart(), BoundaryRule::leftStartPressure);
            ended = after(rose, BoundaryRule::roseFromLastTrough);
        } else {
            m_result.pulsesSure = isDense(last);
            return began;
        }
        m_result.pulsesSure = isDense(rose);
        add(PhaseKind::airRemoval, began, ended, m_pressure.seconds);
        return ended;
    }

    std::size_t leftStart() const
    {
        std::size_t place = 0;
        while (place + 1 < m_pressure.size()
               && std::abs(m_pressure.kPa[place + 1] - m_pressure.kPa[0]) <= m_settings.flatKPa) {
            ++place;
        }
        return place;
    }

    bool isDense(std::size_t last) const
    {
        for (std::size_t i = 1; i <= last; ++i) {
            if (m_pressure.seconds[i] - m_pressure.seconds[i - 1]
                > m_settings.pulseMostStepSeconds) {
                return false;
            }
        }
        return true;
    }

    /// When the first of several channels was hot enough; nullopt with one that needed no time.
    std::optional<Boundary> equilibrationBegin(const Boundary& heating) const
    {
        const RequiredTemperatures temperatures = requiredTemperatures(m_trace, m_band);
        double least = m_band.leastCelsius - bandRounding;
        if (m_exposure.rule == HoldRule::plateau) {
            least = unbounded;
            for (std::size_t i = m_exposure.hold.first; i <= m_exposure.hold.last; ++i) {
                least = std::fmin(least, temperatures.coldest[i]);
            }
        }
        std::size_t place = m_exposure.hold.first;
        while (place > 0 && temperatures.highest[place - 1] >= least
               && m_trace.seconds[place - 1] >= heating.at.earliest) {
            --place;
        }
        const auto channels = std::ranges::count_if(m_band.required, [&](std::size_t channel) {
            return channel < m_trace.channels.size()
                   && isTemperature(m_trace.channels[channel].role);
        });
        if (channels < 2 && place == m_exposure.hold.first) {
            return std::nullopt;
        }
        return Boundary{
            {place > 0 ? m_trace.seconds[place - 1] : -unbounded, m_trace.seconds[place]},
            BoundaryRule::firstChannelInBand};
    }

    void addAfterExposure(const Boundary& exposed)
    {
        const std::size_t size = m_pressure.size();
        const std::size_t first = m_pressure.upTo(m_trace.seconds[m_exposure.hold.last]);
        if (first >= size || std::isnan(m_atmosphere)) {
            return;
        }
        std::size_t fell = first;
        while (fell < size
               && !(m_pressure.kPa[fell] <= m_atmosphere + m_settings.nearAtmosphereKPa)) {
            ++fell;
        }
        if (fell == size) {
            add(PhaseKind::exhaust, exposed, traceEnded(), m_pressure.seconds);
            return;
        }
        const Boundary dries{m_pressure.before(fell), BoundaryRule::fellToAtmosphere};
        add(PhaseKind::exhaust, exposed, dries, m_pressure.seconds);
        addDrying(dries, fell);
    }

    void addDrying(const Boundary& dries, std::size_t fell)
    {
        const std::size_t last = m_pressure.size() - 1;
        const double nearly = m_atmosphere - m_settings.nearAtmosphereKPa;
        // The first place behind the last vacuum; none where the trace ends in it.
        std::size_t behind = last + 1;
        while (behind > fell && !(m_pressure.kPa[behind - 1] < nearly)) {
            --behind;
        }
        std::size_t trough = fell;
        for (std::size_t i = fell; i <= last; ++i) {
            trough = m_pressure.kPa[i] < m_pressure.kPa[trough] ? i : trough;
        }
        if (!(m_pressure.kPa[trough] < nearly - m_settings.pulseLeastKPa)) {
            add(PhaseKind::drying, dries, traceEnded(), m_pressure.seconds);
            return;
        }
        const std::size_t back = std::min(behind, last);
        for (const TurningPoint& turn :
             turningPoints(std::span(m_pressure.kPa).subspan(fell, back + 1 - fell),
                           m_settings.pulseLeastKPa)) {
            trough = turn.isTrough ? fell + turn.sample : trough;
        }
        const bool isRising =
            m_pressure.kPa[back] - m_pressure.kPa[trough] >= m_settings.pulseLeastKPa;
        if (!isRising) {
            add(PhaseKind::drying, dries, traceEnded(), m_pressure.seconds);
            return;
        }
        const std::size_t rose =
            lastAtMost(m_pressure, trough, back, m_pressure.kPa[trough] + m_settings.flatKPa);
        const Boundary admits = after(rose, BoundaryRule::roseFromVacuum);
        add(PhaseKind::drying, dries, admits, m_pressure.seconds);
        add(PhaseKind::airAdmission, admits,
            behind <= last ? Boundary{m_pressure.before(behind), BoundaryRule::reachedAtmosphere}
                           : traceEnded(),
            m_pressure.seconds);
    }

    const Trace& m_trace;
    const Band& m_band;
    const Exposure& m_exposure;
    AirRemoval m_airRemoval;
    double m_atmosphere;
    const TraceSettings& m_settings;
    PressureSeries m_pressure;
    Phases m_result;
};

} // namespace

const TracePhase* Phases::find(PhaseKind kind) const
{
    const auto found = std::ranges::find(phases, kind, &TracePhase::kind);
    return found == phases.end() ? nullptr : &*found;
}

Phases findPhases(const Trace& trace, const Band& band, const Exposure& exposure,
                  AirRemoval airRemoval, double atmosphereKPa, const TraceSettings& settings)
{
    return Divider(trace, band, exposure, airRemoval, atmosphereKPa, settings).divide();
}

} // namespace loadwarden
