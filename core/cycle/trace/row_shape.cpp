#include "core/cycle/trace/row_shape.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool hasLetter(std::string_view text) noexcept
{
    return std::ranges::any_of(text, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')
               || static_cast<unsigned char>(c) >= 0x80;
    });
}

} // namespace

std::string_view fieldAt(const LineCutter& line, std::size_t column) noexcept
{
    return column < line.fields().size() ? line.fields()[column].text : std::string_view();
}

bool hasFigure(std::string_view text) noexcept
{
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

std::optional<WrittenTime> timeOf(const LineCutter& line, const TraceMapping& mapping) noexcept
{
    const std::string_view date =
        mapping.time.dateColumn ? fieldAt(line, *mapping.time.dateColumn) : std::string_view();
    return readTime(fieldAt(line, mapping.time.column), date, mapping.time, mapping.decimal);
}

bool isFreeLine(const LineCutter& line, const TraceMapping& mapping) noexcept
{
    for (const MappedChannel& channel : mapping.channels) {
        if (channel.role != ChannelRole::notUsed
            && readNumber(fieldAt(line, channel.column), mapping.decimal)) {
            return false;
        }
    }
    if (!timeOf(line, mapping)) {
        return true;
    }
    if (line.fieldCount() >= mapping.columns) {
        return false;
    }
    for (std::size_t i = 0; i < line.fields().size(); ++i) {
        const std::string_view text = line.fields()[i].text;
        if (i != mapping.time.column && hasLetter(text) && !saysNoValue(text)) {
            return true;
        }
    }
    return false;
}

std::optional<LabelledCounter> labelledCounter(const LineCutter& line, const TraceMapping& mapping)
{
    constexpr std::string_view between = " .:=#";
    const std::string& label = mapping.counterLabel;
    for (std::size_t i = 0; !label.empty() && i < line.fields().size(); ++i) {
        const std::string text = textOf(line.fields()[i], mapping.encoding);
        if (!text.starts_with(label)) {
            continue;
        }
        const std::size_t begin = text.find_first_not_of(between, label.size());
        if (begin == label.size()) {
            continue; // the label is the beginning of another word
        }
        if (begin != std::string::npos) {
            return LabelledCounter{text.substr(begin), i};
        }
        if (!fieldAt(line, i + 1).empty()) {
            return LabelledCounter{textOf(line.fields()[i + 1], mapping.encoding), i + 1};
        }
    }
    return std::nullopt;
}

} // namespace loadwarden
