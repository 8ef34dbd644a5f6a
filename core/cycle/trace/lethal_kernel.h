#pragma once

#include <cstddef>

/// The inner loops over lethal rates, built twice from lethal_kernel.inc. All values finite, no
/// exponent beyond that of a double: see lethality.cpp, the only caller.
namespace loadwarden::lethal_kernel {

/// The trapezoid rule over exp(slope·(celsius − reference)) in the unit of `seconds`; 0 for fewer
/// than two samples.
using Area = double (*)(const double* seconds, const double* celsius, std::size_t samples,
                        double reference, double slope);

/// rates[i] = exp(slope·(celsius[i] − reference)).
using Rates = void (*)(const double* celsius, double* rates, std::size_t samples, double reference,
                       double slope);

struct Kernel {
    Area area;
    Rates rates;
};

/// For every processor.
extern const Kernel plain;

/// For processors with AVX2 and FMA; the same as `plain` where it was not built.
extern const Kernel wide;

/// The one for this processor.
[[nodiscard]] const Kernel& chosen();

} // namespace loadwarden::lethal_kernel
