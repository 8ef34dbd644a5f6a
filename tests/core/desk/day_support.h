#pragma once

#include "tests/core/desk/desk_support.h"

// A department's day through the desk: registers, the morning's Bowie-Dick test, loads.

namespace loadwarden::testing {

inline const std::string operatorPin = "592817";
inline const std::string leadPin = "692817";

/// A department with registers and people; at 05:30 its sterilizer is in service.
class WorkingDepartment : public Department {
public:
    WorkingDepartment();

    [[nodiscard]] const SignedIn& operating() const { return m_operating; }
    [[nodiscard]] const SignedIn& second() const { return m_second; }
    [[nodiscard]] const SignedIn& lead() const { return m_lead; }

    /// Runs and reads the Bowie-Dick test at 06:00.
    void passBowieDick();

    /// Reserves, fills, runs and unloads a load from 06:40 to 07:50; its id.
    std::string runLoad(Implant implant);
    /// Everything of it but the vial, by 08:30.
    void readLoad(const std::string& cycle);
    /// Puts vial and control into the incubator at 08:05.
    void incubate(const std::string& cycle);
    /// Reads both.
    void readBiological(const std::string& cycle, Instant when, Seen vial = Seen::noGrowth);

    [[nodiscard]] static std::string partOf(const std::string& part, const std::string& cycle)
    {
        return part + cycle.substr(2);
    }

private:
    SignedIn m_operating;
    SignedIn m_second;
    SignedIn m_lead;
};

} // namespace loadwarden::testing
