#include "ui/trace/trace_scene.h"

#include "core/cycle/trace/saturation.h"
#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace loadwarden::ui {
namespace {

struct SceneText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceScene)
};

/// Where a boundary is drawn: in the middle of what the samples leave open.
double drawnAt(const Moment& moment, double begin, double end)
{
    const double earliest = std::clamp(moment.earliest, begin, end);
    const double latest = std::clamp(moment.latest, begin, end);
    return (earliest + latest) / 2;
}

class SceneMaker {
public:
    SceneMaker(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked)
        : m_trace(trace), m_evaluation(evaluation), m_asked(asked)
    {
    }

    TraceScene make()
    {
        if (std::ranges::any_of(m_evaluation.problems, isFatal)) {
            return m_scene;
        }
        m_scene.seconds = m_trace.seconds;
        m_scene.saturationKelvin = m_asked.saturationKelvin;
        m_scene.f0 = m_asked.f0;
        m_scene.mostStepSeconds = m_asked.settings.mostStepSeconds;
        for (std::size_t i = 0; i < m_trace.channels.size(); ++i) {
            addChannel(i);
        }
        if (m_asked.isLeakTest) {
            addLeak();
        } else {
            m_scene.band = m_asked.band;
            addPhases();
            addSaturation();
            addLethality();
        }
        return std::move(m_scene);
    }

private:
    [[nodiscard]] bool hasHold() const { return m_evaluation.exposure.rule != HoldRule::none; }
    [[nodiscard]] const SampleRange& hold() const { return m_evaluation.exposure.hold; }

    void addChannel(std::size_t place)
    {
        const TraceChannel& channel = m_trace.channels[place];
        if (channel.role == ChannelRole::notUsed) {
            return;
        }
        const bool isPressure = !isTemperature(channel.role);
        m_scene.series.push_back({isPressure ? SeriesKind::pressure : SeriesKind::temperature,
                                  channel.role, m_orders[channel.role]++, channelText(channel),
                                  channel.values});
        if (hasHold() && !m_asked.isLeakTest
            && std::ranges::find(m_asked.band.required, place) != m_asked.band.required.end()) {
            const Band& band = m_asked.band;
            mark(hold(), isPressure ? band.leastKPa : band.leastCelsius,
                 isPressure ? band.mostKPa : band.mostCelsius);
        }
    }

    /// Marks what of the newest series is beyond limits in a range of samples.
    void mark(const SampleRange& in, double least, double most)
    {
        const std::vector<double>& values = m_scene.series.back().values;
        std::optional<TraceMark> run;
        for (std::size_t i = in.first; i <= in.last; ++i) {
            const bool isBelow = values[i] < least - bandRounding;
            const bool isBeyond = isBelow || values[i] > most + bandRounding;
            if (run && (!isBeyond || isBelow != run->isBelow)) {
                m_scene.marks.push_back(*run);
                run.reset();
            }
            if (!isBeyond) {
                continue;
            }
            if (!run) {
                run = TraceMark{m_scene.series.size() - 1, {i, i}, i, isBelow};
            }
            run->range.last = i;
            if (isBelow ? values[i] < values[run->worst] : values[i] > values[run->worst]) {
                run->worst = i;
            }
        }
        if (run) {
            m_scene.marks.push_back(*run);
        }
    }

    void addPhases()
    {
        const double begin = m_scene.begin();
        const double end = m_scene.end();
        for (const TracePhase& phase : m_evaluation.phases.phases) {
            m_scene.phases.push_back({text(say(phase.kind)), drawnAt(phase.begin.at, begin, end),
                                      drawnAt(phase.end.at, begin, end),
                                      phase.kind == PhaseKind::exposure});
        }
        if (hasHold()) {
            m_scene.hold = ScenePhase{text(say(PhaseKind::exposure)), m_trace.seconds[hold().first],
                                      m_trace.seconds[hold().last], true};
        }
    }

    void addSaturation()
    {
        const auto pressure = findChannel(m_trace, ChannelRole::chamberPressure);
        if (!hasHold() || !pressure || m_evaluation.saturation.empty()) {
            return;
        }
        std::vector<double> boils(m_trace.samples(), notKnown);
        for (std::size_t i = hold().first; i <= hold().last; ++i) {
            boils[i] = saturationTemperature(valueAt(m_trace, *pressure, i));
        }
        const SampleRange judged =
            saturationJudged(m_trace, m_evaluation.exposure, m_asked.settings);
        std::map<ChannelRole, int> orders;
        for (const SaturationDifference& each : m_evaluation.saturation) {
            const TraceChannel& channel = m_trace.channels[each.channel];
            TraceSeries series{SeriesKind::saturation, channel.role, orders[channel.role]++,
                               SceneText::tr("%1 − saturation").arg(channelText(channel)), boils};
            for (std::size_t i = hold().first; i <= hold().last; ++i) {
                series.values[i] = channel.values[i] - boils[i];
            }
            m_scene.series.push_back(std::move(series));
            if (!std::isnan(m_asked.saturationKelvin)) {
                mark(judged, -m_asked.saturationKelvin, m_asked.saturationKelvin);
            }
        }
    }

    void addLethality()
    {
        if (m_evaluation.cumulative.size() == m_trace.samples()) {
            m_scene.series.push_back({SeriesKind::lethality, ChannelRole::notUsed, 0,
                                      SceneText::tr("F0 so far"), m_evaluation.cumulative});
        }
    }

    void addLeak()
    {
        if (!m_evaluation.leak || std::isnan(m_evaluation.leak->settledSeconds)) {
            return;
        }
        const LeakTest& leak = *m_evaluation.leak;
        m_scene.phases = {
            {SceneText::tr("settling"), leak.evacuatedSeconds, leak.settledSeconds, false},
            {SceneText::tr("measuring"), leak.settledSeconds, leak.endSeconds, true}};
    }

    const Trace& m_trace;
    const TraceEvaluation& m_evaluation;
    const AskedOfTrace& m_asked;
    TraceScene m_scene;
    std::map<ChannelRole, int> m_orders;
};

} // namespace

bool TraceScene::has(SeriesKind kind) const
{
    return std::ranges::any_of(series, [&](const TraceSeries& each) { return each.kind == kind; });
}

std::size_t TraceScene::sampleAt(double at) const
{
    const auto after = std::ranges::lower_bound(seconds, at);
    if (after == seconds.end()) {
        return seconds.size() - 1;
    }
    const auto place = static_cast<std::size_t>(after - seconds.begin());
    return place > 0 && at - seconds[place - 1] < *after - at ? place - 1 : place;
}

TraceScene sceneOf(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked,
                   bool simulated)
{
    TraceScene scene = SceneMaker(trace, evaluation, asked).make();
    scene.simulated = simulated;
    return scene;
}

QString valueText(SeriesKind kind, double value)
{
    if (std::isnan(value)) {
        return QStringLiteral("–");
    }
    const auto fixed = [&](int decimals) {
        return QString::number(value, 'f', decimals).replace(u'-', QChar(0x2212));
    };
    switch (kind) {
    case SeriesKind::temperature: return SceneText::tr("%1 °C").arg(fixed(1));
    case SeriesKind::pressure: return SceneText::tr("%1 kPa").arg(fixed(1));
    case SeriesKind::saturation:
        return SceneText::tr("%1 K").arg((value > 0 ? QStringLiteral("+") : QString()) + fixed(1));
    case SeriesKind::lethality: return SceneText::tr("%1 min").arg(fixed(1));
    }
    return {};
}

QString channelText(const TraceChannel& channel)
{
    QString role = text(say(channel.role));
    role.front() = role.front().toUpper();
    const QString name = text(channel.name);
    if (name.isEmpty()) {
        return role;
    }
    return name.startsWith(role, Qt::CaseInsensitive)
               ? name
               : SceneText::tr("%1 (%2)", "a role, a recorder's name of it").arg(role, name);
}

} // namespace loadwarden::ui
