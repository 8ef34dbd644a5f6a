#pragma once

#include "core/indicators/product.h"
#include "core/indicators/type_set.h"
#include "core/quantities/instant.h"
#include "core/quantities/method.h"

#include <cstdint>
#include <string>

namespace loadwarden {

enum class ScopeBy : std::uint8_t { cycleType, sterilizer };
enum class MadeAfter : std::uint8_t { fails, review };
enum class AboveMaximum : std::uint8_t { review, fails };
enum class PcdRequirement : std::uint8_t { ifPlaced, required };
enum class BiFrequency : std::uint8_t { weekly, eachDay, everyLoad };
enum class BiReadout : std::uint8_t { release, last };
enum class ImplantHold : std::uint8_t { wholeLoad, implantsOnly };

/// What a facility has settled; the defaults are those of resources/policies/us-hospital.toml,
/// where each has its source. Field by field the setting named beside it.
struct Policy {
    std::string id = "us-hospital";
    int revision = 1;
    std::string title;
    std::string digest; ///< of the file's bytes, hexadecimal; empty where it came from no file

    Duration clockTolerance = Duration::minutes(5);     // printout.clock_tolerance_minutes
    Duration lateAfter = Duration::hours(4);            // acts.late_hours
    int failedPackages = 2;                             // process.failed_packages
    int rejectedForSupervisor = 2;                      // packages.rejected_for_supervisor
    int wetForSupervisor = 2;                           // packages.wet_for_supervisor
    ScopeBy scopeBy = ScopeBy::cycleType;               // scope.by
    bool airTestForGravity = false;                     // air_removal.also_for
    bool airTestForSteamFlush = false;                  // air_removal.also_for
    MadeAfter madeAfter = MadeAfter::fails;             // air_removal.made_after
    AboveMaximum aboveMaximum = AboveMaximum::review;   // physical.above_maximum
    bool traceAsked = false;                            // trace.asked
    bool passesFreeLine = true;                         // trace.passable_defects
    bool passesMidnight = true;                         // trace.passable_defects
    bool passesLastLineOpen = true;                     // trace.passable_defects
    std::int64_t traceDiffersUnits = 1800;              // trace.differs_kelvin, 1/1800 K
    Duration traceDiffers = Duration::seconds(60);      // trace.differs_seconds
    PcdRequirement pcdSteam = PcdRequirement::ifPlaced; // pcd.steam
    PcdRequirement pcdHydrogenPeroxide = PcdRequirement::ifPlaced; // pcd.hydrogen_peroxide
    PcdRequirement pcdDryHeat = PcdRequirement::ifPlaced;          // pcd.dry_heat
    TypeSet pcdTypesSteam{5, 6};                                   // pcd.types_steam
    TypeSet pcdTypesOther{1, 3, 4, 5, 6};                          // pcd.types_other
    TypeSet internalTypesSteam{3, 4, 5, 6};                        // internal.types_steam
    TypeSet internalTypesOther{1, 3, 4, 5, 6};                     // internal.types_other
    BiFrequency biSteam = BiFrequency::eachDay;                    // bi.steam
    BiFrequency biDryHeat = BiFrequency::eachDay;                  // bi.dry_heat
    BiFrequency biHydrogenPeroxide = BiFrequency::eachDay;         // bi.hydrogen_peroxide
    BiFrequency biEthyleneOxide = BiFrequency::everyLoad;          // bi.ethylene_oxide
    BiReadout readout = BiReadout::release;                        // bi.readout
    bool routineBlocks = false;                                    // bi.routine_blocks
    ImplantHold implantHold = ImplantHold::wholeLoad;              // implant.hold
    ControlReach controlPer = ControlReach::day;                   // control.per (day or load)
    Duration controlWindow = Duration::hours(2);                   // control.window_hours
    std::int64_t temperatureToleranceUnits = 900; // device.temperature_tolerance_kelvin, 1/1800 K
    Duration sheetReadWithin = Duration::minutes(60);     // bowie_dick.read_within_minutes
    std::int64_t leakMostThousandthsMbarPerMinute = 1300; // leak.most_mbar_per_minute
    Duration leakSettle = Duration::minutes(5);           // leak.settle_minutes
    Duration leakTest = Duration::minutes(10);            // leak.test_minutes

    friend bool operator==(const Policy&, const Policy&) = default;
};

} // namespace loadwarden
