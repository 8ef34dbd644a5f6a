#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_reader.h"
#include "core/exchange/trace_mapping_json.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <variant>

// The first byte says what the others are: P a recorder's text, read by the mapping that is
// proposed for it; J a mapping; anything else a text read by a mapping that the next bytes choose.
// No crash; times increase; what is missing is NaN and is told of; a mapping that is written comes
// back.

namespace {

using namespace loadwarden;

void demand(bool isSo)
{
    if (!isSo) {
        std::abort();
    }
}

void checkReading(const TraceReading& reading, std::size_t bytes)
{
    const std::size_t samples = reading.trace.samples();
    demand(samples <= bytes && reading.lines.size() == samples);
    for (std::size_t i = 1; i < samples; ++i) {
        demand(reading.trace.seconds[i] > reading.trace.seconds[i - 1]);
        demand(reading.lines[i] > reading.lines[i - 1]);
    }
    std::int64_t counted = 0;
    for (const std::int64_t count : reading.counts) {
        demand(count >= 0);
        counted += count;
    }
    demand(reading.defects.size() <= mostDefectsTold);
    demand(counted >= static_cast<std::int64_t>(reading.defects.size()));
    demand(counted <= static_cast<std::int64_t>(mostDefectsTold)
           || reading.defects.size() == mostDefectsTold);
    for (const TraceDefect& defect : reading.defects) {
        demand(defect.place.line >= 1 && defect.place.column >= 1);
        demand(defect.lastLine >= defect.place.line && defect.samples >= 0);
    }
    bool hasMissing = false;
    for (const TraceChannel& channel : reading.trace.channels) {
        demand(channel.values.size() == samples);
        for (const double value : channel.values) {
            demand(!std::isinf(value));
            hasMissing = hasMissing || std::isnan(value);
        }
    }
    demand(!hasMissing || !isUsable(reading));
    demand(samples != 0 || !isUsable(reading));
    demand(samples < 2 || reading.sampling.least <= reading.sampling.typical);
}

void readBy(const TraceMapping& mapping, std::string_view text, bool hasAtmosphere)
{
    const auto atmosphere =
        hasAtmosphere ? std::optional(AbsolutePressure::fromKPaThousandths(101'325)) : std::nullopt;
    checkReading(readTrace(text, mapping, atmosphere), text.size());
}

void writeAndRead(const TraceMapping& mapping)
{
    if (faultOf(mapping) == MappingFault::none) {
        const std::string json = writeTraceMapping(mapping);
        const auto back = readTraceMapping(json);
        const auto* again = std::get_if<TraceMapping>(&back);
        demand(again != nullptr && writeTraceMapping(*again) == json);
    }
}

/// A mapping of eight bytes, also one that is not sound.
TraceMapping mappingOf(const std::uint8_t* bytes)
{
    TraceMapping mapping;
    mapping.encoding = static_cast<TextEncoding>(bytes[0] % 2);
    mapping.separator = static_cast<FieldSeparator>(bytes[0] / 2 % 3);
    mapping.decimal = static_cast<DecimalMark>(bytes[0] / 6 % 2);
    mapping.time.form = static_cast<TimeForm>(bytes[1] % 6);
    mapping.time.order = static_cast<DateOrder>(bytes[1] / 6 % 3);
    mapping.columns = bytes[2] % 8;
    mapping.time.column = bytes[3] % 8;
    if (bytes[2] >= 128) {
        mapping.counterColumn = bytes[3] / 8 % 8;
    }
    if (bytes[3] >= 128) {
        mapping.time.dateColumn = bytes[4] % 8;
    }
    if (bytes[4] >= 128) {
        mapping.header = {"t", "A"};
        mapping.headerLine = bytes[4] % 4;
    }
    mapping.linesToSkip = bytes[5] % 4;
    for (int i = 6; i < 8; ++i) {
        mapping.channels.push_back({bytes[i] % std::size_t{8}, i == 6 ? "A" : "B",
                                    static_cast<ChannelRole>(bytes[i] / 8 % 5),
                                    static_cast<RecorderUnit>(bytes[i] / 16 % 9),
                                    static_cast<PressureZero>(bytes[i] / 128)});
    }
    return mapping;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0) {
        return 0;
    }
    const std::string all(data + 1, data + size);
    const std::string_view text = all;
    if (data[0] == 'P') {
        const TraceMapping mapping = proposeMapping(text).mapping;
        readBy(mapping, text, true);
        writeAndRead(mapping);
        (void)shownLines(text, mapping, 1, 5);
        return 0;
    }
    if (data[0] == 'J') {
        const auto read = readTraceMapping(text);
        if (const auto* mapping = std::get_if<TraceMapping>(&read)) {
            demand(faultOf(*mapping) == MappingFault::none);
            demand(nlohmann::json::accept(text));
            writeAndRead(*mapping);
        } else {
            demand(!std::get<TraceMappingError>(read).message.empty());
        }
        return 0;
    }
    constexpr std::size_t head = 8;
    if (text.size() >= head) {
        const TraceMapping mapping = mappingOf(data + 1);
        readBy(mapping, text.substr(head), data[0] % 2 == 0);
        (void)misfitsOf(text.substr(head), mapping);
    }
    return 0;
}
