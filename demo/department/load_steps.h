#pragma once

#include "demo/department/story_load.h"

namespace loadwarden::demo {

/// What people do with a load, from its contents to the signature. Lives as long as the agenda.
class LoadSteps {
public:
    LoadSteps(Department& department, Counters& counters)
        : m_department(department), m_counters(counters)
    {
    }

    void fill(Load& load, int day);
    void start(Load& load, int day);
    void end(Load& load, int day);
    void read(Load& load, int day);
    /// The recorder's file.
    void attach(Load& load, int day);
    /// Its packages, once they are cool.
    void check(Load& load, int day);
    void sign(Load& load, int day);

private:
    [[nodiscard]] const Worker& on(int day) const { return onDuty(m_department.now(), day); }

    Department& m_department;
    Counters& m_counters;
};

} // namespace loadwarden::demo
