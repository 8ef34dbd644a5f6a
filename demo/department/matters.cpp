#include "demo/department/matters.h"

namespace loadwarden::demo {

namespace {

/// What is the matter with a load that its typed numbers hide, by day, sterilizer and turn.
constexpr struct {
    int day;
    int which;
    int turn;
    Matter matter;
} hidden[] = {{4, 1, 2, Matter::exposureInterrupted},
              {7, 1, 4, Matter::airInSteam},
              {8, 2, 3, Matter::settingTyped},
              {9, 1, 3, Matter::otherRecording}};

} // namespace

std::optional<Matter> hiddenMatter(int day, int which, int turn)
{
    for (const auto& each : hidden) {
        if (each.day == day && each.which == which && each.turn == turn) {
            return each.matter;
        }
    }
    return std::nullopt;
}

Matter drawnMatter(int drawn)
{
    return drawn < 8    ? Matter::implant
           : drawn < 11 ? Matter::frontOnBoundary
           : drawn < 13 ? Matter::wetPackage
           : drawn < 16 ? Matter::readingTypedWrongly
           : drawn < 18 ? Matter::readingMissing
           : drawn < 19 ? Matter::lowTemperature
           : drawn < 20 ? Matter::aborted
                        : Matter::nothing;
}

std::vector<simulation::Fault> faultsOf(Matter matter)
{
    using simulation::FaultKind;
    switch (matter) {
    case Matter::lowTemperature: return {{.kind = FaultKind::lowTemperature, .size = 0.6}};
    case Matter::exposureInterrupted:
        return {{.kind = FaultKind::interruptedExposure, .size = 30, .kelvin = 0.3}};
    case Matter::airInSteam: return {{.kind = FaultKind::residualAir, .size = 3}};
    case Matter::settingTyped: return {{.kind = FaultKind::shortDrying, .size = 780}};
    default: return {};
    }
}

} // namespace loadwarden::demo
