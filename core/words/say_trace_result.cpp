#include "core/words/say_trace_result.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct ResultWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(Shown shown);
    static QString of(PhaseKind kind);
    static QString of(InterruptionCause cause);
    static QString of(TraceProblem problem);
    static QString of(Caveat caveat);
    static QString saturationMeaning();
};

QString ResultWords::of(Shown shown)
{
    switch (shown) {
    case Shown::notAsked: return tr("not asked");
    case Shown::met: return tr("met");
    case Shown::open: return tr("open");
    case Shown::notMet: return tr("not met");
    }
    return {};
}

QString ResultWords::of(PhaseKind kind)
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

QString ResultWords::of(InterruptionCause cause)
{
    switch (cause) {
    case InterruptionCause::gap: return tr("no samples");
    case InterruptionCause::notMeasured: return tr("a sensor without a value");
    case InterruptionCause::notSteam: return tr("far hotter than steam of that pressure");
    case InterruptionCause::above: return tr("above the band");
    case InterruptionCause::below: return tr("below the band");
    }
    return {};
}

QString ResultWords::of(TraceProblem problem)
{
    switch (problem) {
    case TraceProblem::noSamples:
        return tr("There is no sample, so nothing can be computed. Look at the mapping.");
    case TraceProblem::timesNotRising:
        return tr("The times of the samples do not rise, so nothing can be computed. Look at the "
                  "mapping of the time.");
    case TraceProblem::lengthsDiffer:
        return tr("The channels have different numbers of values, so nothing can be computed. "
                  "Take the file from the recorder once more.");
    case TraceProblem::requiredMissing:
        return tr("No exposure can be told. Map a chamber, drain or load temperature, and state "
                  "the least temperature in the specification.");
    case TraceProblem::noPressure:
        return tr("No chamber pressure is mapped, so neither saturation nor drying can be told. "
                  "Map the column that holds it.");
    case TraceProblem::noAtmosphere:
        return tr("The site's atmosphere is not known, so drying cannot be told. State it in kPa "
                  "absolute.");
    }
    return {};
}

QString ResultWords::of(Caveat caveat)
{
    switch (caveat) {
    case Caveat::chamberIsNotPack:
        return tr("Temperature in the chamber is not temperature inside the pack.");
    }
    return {};
}

QString ResultWords::saturationMeaning()
{
    return tr("Less saturation: above 0 the steam is hotter than its pressure says (superheat); "
              "below 0 it is colder, as where air or another gas that does not condense is in it. "
              "A sensor out of calibration, or a wrong atmosphere, looks the same.");
}

} // namespace

std::string say(Shown shown)
{
    return ResultWords::of(shown).toStdString();
}

std::string say(PhaseKind kind)
{
    return ResultWords::of(kind).toStdString();
}

std::string say(InterruptionCause cause)
{
    return ResultWords::of(cause).toStdString();
}

std::string say(TraceProblem problem)
{
    return ResultWords::of(problem).toStdString();
}

std::string say(Caveat caveat)
{
    return ResultWords::of(caveat).toStdString();
}

std::string saySaturationMeaning()
{
    return ResultWords::saturationMeaning().toStdString();
}

} // namespace loadwarden
