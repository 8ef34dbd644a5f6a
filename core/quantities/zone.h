#pragma once

#include "core/quantities/date.h"
#include "core/quantities/instant.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace loadwarden {

/// A time zone of the IANA database, and the facility days counted in it. Knows the years 1999 to
/// 2101; before and after them the nearest offset goes on. Cheap to copy, safe to share between
/// threads.
class Zone {
public:
    /// "America/Chicago", "UTC", "Etc/GMT+5": a name with a slash, or UTC. nullopt when the
    /// database of this computer has no such zone. Offsets ("UTC+03:00") and POSIX rules are no
    /// names.
    static std::optional<Zone> find(std::string_view iana);

    const std::string& name() const noexcept;

    /// Offset from UTC at that moment; positive east of Greenwich.
    Duration offsetAt(Instant t) const noexcept;

    /// The local date at that moment.
    Date dateOf(Instant t) const noexcept;

    /// The moment of a local time, minuteOfDay from 0 to 1439. Of a local time that comes twice the
    /// first; of one that does not exist the first moment after the gap.
    Instant resolve(Date date, int minuteOfDay) const noexcept;

    /// The test period of a moment: the local date D of the latest resolve(D, testMinute) that is
    /// not after it; of two dates that begin at one moment (a day left out) the later.
    Date periodOf(Instant t, int testMinute) const noexcept;

    /// The moment at which a test period begins.
    Instant periodBegin(Date period, int testMinute) const noexcept
    {
        return resolve(period, testMinute);
    }

    /// Whether they are the same zone by name.
    friend bool operator==(const Zone& a, const Zone& b) noexcept { return a.name() == b.name(); }

private:
    struct Table;

    explicit Zone(std::shared_ptr<const Table> table) noexcept : table_(std::move(table)) {}

    std::shared_ptr<const Table> table_;
};

} // namespace loadwarden
