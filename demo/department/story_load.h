#pragma once

#include "demo/department/department.h"
#include "demo/department/matters.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace loadwarden::demo {

/// A wrapped steam load of the story on its way.
struct Load {
    std::string sterilizer;
    int number = 0; ///< in the order of their starts, from 0
    Instant start;
    Matter matter = Matter::nothing;
    bool hasVial = false;
    bool isLeft = false; ///< nobody signs it
    bool isSigned = false;
    std::string cycle;
    std::vector<std::string> items;
    std::vector<std::string> externals;
    std::string strip;
    std::string vial;
    std::string control; ///< empty: another load's is beside its vial
    std::int64_t counter = 0;
};

[[nodiscard]] bool hasImplant(const Load& load);

/// Whether its recorder's file is fetched.
[[nodiscard]] bool isRecorded(const Load& load);

/// The lot of its vial.
[[nodiscard]] std::string vialLot(const Load& load);

[[nodiscard]] Instant after(Instant moment, int minutes);

/// Two shifts: who works then.
[[nodiscard]] const Worker& onDuty(Instant moment, int day);

/// The cycle counters of the sterilizers.
class Counters {
public:
    [[nodiscard]] std::int64_t next(const std::string& sterilizer)
    {
        return ++m_counters[sterilizer];
    }

private:
    std::map<std::string, std::int64_t> m_counters{
        {"sz-1", 4'200}, {"sz-2", 3'900}, {"sz-3", 1'150}, {"sz-4", 7'410}};
};

} // namespace loadwarden::demo
