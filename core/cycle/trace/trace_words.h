#pragma once

#include "core/cycle/trace/trace_defect.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/word.h"

namespace loadwarden {

// Words by which files write what is of traces.

inline constexpr Word<TextEncoding> textEncodingWords[] = {
    {"utf-8", TextEncoding::utf8},
    {"latin-1", TextEncoding::latin1},
};

inline constexpr Word<FieldSeparator> fieldSeparatorWords[] = {
    {"comma", FieldSeparator::comma},
    {"semicolon", FieldSeparator::semicolon},
    {"tab", FieldSeparator::tab},
};

inline constexpr Word<DecimalMark> decimalMarkWords[] = {
    {"point", DecimalMark::point},
    {"comma", DecimalMark::comma},
};

inline constexpr Word<TimeForm> timeFormWords[] = {
    {"seconds", TimeForm::seconds},
    {"minutes", TimeForm::minutes},
    {"minutes-seconds", TimeForm::minutesSeconds},
    {"hours-minutes", TimeForm::hoursMinutes},
    {"hours-minutes-seconds", TimeForm::hoursMinutesSeconds},
    {"date-time", TimeForm::dateTime},
};

inline constexpr Word<DateOrder> dateOrderWords[] = {
    {"year-month-day", DateOrder::yearMonthDay},
    {"day-month-year", DateOrder::dayMonthYear},
    {"month-day-year", DateOrder::monthDayYear},
};

inline constexpr Word<ChannelRole> channelRoleWords[] = {
    {"chamber-temperature", ChannelRole::chamberTemperature},
    {"drain-temperature", ChannelRole::drainTemperature},
    {"load-temperature", ChannelRole::loadTemperature},
    {"chamber-pressure", ChannelRole::chamberPressure},
    {"not-used", ChannelRole::notUsed},
};

inline constexpr Word<RecorderUnit> recorderUnitWords[] = {
    {"celsius", RecorderUnit::celsius}, {"fahrenheit", RecorderUnit::fahrenheit},
    {"kelvin", RecorderUnit::kelvin},   {"kPa", RecorderUnit::kPa},
    {"bar", RecorderUnit::bar},         {"mbar", RecorderUnit::mbar},
    {"psi", RecorderUnit::psi},         {"inHg", RecorderUnit::inHg},
    {"mmHg", RecorderUnit::mmHg},
};

inline constexpr Word<PressureZero> pressureZeroWords[] = {
    {"absolute", PressureZero::absolute},
    {"gauge", PressureZero::gauge},
};

inline constexpr Word<TraceDefectKind> traceDefectWords[] = {
    {"empty", TraceDefectKind::empty},
    {"too-large", TraceDefectKind::tooLarge},
    {"not-text", TraceDefectKind::notText},
    {"mapping-unsound", TraceDefectKind::mappingUnsound},
    {"header-differs", TraceDefectKind::headerDiffers},
    {"no-samples", TraceDefectKind::noSamples},
    {"too-many-samples", TraceDefectKind::tooManySamples},
    {"gauge-without-atmosphere", TraceDefectKind::gaugeWithoutAtmosphere},
    {"atmosphere-impossible", TraceDefectKind::atmosphereImpossible},
    {"free-line", TraceDefectKind::freeLine},
    {"too-few-fields", TraceDefectKind::tooFewFields},
    {"too-many-fields", TraceDefectKind::tooManyFields},
    {"quote-not-closed", TraceDefectKind::quoteNotClosed},
    {"cut-off", TraceDefectKind::cutOff},
    {"last-line-open", TraceDefectKind::lastLineOpen},
    {"time-unreadable", TraceDefectKind::timeUnreadable},
    {"time-repeated", TraceDefectKind::timeRepeated},
    {"time-backward", TraceDefectKind::timeBackward},
    {"midnight", TraceDefectKind::midnight},
    {"another-start", TraceDefectKind::anotherStart},
    {"another-counter", TraceDefectKind::anotherCounter},
    {"gap", TraceDefectKind::gap},
    {"text-in-number", TraceDefectKind::textInNumber},
    {"value-missing", TraceDefectKind::valueMissing},
    {"sensor-lost", TraceDefectKind::sensorLost},
    {"value-impossible", TraceDefectKind::valueImpossible},
    {"jump", TraceDefectKind::jump},
    {"flat", TraceDefectKind::flat},
};
static_assert(std::size(traceDefectWords) == traceDefectKindCount);

} // namespace loadwarden
