#include "core/words/say_trace_found.h"

#include <QCoreApplication>
#include <QString>

#include <cmath>

namespace loadwarden {
namespace {

struct Found {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(PhaseKind kind);
    static QString of(BoundaryRule rule);
    static QString of(InterruptionCause cause);
    static QString of(TraceProblem problem);
    static QString length(double seconds);
    static QString bounds(const Bounds& seconds);
    static QString notKnownWord() { return tr("not known"); }
    static QString caveat()
    {
        return tr("Temperature in the chamber is not temperature inside the pack: what is wrapped, "
                  "hollow or dense warms later, and where air stays it may not be reached at all.");
    }
};

QString Found::of(PhaseKind kind)
{
    switch (kind) {
    case PhaseKind::airRemoval: return tr("air removal");
    case PhaseKind::heating: return tr("heating");
    case PhaseKind::equilibration: return tr("equilibration");
    case PhaseKind::exposure: return tr("exposure");
    case PhaseKind::exhaust: return tr("exhaust");
    case PhaseKind::drying: return tr("drying");
    case PhaseKind::airAdmission: return tr("air admission");
    }
    return {};
}

QString Found::of(BoundaryRule rule)
{
    switch (rule) {
    case BoundaryRule::traceBegan: return tr("the trace begins");
    case BoundaryRule::leftStartPressure: return tr("the pressure first moves");
    case BoundaryRule::roseFromLastTrough: return tr("the pressure rises for good");
    case BoundaryRule::roseAboveAtmosphere: return tr("the pressure rises above the atmosphere");
    case BoundaryRule::firstChannelInBand: return tr("the first sensor reaches the band");
    case BoundaryRule::everyChannelInBand: return tr("every required sensor is in the band");
    case BoundaryRule::plateauBegan: return tr("the plateau outside the band begins");
    case BoundaryRule::leftBand: return tr("the band is left");
    case BoundaryRule::plateauEnded: return tr("the plateau outside the band ends");
    case BoundaryRule::fellToAtmosphere: return tr("the pressure falls to the atmosphere");
    case BoundaryRule::roseFromVacuum: return tr("the pressure rises from the last vacuum");
    case BoundaryRule::reachedAtmosphere: return tr("the pressure reaches the atmosphere");
    case BoundaryRule::traceEnded: return tr("the trace ends");
    }
    return {};
}

QString Found::of(InterruptionCause cause)
{
    switch (cause) {
    case InterruptionCause::gap: return tr("no samples");
    case InterruptionCause::notMeasured: return tr("a required sensor without a value");
    case InterruptionCause::notSteam: return tr("far hotter than steam of that pressure");
    case InterruptionCause::above: return tr("above the band");
    case InterruptionCause::below: return tr("below the band");
    }
    return {};
}

QString Found::of(TraceProblem problem)
{
    switch (problem) {
    case TraceProblem::noSamples:
        return tr("The trace has no sample that could be read. Take the file from the recorder "
                  "once more, or check its mapping.");
    case TraceProblem::timesNotRising:
        return tr("The times of the trace do not rise. Take the file from the recorder once more, "
                  "or check how its times are read.");
    case TraceProblem::lengthsDiffer:
        return tr("The channels of the trace have different numbers of values. Take the file from "
                  "the recorder once more.");
    case TraceProblem::requiredMissing:
        return tr("A temperature that exposure is judged by is not in the trace. Check which "
                  "column is which temperature.");
    case TraceProblem::noPressure:
        return tr("The trace has no chamber pressure, so that phases and saturation cannot be "
                  "told. Check which column is the pressure.");
    case TraceProblem::noAtmosphere:
        return tr("The site's atmospheric pressure is not stated, so that phases beyond exposure "
                  "cannot be told. State it in the settings of the facility.");
    }
    return {};
}

QString Found::length(double seconds)
{
    if (!std::isfinite(seconds)) {
        return notKnownWord();
    }
    if (seconds < 60) {
        return tr("%1 s").arg(QString::fromStdString(sayNumber(seconds, 1)));
    }
    const auto whole = static_cast<qlonglong>(std::llround(seconds));
    const QString s = QStringLiteral("%1").arg(whole % 60, 2, 10, QChar(u'0'));
    if (whole < 3600) {
        return tr("%1 min %2 s").arg(QString::number(whole / 60), s);
    }
    return tr("%1 h %2 min %3 s")
        .arg(QString::number(whole / 3600),
             QStringLiteral("%1").arg(whole / 60 % 60, 2, 10, QChar(u'0')), s);
}

QString Found::bounds(const Bounds& seconds)
{
    if (std::isnan(seconds.least) || std::isnan(seconds.most)) {
        return notKnownWord();
    }
    if (!std::isfinite(seconds.most)) {
        return tr("at least %1").arg(length(seconds.least));
    }
    return seconds.least == seconds.most
               ? length(seconds.least)
               : tr("%1 to %2").arg(length(seconds.least), length(seconds.most));
}

} // namespace

std::string say(PhaseKind kind)
{
    return Found::of(kind).toStdString();
}

std::string say(BoundaryRule rule)
{
    return Found::of(rule).toStdString();
}

std::string say(InterruptionCause cause)
{
    return Found::of(cause).toStdString();
}

std::string say(TraceProblem problem)
{
    return Found::of(problem).toStdString();
}

std::string say(Caveat /*caveat*/)
{
    return Found::caveat().toStdString();
}

std::string sayTraceTime(double seconds)
{
    if (!std::isfinite(seconds)) {
        return Found::notKnownWord().toStdString();
    }
    // Tenths, since a recorder may write more than once a second.
    const auto tenths = static_cast<qlonglong>(std::llround(std::abs(seconds) * 10));
    QString said = QStringLiteral("%1:%2:%3")
                       .arg(tenths / 36'000)
                       .arg(tenths / 600 % 60, 2, 10, QChar(u'0'))
                       .arg(tenths / 10 % 60, 2, 10, QChar(u'0'));
    if (tenths % 10 != 0) {
        said += QStringLiteral(".%1").arg(tenths % 10);
    }
    return (seconds < 0 ? QStringLiteral("−") + said : said).toStdString();
}

std::string sayLength(double seconds)
{
    return Found::length(seconds).toStdString();
}

std::string sayBounds(const Bounds& seconds)
{
    return Found::bounds(seconds).toStdString();
}

std::string sayNumber(double value, int decimals)
{
    if (std::isnan(value)) {
        return Found::notKnownWord().toStdString();
    }
    QString said = QString::number(value, 'f', decimals);
    while (said.contains(u'.') && (said.endsWith(u'0') || said.endsWith(u'.'))) {
        said.chop(1);
    }
    return said == QLatin1String("-0") ? "0" : said.replace(u'-', QChar(0x2212)).toStdString();
}

} // namespace loadwarden
