#pragma once

#include "core/cycle/trace/trace.h"
#include "core/quantities/text_place.h"

#include <array>
#include <bitset>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>

namespace loadwarden {

/// What can be wrong with a recorder's text, or must be said of it. Beside each the members of
/// TraceDefect that it sets beyond kind, place, samples and fate.
enum class TraceDefectKind : std::uint8_t {
    // Of the file.
    empty,
    tooLarge,               ///< value, limit: bytes
    notText,                ///< place of the first zero byte, or of the UTF-16 mark
    mappingUnsound,         ///< value: the MappingFault
    headerDiffers,          ///< column, text: found; expected: what the mapping has there
    noSamples,              ///< no line could be read as a sample
    tooManySamples,         ///< limit: samples
    gaugeWithoutAtmosphere, ///< channel: none of its values can be made absolute
    atmosphereImpossible,   ///< value: kPa absolute
    // Of a line.
    freeLine,       ///< no time and no number where the mapping has some; text: its first field
    tooFewFields,   ///< value: fields; limit: those it should have
    tooManyFields,  ///< the same
    quoteNotClosed, ///< a quotation mark without its second
    cutOff,         ///< the file ends within a line
    lastLineOpen,   ///< the last line is whole but has no line end: its last number may be cut
    // Of the times.
    timeUnreadable, ///< text
    timeRepeated,   ///< text
    timeBackward,   ///< text; value: seconds that it went back
    midnight,       ///< a clock began again, and a day was added; text
    anotherStart,   ///< the times or the header begin again: all that follows is left out
    anotherCounter, ///< text; expected: the counter of the samples before
    gap,            ///< value: seconds to the sample before; limit: seconds
    // Of the values.
    textInNumber,    ///< channel, text
    valueMissing,    ///< channel
    sensorLost,      ///< channel: no values for several samples
    valueImpossible, ///< channel, text
    jump,            ///< channel; value: K or kPa; over: seconds; limit: K or kPa in these
    flat             ///< channel; value: °C or kPa; over: seconds
};

inline constexpr std::size_t traceDefectKindCount = 28;
static_assert(static_cast<std::size_t>(TraceDefectKind::flat) + 1 == traceDefectKindCount);

/// What became of the samples that a defect concerns.
enum class SampleFate : std::uint8_t {
    kept,
    valueLeftOut, ///< the sample is kept, and the channel's value is NaN
    leftOut
};

/// One defect, or a run of the same in lines that follow each other.
struct TraceDefect {
    TraceDefectKind kind = TraceDefectKind::empty;
    TextPlace place;           ///< of the first
    std::int64_t lastLine = 1; ///< of the run
    std::int64_t samples = 0;  ///< lines of samples in the run; 0: it concerns the file
    SampleFate fate = SampleFate::kept;
    std::size_t column = 0;                  ///< of the file's columns, from 1; 0: of none
    std::string channel{};                   ///< its name; empty: of none
    ChannelRole role = ChannelRole::notUsed; ///< of the channel
    std::string text{};     ///< what stood there first, UTF-8, cut to what can be shown
    std::string expected{}; ///< what should have
    double value = std::numeric_limits<double>::quiet_NaN();
    double limit = std::numeric_limits<double>::quiet_NaN();
    double over = std::numeric_limits<double>::quiet_NaN();
};

/// A set of kinds of defects.
class TraceDefectSet {
public:
    constexpr TraceDefectSet() noexcept = default;

    [[nodiscard]] static TraceDefectSet all() noexcept
    {
        TraceDefectSet set;
        set.m_kinds.set();
        return set;
    }

    TraceDefectSet& add(TraceDefectKind kind) noexcept
    {
        m_kinds.set(static_cast<std::size_t>(kind) % traceDefectKindCount);
        return *this;
    }
    TraceDefectSet& remove(TraceDefectKind kind) noexcept
    {
        m_kinds.reset(static_cast<std::size_t>(kind) % traceDefectKindCount);
        return *this;
    }
    [[nodiscard]] bool has(TraceDefectKind kind) const noexcept
    {
        return m_kinds[static_cast<std::size_t>(kind) % traceDefectKindCount];
    }

    friend bool operator==(const TraceDefectSet&, const TraceDefectSet&) = default;

private:
    std::bitset<traceDefectKindCount> m_kinds;
};

/// How often each kind occurs; a run counts once.
using TraceDefectCounts = std::array<std::int64_t, traceDefectKindCount>;

/// The kinds that make a trace unusable where no policy says otherwise: all but those by which no
/// sample is lost or doubtful (a line that holds none, midnight, the last line's missing end).
[[nodiscard]] inline TraceDefectSet unusableByDefault() noexcept
{
    return TraceDefectSet::all()
        .remove(TraceDefectKind::freeLine)
        .remove(TraceDefectKind::midnight)
        .remove(TraceDefectKind::lastLineOpen);
}

} // namespace loadwarden
