#include "core/cycle/trace/header_search.h"
#include "core/cycle/trace/trace_reader.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

constexpr int linesLookedAt = 20;

/// The file up to the first lines of its samples.
std::string_view beginningOf(std::string_view bytes, const TraceMapping& mapping)
{
    const HeaderFound header = findHeader(bytes, mapping);
    LineCutter line(bytes, mapping.separator, header.begin, header.line);
    for (int count = 0; count < linesLookedAt && line.next();) {
        count += line.isBlank() ? 0 : 1;
    }
    // With its line end, so that it does not look cut off.
    return bytes.substr(0, std::max(line.end() + 2, header.begin));
}

bool hasNoValue(const Trace& trace, const std::string& channel)
{
    return std::ranges::any_of(trace.channels, [&](const TraceChannel& each) {
        return each.name == channel
               && std::ranges::all_of(each.values, [](double v) { return std::isnan(v); });
    });
}

bool speaksAgainst(const TraceDefect& defect, const TraceReading& reading)
{
    switch (defect.kind) {
    case TraceDefectKind::empty:
    case TraceDefectKind::notText:
    case TraceDefectKind::mappingUnsound:
    case TraceDefectKind::headerDiffers:
    case TraceDefectKind::noSamples:
    case TraceDefectKind::tooManyFields: return true;
    case TraceDefectKind::tooFewFields:
    case TraceDefectKind::timeUnreadable: return reading.trace.samples() == 0;
    case TraceDefectKind::textInNumber:
    case TraceDefectKind::valueImpossible: return hasNoValue(reading.trace, defect.channel);
    default: return false;
    }
}

} // namespace

std::vector<TraceDefect> misfitsOf(std::string_view bytes, const TraceMapping& mapping)
{
    const bool isSound = faultOf(mapping) == MappingFault::none;
    TraceReading reading = readTrace(isSound ? beginningOf(bytes, mapping) : bytes, mapping,
                                     AbsolutePressure::fromKPaThousandths(101'325));
    std::erase_if(reading.defects, [&reading](const TraceDefect& defect) {
        return !speaksAgainst(defect, reading);
    });
    return std::move(reading.defects);
}

} // namespace loadwarden
