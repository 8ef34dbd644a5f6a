#pragma once

#include "core/indicators/indicator.h"
#include "core/indicators/product.h"
#include "core/quantities/word.h"

namespace loadwarden {

/// What can be seen on a chemical indicator.
inline constexpr Word<Seen> chemicalSeenWords[] = {
    {"front-in-accept-zone", Seen::frontInAcceptZone},
    {"front-on-boundary", Seen::frontOnBoundary},
    {"front-short-of-boundary", Seen::frontShortOfBoundary},
    {"end-colour-reached", Seen::endColourReached},
    {"end-colour-partly", Seen::endColourPartly},
    {"unchanged", Seen::unchanged},
    {"uniform-complete", Seen::uniformComplete},
    {"uniform-incomplete", Seen::uniformIncomplete},
    {"not-uniform", Seen::notUniform},
    {"absent", Seen::absent},
    {"unclear", Seen::unclear},
};

/// What can be seen in a vial or a control.
inline constexpr Word<Seen> growthSeenWords[] = {
    {"growth", Seen::growth},
    {"no-growth", Seen::noGrowth},
    {"unclear", Seen::unclear},
};

inline constexpr Word<ProcessIndicator> processIndicatorWords[] = {
    {"changed", ProcessIndicator::changed},
    {"unchanged", ProcessIndicator::unchanged},
};

inline constexpr Word<FoundToBe> foundToBeWords[] = {
    {"control", FoundToBe::control},
    {"other-load", FoundToBe::otherLoad},
};

inline constexpr Word<IndicatorKind> indicatorKindWords[] = {
    {"chemical", IndicatorKind::chemical},
    {"biological", IndicatorKind::biological},
};

inline constexpr Word<Response> responseWords[] = {
    {"moving-front", Response::movingFront},
    {"colour", Response::colour},
    {"sheet", Response::sheet},
    {"growth", Response::growth},
};

inline constexpr Word<Species> speciesWords[] = {
    {"geobacillus-stearothermophilus", Species::geobacillusStearothermophilus},
    {"bacillus-atrophaeus", Species::bacillusAtrophaeus},
    {"other", Species::other},
};

inline constexpr Word<ControlReach> controlReachWords[] = {
    {"day", ControlReach::day},
    {"lot", ControlReach::lot},
    {"load", ControlReach::load},
};

} // namespace loadwarden
