#pragma once

#include "demo/department/story_load.h"

#include <map>
#include <string>
#include <utility>

namespace loadwarden::demo {

/// What becomes of the vials of loads, and of the controls beside them. Lives as long as the
/// agenda.
class VialSteps {
public:
    VialSteps(Department& department, Counters& counters)
        : m_department(department), m_counters(counters)
    {
    }

    void incubate(Load& load, int day);
    /// Where it has grown, with all that follows.
    void read(Load& load, int day);

private:
    /// Out of service; the next morning a qualification with a vial, the incident closed, a return.
    void afterAPositive(const Load& load, int day);

    [[nodiscard]] const Worker& on(int day) const { return onDuty(m_department.now(), day); }

    Department& m_department;
    Counters& m_counters;
    std::map<std::pair<int, std::string>, std::string> m_controlOfDay; ///< by day and lot
};

} // namespace loadwarden::demo
