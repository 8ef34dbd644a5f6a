#include "core/words/say_trace.h"

#include <QCoreApplication>
#include <QString>

#include <cmath>

namespace loadwarden {
namespace {

/// A number with as many decimals as say something, without zeros at the end.
QString number(double value)
{
    const double size = std::abs(value);
    QString text = QString::number(value, 'f', size >= 100 ? 0 : size >= 10 ? 1 : 2);
    while (text.contains(u'.') && (text.endsWith(u'0') || text.endsWith(u'.'))) {
        text.chop(1);
    }
    return text;
}

class TraceSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    explicit TraceSentences(const TraceDefect& defect) : d_(defect) {}

    [[nodiscard]] TraceDefectSaid said() const
    {
        const QString where = place();
        return {(where.isEmpty() ? says() : tr("%1: %2").arg(where, says())).toStdString(),
                fate().isEmpty() ? next().toStdString()
                                 : tr("%1 %2").arg(fate(), next()).toStdString()};
    }

private:
    /// "Line 12, column 3 (Chamber)", "Lines 12 to 40"; empty: it concerns all of the file.
    [[nodiscard]] QString place() const
    {
        switch (d_.kind) {
        case TraceDefectKind::empty:
        case TraceDefectKind::tooLarge:
        case TraceDefectKind::mappingUnsound:
        case TraceDefectKind::noSamples:
        case TraceDefectKind::atmosphereImpossible: return {};
        case TraceDefectKind::gaugeWithoutAtmosphere: return column();
        default: break;
        }
        const QString lines =
            d_.lastLine > d_.place.line ? tr("Lines %1 to %2").arg(d_.place.line).arg(d_.lastLine)
            : d_.place.column > 1
                ? tr("Line %1, character %2").arg(d_.place.line).arg(d_.place.column)
                : tr("Line %1").arg(d_.place.line);
        return d_.column == 0 ? lines : tr("%1, %2").arg(lines, columnWithin());
    }

    [[nodiscard]] QString column() const
    {
        return d_.channel.empty() ? tr("Column %1").arg(d_.column)
                                  : tr("Column %1 (%2)").arg(d_.column).arg(channel());
    }
    [[nodiscard]] QString columnWithin() const
    {
        return d_.channel.empty() ? tr("column %1").arg(d_.column)
                                  : tr("column %1 (%2)").arg(d_.column).arg(channel());
    }

    [[nodiscard]] QString says() const
    {
        switch (d_.kind) {
        case TraceDefectKind::empty: return tr("The file holds nothing.");
        case TraceDefectKind::tooLarge:
            return tr("The file has %1 MB; at most %2 MB are read.")
                .arg(number(d_.value / 1e6), number(d_.limit / 1e6));
        case TraceDefectKind::notText: return tr("this is not text in UTF-8 or Latin-1.");
        case TraceDefectKind::mappingUnsound:
            return tr("The mapping of this recorder's files does not go together.");
        case TraceDefectKind::headerDiffers:
            return tr("the header has \"%1\" where the mapping expects \"%2\".")
                .arg(text(), expected());
        case TraceDefectKind::noSamples:
            return tr("No line of the file could be read as a sample.");
        case TraceDefectKind::tooManySamples:
            return tr("the file has more than %1 samples.").arg(number(d_.limit));
        case TraceDefectKind::gaugeWithoutAtmosphere:
            return tr("it is a gauge pressure, and the site's atmosphere is not known.");
        case TraceDefectKind::atmosphereImpossible:
            return tr("The site's atmosphere is given as %1 kPa, which no site has.")
                .arg(number(d_.value));
        case TraceDefectKind::freeLine: return tr("text without a sample: \"%1\".").arg(text());
        case TraceDefectKind::tooFewFields:
            return tr("%1 fields in place of %2.").arg(number(d_.value), number(d_.limit));
        case TraceDefectKind::tooManyFields:
            return tr("%1 fields, and there should be %2 at most.")
                .arg(number(d_.value), number(d_.limit));
        case TraceDefectKind::quoteNotClosed: return tr("a quotation mark has no second one.");
        case TraceDefectKind::cutOff: return tr("the file ends within a line.");
        case TraceDefectKind::lastLineOpen:
            return tr("the last line has no line end, so the file may be cut off there.");
        case TraceDefectKind::timeUnreadable:
        case TraceDefectKind::timeRepeated:
        case TraceDefectKind::timeBackward:
        case TraceDefectKind::midnight:
        case TraceDefectKind::anotherStart:
        case TraceDefectKind::anotherCounter:
        case TraceDefectKind::gap:
        case TraceDefectKind::textInNumber:
        case TraceDefectKind::valueMissing:
        case TraceDefectKind::sensorLost:
        case TraceDefectKind::valueImpossible:
        case TraceDefectKind::jump:
        case TraceDefectKind::flat: return ofSample();
        }
        return {};
    }

    [[nodiscard]] QString ofSample() const
    {
        switch (d_.kind) {
        case TraceDefectKind::timeUnreadable: return tr("\"%1\" is no such time.").arg(text());
        case TraceDefectKind::timeRepeated: return tr("the time %1 comes again.").arg(text());
        case TraceDefectKind::timeBackward:
            return tr("the time %1 is %2 s before the one above it.").arg(text(), number(d_.value));
        case TraceDefectKind::midnight: return tr("the clock passes midnight at %1.").arg(text());
        case TraceDefectKind::anotherStart: return tr("another cycle seems to begin here.");
        case TraceDefectKind::anotherCounter:
            return tr("the cycle counter is %1, and was %2 before.").arg(text(), expected());
        case TraceDefectKind::gap:
            return tr("%1 s without a sample; more than %2 s is a gap.")
                .arg(number(d_.value), number(d_.limit));
        case TraceDefectKind::textInNumber:
            return tr("\"%1\" stands in the place of a number.").arg(text());
        case TraceDefectKind::valueMissing: return tr("there is no value.");
        case TraceDefectKind::sensorLost:
            return tr("no value in %1 samples one after the other.").arg(d_.samples);
        case TraceDefectKind::valueImpossible:
            return tr("%1 is no value that a sterilizer can have.").arg(text());
        case TraceDefectKind::jump:
            return (isPressure() ? tr("it changed by %1 kPa in %2 s; a chamber cannot by more "
                                      "than %3 kPa.")
                                 : tr("it changed by %1 K in %2 s; a sensor cannot by more than "
                                      "%3 K."))
                .arg(number(d_.value), number(d_.over), number(d_.limit));
        case TraceDefectKind::flat:
            return (isPressure() ? tr("it stands at %1 kPa for %2 s while other sensors change.")
                                 : tr("it stands at %1 °C for %2 s while other sensors change."))
                .arg(number(d_.value), number(d_.over));
        default: return {};
        }
    }

    [[nodiscard]] QString fate() const
    {
        if (d_.samples == 0) {
            return {};
        }
        switch (d_.fate) {
        case SampleFate::kept: return tr("Kept as it stands.");
        case SampleFate::valueLeftOut:
            return d_.samples == 1 ? tr("The value was left out.")
                                   : tr("Left out: %1 values.").arg(d_.samples);
        case SampleFate::leftOut:
            return d_.samples == 1 ? tr("The line was left out.")
                                   : tr("Left out: %1 lines.").arg(d_.samples);
        }
        return {};
    }

    [[nodiscard]] QString next() const
    {
        switch (d_.kind) {
        case TraceDefectKind::empty:
        case TraceDefectKind::cutOff:
        case TraceDefectKind::quoteNotClosed:
        case TraceDefectKind::tooFewFields:
        case TraceDefectKind::lastLineOpen: return tr("Take the file from the recorder once more.");
        case TraceDefectKind::tooLarge:
        case TraceDefectKind::tooManySamples:
            return tr("Take a file from the recorder that holds this cycle alone.");
        case TraceDefectKind::notText:
            return tr("Have the recorder write delimited text, and choose that file.");
        case TraceDefectKind::mappingUnsound:
        case TraceDefectKind::noSamples:
            return tr("Look at the mapping of this recorder's files and correct it.");
        case TraceDefectKind::headerDiffers:
        case TraceDefectKind::tooManyFields:
        case TraceDefectKind::timeUnreadable:
            return tr("Compare the mapping with the file; the recorder may write differently now.");
        case TraceDefectKind::gaugeWithoutAtmosphere:
        case TraceDefectKind::atmosphereImpossible:
            return tr("State the site's atmosphere in kPa absolute.");
        case TraceDefectKind::anotherStart:
        case TraceDefectKind::anotherCounter:
            return tr("Make sure that the trace is of this load's cycle.");
        case TraceDefectKind::freeLine:
        case TraceDefectKind::midnight: return tr("Nothing needs to be done.");
        case TraceDefectKind::timeRepeated:
        case TraceDefectKind::timeBackward: return tr("Have the recorder's clock checked.");
        case TraceDefectKind::gap: return tr("What happened in between is not known.");
        case TraceDefectKind::textInNumber:
        case TraceDefectKind::valueMissing:
        case TraceDefectKind::sensorLost:
        case TraceDefectKind::valueImpossible:
        case TraceDefectKind::jump:
        case TraceDefectKind::flat: return tr("Have sensor and recorder checked.");
        }
        return {};
    }

    [[nodiscard]] QString text() const { return QString::fromStdString(d_.text); }
    [[nodiscard]] QString expected() const { return QString::fromStdString(d_.expected); }
    [[nodiscard]] QString channel() const { return QString::fromStdString(d_.channel); }
    [[nodiscard]] bool isPressure() const { return d_.role == ChannelRole::chamberPressure; }

    const TraceDefect& d_;
};

} // namespace

TraceDefectSaid say(const TraceDefect& defect)
{
    return TraceSentences(defect).said();
}

} // namespace loadwarden
