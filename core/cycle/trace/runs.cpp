#include "core/cycle/trace/runs.h"

#include <algorithm>

namespace loadwarden {

std::vector<SampleRange> runsInBand(std::span<const double> seconds,
                                    std::span<const SampleState> states, double mostStepSeconds)
{
    std::vector<SampleRange> runs;
    for (std::size_t i = 0; i < states.size(); ++i) {
        if (states[i] != SampleState::inBand) {
            continue;
        }
        const bool goesOn = !runs.empty() && runs.back().last + 1 == i
                            && seconds[i] - seconds[i - 1] <= mostStepSeconds;
        if (goesOn) {
            runs.back().last = i;
        } else {
            runs.push_back({i, i});
        }
    }
    return runs;
}

double longestPossible(std::span<const double> seconds, std::span<const SampleState> states)
{
    // Time in the band is looked for where it was seen; where it never was, anywhere between
    // samples.
    const bool wasSeen = std::ranges::find(states, SampleState::inBand) != states.end();
    const SampleState sought = wasSeen ? SampleState::inBand : SampleState::notMeasured;
    double longest = 0;
    double outside = -unbounded; // the last moment known to be outside
    bool isPossible = false;     // since then
    for (std::size_t i = 0; i < states.size(); ++i) {
        isPossible = isPossible || states[i] == sought;
        if (isKnownOutside(states[i])) {
            if (isPossible) {
                longest = std::max(longest, seconds[i] - outside);
            }
            outside = seconds[i];
            isPossible = !wasSeen;
        }
    }
    const bool isOpen = wasSeen ? isPossible : !states.empty() && !isKnownOutside(states.back());
    return isOpen ? unbounded : longest;
}

Moment beginOf(std::span<const double> seconds, std::span<const SampleState> states,
               std::size_t first)
{
    for (std::size_t i = first; i > 0; --i) {
        if (isKnownOutside(states[i - 1])) {
            return {seconds[i - 1], seconds[first]};
        }
    }
    return {-unbounded, seconds[first]};
}

Moment endOf(std::span<const double> seconds, std::span<const SampleState> states, std::size_t last)
{
    for (std::size_t i = last + 1; i < states.size(); ++i) {
        if (isKnownOutside(states[i])) {
            return {seconds[last], seconds[i]};
        }
    }
    return {seconds[last], unbounded};
}

} // namespace loadwarden
