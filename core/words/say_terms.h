#pragma once

#include "core/acts/kinds/floor_acts.h"
#include "core/cycle/printout.h"
#include "core/cycle/specification.h"
#include "core/cycle/trace/shown.h"
#include "core/indicators/indicator.h"
#include "core/loads/load_record.h"
#include "core/packaging/packaging.h"
#include "core/quantities/act.h"
#include "core/sterilizers/sterilizer_record.h"

#include <string>

// Terms of the trade in words, as a table or a label says them: lower case, without a full stop, in
// the language that is installed.

namespace loadwarden {

[[nodiscard]] std::string say(Parameter parameter);
[[nodiscard]] std::string say(Method method);
[[nodiscard]] std::string say(AirRemoval airRemoval);
[[nodiscard]] std::string say(Purpose purpose);
[[nodiscard]] std::string say(CycleKind kind);
[[nodiscard]] std::string say(AbortPhase phase);
[[nodiscard]] std::string say(PrintoutAnswer answer);
[[nodiscard]] std::string say(PrintoutField field);
[[nodiscard]] std::string say(Shown shown);
[[nodiscard]] std::string say(Implant implant);
[[nodiscard]] std::string say(Seen seen);
[[nodiscard]] std::string say(ProcessIndicator seen);
[[nodiscard]] std::string say(FoundToBe was);
[[nodiscard]] std::string say(PackageFault fault);
[[nodiscard]] std::string say(ReviewAnswer answer);
[[nodiscard]] std::string say(ServiceState state);
[[nodiscard]] std::string say(AlarmEffect effect);
[[nodiscard]] std::string say(PackageForm form);
[[nodiscard]] std::string say(Role role);

} // namespace loadwarden
