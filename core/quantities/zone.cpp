#include "core/quantities/zone.h"

#include <QByteArray>
#include <QDateTime>
#include <QTimeZone>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <shared_mutex>
#include <utility>
#include <vector>

namespace loadwarden {

namespace {

constexpr std::int64_t msPerDay = 86'400'000;
constexpr std::int64_t firstKnown = 915'148'800'000;  // 1999-01-01T00:00Z
constexpr std::int64_t lastKnown = 4'133'980'799'999; // the last millisecond of 2100, UTC

/// Beyond every offset from UTC; the real ones reach from -12 to +14 hours.
constexpr std::int64_t mostOffset = 54'000'000; // 15 h

QDateTime utc(std::int64_t ms)
{
    return QDateTime::fromMSecsSinceEpoch(ms, Qt::UTC);
}

std::int64_t offsetOf(const QTimeZone& zone, std::int64_t ms)
{
    return std::int64_t{zone.offsetFromUtc(utc(ms))} * 1000;
}

constexpr std::int64_t floorDay(std::int64_t ms) noexcept
{
    const std::int64_t day = ms / msPerDay;
    return ms % msPerDay < 0 ? day - 1 : day;
}

/// Letters, digits, "_", "+" and "-" in parts parted by single slashes. The characters keep POSIX
/// rules (with commas) and paths (with dots) out, and the slash keeps out short POSIX rules such as
/// "ABC5", which QTimeZone would take.
bool looksLikeName(std::string_view name) noexcept
{
    if (name == "UTC") {
        return true;
    }
    if (name.size() > 64 || name.find('/') == std::string_view::npos || name.front() == '/'
        || name.back() == '/' || name.find("//") != std::string_view::npos) {
        return false;
    }
    if (name.starts_with("right/") || name.starts_with("posix/")) {
        return false; // folders of the same zones beside the names, the first counting leap seconds
    }
    return std::ranges::all_of(name, [](char c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')
               || c == '_' || c == '+' || c == '-' || c == '/';
    });
}

} // namespace

/// The zone as stretches of one offset each: stretch i begins at begins[i] and ends where the next
/// begins; the first has no beginning and the last no end.
struct Zone::Table {
    std::string name;
    std::vector<std::int64_t> begins;  ///< ascending; begins[0] is the lowest number there is
    std::vector<std::int64_t> offsets; ///< of the same length; milliseconds east

    Table(std::string zoneName, const QTimeZone& zone);

    void add(std::int64_t begin, std::int64_t offset)
    {
        if (offset != offsets.back()) {
            begins.push_back(begin);
            offsets.push_back(offset);
        }
    }

    std::size_t stretchOf(std::int64_t ms) const noexcept
    {
        const auto next = std::upper_bound(begins.begin() + 1, begins.end(), ms);
        return static_cast<std::size_t>(next - begins.begin()) - 1;
    }
};

Zone::Table::Table(std::string zoneName, const QTimeZone& zone)
    : name(std::move(zoneName)), begins{INT64_MIN}, offsets{offsetOf(zone, firstKnown)}
{
    std::int64_t at = firstKnown;
    for (const auto& change : zone.transitions(utc(firstKnown + 1), utc(lastKnown))) {
        at = change.atUtc.toMSecsSinceEpoch();
        add(at, std::int64_t{change.offsetFromUtc} * 1000);
    }
    // Qt 6.4 lists the changes that the database lists, to 2037 mostly, but not those that its rule
    // for the years after them gives, while its offsets follow the rule. So these are looked for: a
    // rule has two changes a year, at whole seconds, never within two weeks.
    constexpr std::int64_t step = 14 * msPerDay;
    at -= at % 1000;
    for (; at < lastKnown; at += step) {
        const std::int64_t next = offsetOf(zone, at + step);
        if (next == offsets.back()) {
            continue;
        }
        std::int64_t before = at / 1000;
        std::int64_t after = (at + step) / 1000;
        while (after - before > 1) {
            const std::int64_t middle = before + (after - before) / 2;
            (offsetOf(zone, middle * 1000) == next ? after : before) = middle;
        }
        add(after * 1000, next);
    }
}

std::optional<Zone> Zone::find(std::string_view iana)
{
    // Only names that were found are kept, so what is kept cannot outgrow the database.
    static std::shared_mutex mutex;
    static std::map<std::string, std::shared_ptr<const Table>, std::less<>> found;
    {
        const std::shared_lock lock(mutex);
        if (const auto it = found.find(iana); it != found.end()) {
            return Zone(it->second);
        }
    }
    if (!looksLikeName(iana)) {
        return std::nullopt;
    }
    const QTimeZone zone(QByteArray(iana.data(), static_cast<qsizetype>(iana.size())));
    if (!zone.isValid()) {
        return std::nullopt;
    }
    const auto table = std::make_shared<const Table>(std::string(iana), zone);
    const std::unique_lock lock(mutex);
    return Zone(found.try_emplace(table->name, table).first->second);
}

const std::string& Zone::name() const noexcept
{
    return table_->name;
}

Duration Zone::offsetAt(Instant t) const noexcept
{
    return {table_->offsets[table_->stretchOf(t.ms)]};
}

Date Zone::dateOf(Instant t) const noexcept
{
    return {static_cast<std::int32_t>(floorDay(t.ms + offsetAt(t).ms))};
}

Instant Zone::resolve(Date date, int minuteOfDay) const noexcept
{
    const std::int64_t local = date.days * msPerDay + minuteOfDay * std::int64_t{60'000};
    const std::vector<std::int64_t>& begins = table_->begins;
    // The first stretch whose local end lies after that time: it holds the time, and first, or it
    // begins after the gap in which the time lies. No earlier start of the search can be right.
    std::size_t i = table_->stretchOf(local - mostOffset);
    while (i + 1 < begins.size() && begins[i + 1] + table_->offsets[i] <= local) {
        ++i;
    }
    return {std::max(local - table_->offsets[i], begins[i])};
}

Date Zone::periodOf(Instant t, int testMinute) const noexcept
{
    // The next date may have begun already: clocks put back from after midnight repeat the old one.
    Date date = dateOf(t) + 1;
    while (resolve(date, testMinute) > t) {
        date = date - 1;
    }
    return date;
}

} // namespace loadwarden
