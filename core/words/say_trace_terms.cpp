#include "core/words/say_trace.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct TraceTerms {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(ChannelRole role);
    static QString of(RecorderUnit unit);
    static QString of(PressureZero zero);
    static QString of(TimeForm form);
    static QString of(DateOrder order);
    static QString of(FieldSeparator separator);
    static QString of(DecimalMark mark);
    static QString of(TextEncoding encoding);
    static QString of(Sureness sureness);
    static QString of(ProposedItem item);
    static QString of(TraceDefectKind kind);
};

QString TraceTerms::of(ChannelRole role)
{
    switch (role) {
    case ChannelRole::chamberTemperature: return tr("chamber temperature");
    case ChannelRole::drainTemperature: return tr("drain temperature");
    case ChannelRole::loadTemperature: return tr("load temperature");
    case ChannelRole::chamberPressure: return tr("chamber pressure");
    case ChannelRole::notUsed: return tr("not used");
    }
    return {};
}

QString TraceTerms::of(RecorderUnit unit)
{
    switch (unit) {
    case RecorderUnit::celsius: return tr("°C");
    case RecorderUnit::fahrenheit: return tr("°F");
    case RecorderUnit::kelvin: return tr("K");
    case RecorderUnit::kPa: return tr("kPa");
    case RecorderUnit::bar: return tr("bar");
    case RecorderUnit::mbar: return tr("mbar");
    case RecorderUnit::psi: return tr("psi");
    case RecorderUnit::inHg: return tr("inHg");
    case RecorderUnit::mmHg: return tr("mmHg");
    }
    return {};
}

QString TraceTerms::of(PressureZero zero)
{
    switch (zero) {
    case PressureZero::absolute: return tr("absolute");
    case PressureZero::gauge: return tr("gauge");
    }
    return {};
}

QString TraceTerms::of(TimeForm form)
{
    switch (form) {
    case TimeForm::seconds: return tr("seconds as a number");
    case TimeForm::minutes: return tr("minutes as a number");
    case TimeForm::minutesSeconds: return tr("minutes:seconds");
    case TimeForm::hoursMinutes: return tr("hours:minutes");
    case TimeForm::hoursMinutesSeconds: return tr("hours:minutes:seconds");
    case TimeForm::dateTime: return tr("date and time");
    }
    return {};
}

QString TraceTerms::of(DateOrder order)
{
    switch (order) {
    case DateOrder::yearMonthDay: return tr("year, month, day");
    case DateOrder::dayMonthYear: return tr("day, month, year");
    case DateOrder::monthDayYear: return tr("month, day, year");
    }
    return {};
}

QString TraceTerms::of(FieldSeparator separator)
{
    switch (separator) {
    case FieldSeparator::comma: return tr("comma");
    case FieldSeparator::semicolon: return tr("semicolon");
    case FieldSeparator::tab: return tr("tab");
    }
    return {};
}

QString TraceTerms::of(DecimalMark mark)
{
    switch (mark) {
    case DecimalMark::point: return tr("point");
    case DecimalMark::comma: return tr("comma");
    }
    return {};
}

QString TraceTerms::of(TextEncoding encoding)
{
    switch (encoding) {
    case TextEncoding::utf8: return tr("UTF-8");
    case TextEncoding::latin1: return tr("Latin-1");
    }
    return {};
}

QString TraceTerms::of(Sureness sureness)
{
    switch (sureness) {
    case Sureness::stated: return tr("stated");
    case Sureness::likely: return tr("likely");
    case Sureness::guessed: return tr("a guess");
    }
    return {};
}

QString TraceTerms::of(ProposedItem item)
{
    switch (item) {
    case ProposedItem::encoding: return tr("encoding");
    case ProposedItem::separator: return tr("separator");
    case ProposedItem::decimal: return tr("decimal mark");
    case ProposedItem::header: return tr("header");
    case ProposedItem::timeColumn: return tr("column of the time");
    case ProposedItem::timeForm: return tr("form of the time");
    case ProposedItem::dateOrder: return tr("order of the date");
    case ProposedItem::counter: return tr("cycle counter");
    case ProposedItem::role: return tr("what it measures");
    case ProposedItem::unit: return tr("unit");
    case ProposedItem::zero: return tr("absolute or gauge");
    }
    return {};
}

QString TraceTerms::of(TraceDefectKind kind)
{
    switch (kind) {
    case TraceDefectKind::empty: return tr("empty file");
    case TraceDefectKind::tooLarge: return tr("file too large");
    case TraceDefectKind::notText: return tr("not a text");
    case TraceDefectKind::mappingUnsound: return tr("mapping does not go together");
    case TraceDefectKind::headerDiffers: return tr("header differs");
    case TraceDefectKind::noSamples: return tr("no samples");
    case TraceDefectKind::tooManySamples: return tr("too many samples");
    case TraceDefectKind::gaugeWithoutAtmosphere: return tr("gauge pressure without atmosphere");
    case TraceDefectKind::atmosphereImpossible: return tr("impossible atmosphere");
    case TraceDefectKind::freeLine: return tr("line of text");
    case TraceDefectKind::tooFewFields: return tr("too few fields");
    case TraceDefectKind::tooManyFields: return tr("too many fields");
    case TraceDefectKind::quoteNotClosed: return tr("quotation mark not closed");
    case TraceDefectKind::cutOff: return tr("file cut off");
    case TraceDefectKind::lastLineOpen: return tr("last line without an end");
    case TraceDefectKind::timeUnreadable: return tr("time cannot be read");
    case TraceDefectKind::timeRepeated: return tr("time repeated");
    case TraceDefectKind::timeBackward: return tr("time goes back");
    case TraceDefectKind::midnight: return tr("past midnight");
    case TraceDefectKind::anotherStart: return tr("start of another cycle");
    case TraceDefectKind::anotherCounter: return tr("counter of another cycle");
    case TraceDefectKind::gap: return tr("gap");
    case TraceDefectKind::textInNumber: return tr("text in place of a number");
    case TraceDefectKind::valueMissing: return tr("value missing");
    case TraceDefectKind::sensorLost: return tr("sensor lost");
    case TraceDefectKind::valueImpossible: return tr("impossible value");
    case TraceDefectKind::jump: return tr("jump");
    case TraceDefectKind::flat: return tr("flat sensor");
    }
    return {};
}

} // namespace

std::string say(ChannelRole role)
{
    return TraceTerms::of(role).toStdString();
}

std::string say(RecorderUnit unit)
{
    return TraceTerms::of(unit).toStdString();
}

std::string say(PressureZero zero)
{
    return TraceTerms::of(zero).toStdString();
}

std::string say(TimeForm form)
{
    return TraceTerms::of(form).toStdString();
}

std::string say(DateOrder order)
{
    return TraceTerms::of(order).toStdString();
}

std::string say(FieldSeparator separator)
{
    return TraceTerms::of(separator).toStdString();
}

std::string say(DecimalMark mark)
{
    return TraceTerms::of(mark).toStdString();
}

std::string say(TextEncoding encoding)
{
    return TraceTerms::of(encoding).toStdString();
}

std::string say(Sureness sureness)
{
    return TraceTerms::of(sureness).toStdString();
}

std::string say(ProposedItem item)
{
    return TraceTerms::of(item).toStdString();
}

std::string say(TraceDefectKind kind)
{
    return TraceTerms::of(kind).toStdString();
}

} // namespace loadwarden
