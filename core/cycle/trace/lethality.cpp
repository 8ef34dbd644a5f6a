#include "core/cycle/trace/lethality.h"

#include "core/cycle/trace/countable.h"
#include "core/cycle/trace/lethal_kernel.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loadwarden {

namespace lethal_kernel {

const Kernel& chosen()
{
#if defined(LOADWARDEN_WIDE_LETHAL_KERNEL)
    static const bool isWide =
        __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("fma") != 0;
    return isWide ? wide : plain;
#else
    return plain;
#endif
}

} // namespace lethal_kernel

namespace {

constexpr double secondsInMinute = 60;

double slopeOf(const LethalReference& reference)
{
    return std::log(10.0) / reference.zKelvin;
}

/// Calls `counted(first, end)` for each stretch of samples that are joined by steps that count;
/// says in `result` what lies between them.
template <class Counted>
void eachStretch(std::span<const double> seconds, std::span<const double> celsius,
                 double mostStepSeconds, Lethality& result, Counted counted)
{
    const std::size_t samples = std::min(seconds.size(), celsius.size());
    bool leavingOut = false;
    for (std::size_t first = 0; first < samples;) {
        const std::size_t end =
            isCountable(celsius[first])
                ? stretchEnd(seconds.data(), celsius.data(), first, samples, mostStepSeconds)
                : first + 1;
        if (end - first > 1) {
            counted(first, end);
            leavingOut = false;
        }
        if (end < samples) {
            result.leftOutSeconds += seconds[end] - seconds[end - 1];
            result.gaps += leavingOut ? 0 : 1;
            leavingOut = true;
        }
        first = end;
    }
}

} // namespace

bool isSound(const LethalReference& reference)
{
    return reference.celsius >= 0 && reference.celsius <= 500 && reference.zKelvin >= 2
           && reference.zKelvin <= 100;
}

double lethalRate(double celsius, const LethalReference& reference)
{
    if (!isSound(reference) || !isCountable(celsius)) {
        return notKnown;
    }
    return std::exp(slopeOf(reference) * (celsius - reference.celsius));
}

Lethality lethality(std::span<const double> seconds, std::span<const double> celsius,
                    const LethalReference& reference, double mostStepSeconds)
{
    Lethality result;
    if (!isSound(reference)) {
        result.minutes = notKnown;
        return result;
    }
    const lethal_kernel::Kernel& kernel = lethal_kernel::chosen();
    const double slope = slopeOf(reference);
    double area = 0;
    eachStretch(seconds, celsius, mostStepSeconds, result, [&](std::size_t first, std::size_t end) {
        area += kernel.area(seconds.data() + first, celsius.data() + first, end - first,
                            reference.celsius, slope);
    });
    result.minutes = area / secondsInMinute;
    return result;
}

std::vector<double> cumulativeLethality(std::span<const double> seconds,
                                        std::span<const double> celsius,
                                        const LethalReference& reference, double mostStepSeconds)
{
    const std::size_t samples = std::min(seconds.size(), celsius.size());
    if (!isSound(reference)) {
        return std::vector<double>(samples, notKnown);
    }
    // First the rates, then in their place their sums: what is left out stays 0 until then.
    std::vector<double> minutes(samples, 0.0);
    std::vector<std::pair<std::size_t, std::size_t>> stretches;
    Lethality ignored;
    eachStretch(seconds, celsius, mostStepSeconds, ignored,
                [&](std::size_t first, std::size_t end) { stretches.emplace_back(first, end); });
    const lethal_kernel::Kernel& kernel = lethal_kernel::chosen();
    const double slope = slopeOf(reference);
    double sum = 0;
    std::size_t written = 0;
    for (const auto& [first, end] : stretches) {
        std::fill(minutes.begin() + static_cast<std::ptrdiff_t>(written),
                  minutes.begin() + static_cast<std::ptrdiff_t>(first), sum);
        kernel.rates(celsius.data() + first, minutes.data() + first, end - first, reference.celsius,
                     slope);
        double before = minutes[first];
        minutes[first] = sum;
        for (std::size_t i = first + 1; i < end; ++i) {
            const double rate = minutes[i];
            sum += (before + rate) / 2 * (seconds[i] - seconds[i - 1]) / secondsInMinute;
            before = rate;
            minutes[i] = sum;
        }
        written = end;
    }
    std::fill(minutes.begin() + static_cast<std::ptrdiff_t>(written), minutes.end(), sum);
    return minutes;
}

} // namespace loadwarden
