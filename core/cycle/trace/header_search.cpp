#include "core/cycle/trace/header_search.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::int64_t mostLinesBefore = 1000;

/// What the line at which the header stood has in its place.
TraceDefect differenceIn(const LineCutter& line, const TraceMapping& mapping)
{
    TraceDefect defect{.kind = TraceDefectKind::headerDiffers};
    const std::size_t most = std::max(line.fields().size(), mapping.header.size());
    for (std::size_t i = 0; i < most; ++i) {
        const TextField field =
            i < line.fields().size() ? line.fields()[i] : TextField{{}, line.end(), false};
        const std::string found = textOf(field, mapping.encoding);
        const std::string expected = i < mapping.header.size() ? mapping.header[i] : std::string();
        if (found != expected) {
            defect.place = line.placeOf(field.at, mapping.encoding);
            defect.column = i + 1;
            constexpr std::size_t shown = 60;
            defect.text = textOf(field, mapping.encoding, shown);
            defect.expected = expected;
            return defect;
        }
    }
    return defect;
}

HeaderFound behind(LineCutter& line, std::size_t skip)
{
    bool hasMore = true;
    for (std::size_t i = 0; i <= skip && hasMore; ++i) {
        hasMore = line.next();
    }
    return hasMore ? HeaderFound{line.begin(), line.line()} : HeaderFound{line.end(), line.line()};
}

} // namespace

bool isHeader(const LineCutter& line, const TraceMapping& mapping)
{
    if (mapping.header.empty() || line.filledCount() != mapping.header.size()) {
        return false;
    }
    for (std::size_t i = 0; i < mapping.header.size(); ++i) {
        if (textOf(line.fields()[i], mapping.encoding) != mapping.header[i]) {
            return false;
        }
    }
    return true;
}

HeaderFound findHeader(std::string_view bytes, const TraceMapping& mapping)
{
    LineCutter line(bytes, mapping.separator, byteOrderMarkOf(bytes));
    if (mapping.header.empty()) {
        return behind(line, mapping.linesToSkip);
    }
    while (line.next() && line.line() <= mostLinesBefore) {
        if (isHeader(line, mapping)) {
            return behind(line, mapping.linesToSkip);
        }
    }
    // None: what stands where it stood is said, and what follows is read as before.
    LineCutter again(bytes, mapping.separator, byteOrderMarkOf(bytes));
    HeaderFound found;
    bool isThere = again.next();
    while (isThere && again.line() < static_cast<std::int64_t>(mapping.headerLine)) {
        isThere = again.next();
    }
    TraceDefect differs = differenceIn(again, mapping);
    found = isThere ? behind(again, mapping.linesToSkip) : HeaderFound{bytes.size(), again.line()};
    found.differs = std::move(differs);
    return found;
}

} // namespace loadwarden
