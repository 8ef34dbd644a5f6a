#pragma once

#include "core/cycle/trace/evaluate.h"

#include <QString>

#include <optional>
#include <vector>

namespace loadwarden::ui {

enum class SeriesKind : std::uint8_t { temperature, pressure, saturation, lethality };

/// A line of the picture, a value for each sample; NaN: none there. In °C, kPa absolute, K or
/// minutes.
struct TraceSeries {
    SeriesKind kind = SeriesKind::temperature;
    ChannelRole role = ChannelRole::notUsed; ///< of the channel it is of
    int order = 0;                           ///< among those of its role, from 0
    QString name;
    std::vector<double> values{};
};

/// Samples of a line that are beyond a limit.
struct TraceMark {
    std::size_t series = 0;
    SampleRange range;
    std::size_t worst = 0; ///< the sample furthest beyond
    bool isBelow = false;
};

struct ScenePhase {
    QString name;
    double from = 0; ///< seconds
    double to = 0;
    bool isExposure = false;
};

/// Everything that the picture of a trace shows.
struct TraceScene {
    std::vector<double> seconds;
    std::vector<TraceSeries> series;
    std::vector<TraceMark> marks;
    std::vector<ScenePhase> phases;
    Band band;
    std::optional<ScenePhase> hold; ///< none: the band is never held
    double saturationKelvin = notKnown;
    LethalReference f0;
    double mostStepSeconds = 0; ///< between samples further apart no line is drawn
    bool simulated = false;

    [[nodiscard]] double begin() const { return seconds.empty() ? 0 : seconds.front(); }
    [[nodiscard]] double end() const { return seconds.empty() ? 0 : seconds.back(); }
    [[nodiscard]] bool has(SeriesKind kind) const;
    /// The sample nearest to a time; there must be one.
    [[nodiscard]] std::size_t sampleAt(double at) const;
};

[[nodiscard]] TraceScene sceneOf(const Trace& trace, const TraceEvaluation& evaluation,
                                 const AskedOfTrace& asked, bool simulated);

/// "134.2 °C"; what is not measured is said so.
[[nodiscard]] QString valueText(SeriesKind kind, double value);

/// What a channel measures, with the recorder's name of it where that says more.
[[nodiscard]] QString channelText(const TraceChannel& channel);

} // namespace loadwarden::ui
