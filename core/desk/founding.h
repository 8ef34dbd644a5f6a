#pragma once

#include "core/desk/office.h"

#include <string>

namespace loadwarden {

/// What a department begins with.
struct Founding {
    std::string facility;
    std::string timeZone;      ///< IANA
    std::string atmosphereKPa; ///< as typed; empty: not known
    std::string supervisorId;  ///< st-; the first, who registers the rest
    std::string supervisorName;
    std::string supervisorBadge; ///< empty: none
    std::string supervisorPin;
};

/// Makes a department's journal: entry 1, the facility, its first supervisor with a PIN, a copy of
/// the default policy, and this user's key where there is none yet. The file appears when it is
/// whole. Throws StoreError; StoreFault::exists where there is a file.
[[nodiscard]] OrRefusal<Head> foundDepartment(const std::filesystem::path& file,
                                              const Founding& founding, const Workplace& place);

} // namespace loadwarden
