#include "core/quantities/pressure.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdlib>
#include <stdexcept>
#include <type_traits>

namespace loadwarden {
namespace {

template <class A, class B>
concept Comparable = requires(A a, B b) { a < b; };

// A gauge reading must not be taken for an absolute one.
static_assert(!Comparable<AbsolutePressure, GaugePressure>);
static_assert(!std::is_convertible_v<GaugePressure, AbsolutePressure>);
static_assert(!std::is_convertible_v<AbsolutePressure, GaugePressure>);

TEST(Pressure, AgreesWithTheConversionFactors)
{
    // NIST Special Publication 811 (2008), appendix B.8: bar 1.0 E+05 Pa,
    // pound-force per square inch 6.894757 E+03 Pa.
    EXPECT_EQ(AbsolutePressure::fromBarThousandths(1'000).micropascals(), 100'000'000'000);
    EXPECT_EQ(AbsolutePressure::fromPsiThousandths(1'000).micropascals(), 6'894'757'000);
    EXPECT_EQ(AbsolutePressure::fromKPaThousandths(100'000),
              AbsolutePressure::fromBarThousandths(1'000));
    // From exact definitions (memory): the pound is 0.45359237 kg, the inch 0.0254 m, standard
    // gravity 9.80665 m/s2; the published factor is this rounded to seven figures.
    const double exact = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
    const auto held = static_cast<double>(GaugePressure::fromPsiThousandths(1'000).micropascals());
    EXPECT_NEAR(held / 1e6, exact, 0.0005);
    // The standard atmosphere, 101.325 kPa, is 14.696 psi (SP 811, B.8 and common tables).
    const auto difference = AbsolutePressure::fromKPaThousandths(101'325).micropascals()
                            - AbsolutePressure::fromPsiThousandths(14'696).micropascals();
    EXPECT_LT(std::abs(difference), 6'894'757 / 2); // less than half of the last figure
}

TEST(Pressure, GaugeBecomesAbsoluteWithTheAtmosphere)
{
    const auto atmosphere = AbsolutePressure::fromKPaThousandths(101'325);
    // 134 °C is 304.20 kPa absolute on the saturation line (IAPWS R7-97, region 4): 202.875 kPa
    // gauge at sea level.
    const auto gauge = GaugePressure::fromKPaThousandths(202'875);
    EXPECT_EQ(gauge + atmosphere, AbsolutePressure::fromKPaThousandths(304'200));
    EXPECT_EQ(AbsolutePressure::fromKPaThousandths(304'200) - atmosphere, gauge);
    // Vacuum is a negative gauge pressure.
    EXPECT_EQ(GaugePressure::fromBarThousandths(-950) + AbsolutePressure::fromBarThousandths(1'000),
              AbsolutePressure::fromBarThousandths(50));
    EXPECT_LT(GaugePressure::fromBarThousandths(-950), GaugePressure::fromKPaThousandths(0));
}

TEST(Pressure, RefusesBeyondTenThousandBar)
{
    EXPECT_NO_THROW(static_cast<void>(AbsolutePressure::fromBarThousandths(10'000'000)));
    EXPECT_THROW(static_cast<void>(AbsolutePressure::fromBarThousandths(10'000'001)),
                 std::out_of_range);
    EXPECT_THROW(static_cast<void>(GaugePressure::fromKPaThousandths(INT64_MIN)),
                 std::out_of_range);
    EXPECT_THROW(static_cast<void>(GaugePressure::fromPsiThousandths(INT64_MAX)),
                 std::out_of_range);
    const auto most = AbsolutePressure::fromBarThousandths(10'000'000);
    EXPECT_THROW(static_cast<void>(GaugePressure::fromBarThousandths(1) + most), std::out_of_range);
}

} // namespace
} // namespace loadwarden
