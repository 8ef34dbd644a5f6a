#pragma once

#include "core/desk/office.h"
#include "core/desk/today.h"

#include <optional>

namespace loadwarden {

/// Today as it was read last, for as long as it stands: until anybody records anything, time changes
/// anything of it, or a minute has gone by. To be used by the office's thread.
class KeptToday {
public:
    static constexpr Duration longest = Duration::minutes(1);

    /// Throws StoreError.
    [[nodiscard]] const Today& of(Office& office);

private:
    [[nodiscard]] bool stands(const Head& head, Instant now) const;

    std::optional<Today> m_today;
    Head m_head; ///< the newest entry in it
};

} // namespace loadwarden
