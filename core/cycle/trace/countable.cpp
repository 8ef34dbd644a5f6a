#include "core/cycle/trace/countable.h"

#include <cstdint>

namespace loadwarden {
namespace {

/// The first place from `i` on, in steps of whole pieces, at whose piece something does not count.
/// Pieces of fixed length without a way out of their middle let the compiler test several samples
/// at once.
[[gnu::always_inline]] inline std::size_t wholePieces(const double* seconds, const double* celsius,
                                                      std::size_t i, std::size_t samples,
                                                      double mostStepSeconds)
{
    constexpr std::size_t piece = 32;
    for (; i + piece <= samples; i += piece) {
        std::int64_t counted = 0;
        for (std::size_t k = i; k < i + piece; ++k) {
            counted += static_cast<std::int64_t>(celsius[k] >= leastCountable)
                       & static_cast<std::int64_t>(celsius[k] <= mostCountable)
                       & static_cast<std::int64_t>(seconds[k] - seconds[k - 1] <= mostStepSeconds);
        }
        if (counted != static_cast<std::int64_t>(piece)) {
            break;
        }
    }
    return i;
}

#if defined(__x86_64__)
[[gnu::target("avx2")]] std::size_t wholePiecesWide(const double* seconds, const double* celsius,
                                                    std::size_t i, std::size_t samples,
                                                    double mostStepSeconds)
{
    return wholePieces(seconds, celsius, i, samples, mostStepSeconds);
}

bool isWide()
{
    static const bool is = __builtin_cpu_supports("avx2") != 0;
    return is;
}
#else
std::size_t wholePiecesWide(const double* seconds, const double* celsius, std::size_t i,
                            std::size_t samples, double mostStepSeconds)
{
    return wholePieces(seconds, celsius, i, samples, mostStepSeconds);
}

bool isWide()
{
    return false;
}
#endif

} // namespace

std::size_t stretchEnd(const double* seconds, const double* celsius, std::size_t first,
                       std::size_t samples, double mostStepSeconds)
{
    std::size_t i = first + 1;
    i = isWide() ? wholePiecesWide(seconds, celsius, i, samples, mostStepSeconds)
                 : wholePieces(seconds, celsius, i, samples, mostStepSeconds);
    while (i < samples && isCountable(celsius[i])
           && seconds[i] - seconds[i - 1] <= mostStepSeconds) {
        ++i;
    }
    return i;
}

} // namespace loadwarden
