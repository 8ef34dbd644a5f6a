#pragma once

#include "tests/ui/desktop.h"

// A department with registers for the window's tests: sterilizer, programs, products, packaging.

namespace loadwarden::ui_tests {

/// Registers everything that a steam load and its Bowie-Dick test need; at 05:30 the sterilizer S1
/// is in service.
void registerDepartment(Desktop& desktop);

/// Runs and reads the Bowie-Dick test at 06:00, through the desk.
void passBowieDick(Desktop& desktop);

/// Registers a lead of that name with a badge, and a PIN.
void hire(Desktop& desktop, const std::string& id, const std::string& name, Role role,
          const std::string& badge, const std::string& pin);

/// A load with item I1 that ran from 07:00 to 07:50, with a PCD; its id.
std::string runLoad(Desktop& desktop, Implant implant = Implant::no,
                    Purpose purpose = Purpose::routine);

/// A test of that purpose that ran from 06:50 to 06:55 and that nobody has read yet; its id.
std::string runTest(Desktop& desktop, Purpose purpose);

/// A load by a program of that method, reserved and not yet filled; its id.
std::string reserveLoad(Desktop& desktop, Method method = Method::hydrogenPeroxide);

/// Three loads that ran until 09:10, each with a vial: of an implant's load in the incubator beside
/// its control, still to be activated, and grown. Now it is 10:00.
void runVials(Desktop& desktop);

} // namespace loadwarden::ui_tests
