#include "core/store/reach/mark_windows.h"

#include "core/store/indexes/cycle_marks.h"
#include "core/store/queries.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// How much more is read when a second search asks for what is not there: it is of one of many
/// cycles. In ms, or in counters.
std::int64_t more(std::string_view mark)
{
    constexpr std::int64_t dayMs = 86'400'000;
    constexpr std::int64_t counters = 50;
    return mark == mark::counter ? counters : dayMs;
}

} // namespace

std::span<const MarkRow> MarkWindows::between(std::string_view sterilizer, std::string_view mark,
                                              std::int64_t from, std::int64_t to)
{
    const auto [place, isNew] = m_windows.try_emplace({std::string(sterilizer), std::string(mark)});
    Window& window = place->second;
    if (isNew || from < window.from || to > window.to) {
        const std::int64_t margin = isNew ? 0 : more(mark);
        // What overlaps is read as one, so that searches forward and backward do not take turns.
        const bool overlaps = !isNew && from <= window.to && to >= window.from;
        window.from = overlaps ? std::min(window.from, from - margin) : from - margin;
        window.to = overlaps ? std::max(window.to, to + margin) : to + margin;
        read(sterilizer, mark, window);
    }
    const auto first = std::ranges::lower_bound(window.rows, from, {}, &MarkRow::at);
    const auto last = std::ranges::upper_bound(window.rows, to, {}, &MarkRow::at);
    return {first, last};
}

void MarkWindows::read(std::string_view sterilizer, std::string_view mark, Window& window)
{
    window.rows.clear();
    Statement rows = m_snapshot.statement(sqlOf(Query::marksBetween, m_snapshot.dialect()));
    rows.bind(":sterilizer", sterilizer)
        .bind(":mark", mark)
        .bind(":from", window.from)
        .bind(":to", window.to)
        .bind(":seq", m_upTo);
    while (rows.step()) {
        window.rows.push_back(
            {rows.integer(0), rows.text(1), rows.text(2), rows.integer(3), rows.integer(4)});
    }
}

std::span<const LowReading> MarkWindows::lowReadings(std::string_view sterilizer,
                                                     std::string_view bound,
                                                     std::string_view parameter,
                                                     std::string_view unit, std::int64_t least)
{
    // None of these but the last has a line feed.
    std::string key;
    for (const std::string_view part : {sterilizer, bound, parameter, unit}) {
        key += part;
        key += '\n';
    }
    key += std::to_string(least);
    const auto [place, isNew] = m_lowReadings.try_emplace(std::move(key));
    if (isNew) {
        Statement rows = m_snapshot.statement(sqlOf(Query::lowReadings, m_snapshot.dialect()));
        rows.bind(":sterilizer", sterilizer)
            .bind(":specification", bound)
            .bind(":parameter", parameter)
            .bind(":unit", unit)
            .bind(":least", least)
            .bind(":seq", m_upTo);
        while (rows.step()) {
            place->second.push_back({rows.text(0), rows.integer(1), rows.integer(2)});
        }
    }
    return place->second;
}

} // namespace loadwarden
