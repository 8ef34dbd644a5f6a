#include "core/cycle/limits.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

Limit steamTemperature()
{
    // CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), Table 7:
    // dynamic air removal at 132 °C (270 °F). The upper limit is of this test.
    return {Parameter::temperature,
            {{Unit::celsius, 132'000}, {Unit::fahrenheit, 270'000}},
            {{Unit::celsius, 135'000}}};
}

struct Judged {
    Quantity reading;
    Against least;
    Against most;
};

TEST(Limits, AreInclusiveAndJudgeByTheUnitThatWasTyped)
{
    const Judged table[] = {
        {{Unit::celsius, 131'990}, Against::beyond, Against::within},
        {{Unit::celsius, 132'000}, Against::within, Against::within},
        {{Unit::celsius, 135'000}, Against::within, Against::within},
        {{Unit::celsius, 135'010}, Against::within, Against::beyond},
        // 269.6 °F is 132 °C exactly, but a reading in Fahrenheit is judged by the limit in
        // Fahrenheit.
        {{Unit::fahrenheit, 269'600}, Against::beyond, Against::within},
        {{Unit::fahrenheit, 270'000}, Against::within, Against::within},
        // No upper limit in Fahrenheit: 275 °F is 135 °C exactly.
        {{Unit::fahrenheit, 275'000}, Against::within, Against::within},
        {{Unit::fahrenheit, 275'010}, Against::within, Against::beyond},
    };
    for (const Judged& row : table) {
        SCOPED_TRACE(row.reading.thousandths);
        EXPECT_EQ(checkLeast(steamTemperature(), row.reading, {}).against, row.least);
        EXPECT_EQ(checkMost(steamTemperature(), row.reading, {}).against, row.most);
    }
}

TEST(Limits, CompareGaugeWithAbsoluteOnlyByTheAtmosphere)
{
    const Limit limit{Parameter::pressure, {{Unit::kPaAbsolute, 304'200}}, {}};
    const auto atmosphere = AbsolutePressure::fromKPaThousandths(101'325);
    const Quantity gauge{Unit::kPaGauge, 202'875};
    EXPECT_EQ(checkLeast(limit, gauge, {}).against, Against::needsAtmosphere);
    EXPECT_EQ(checkLeast(limit, gauge, atmosphere).against, Against::within);
    EXPECT_EQ(checkLeast(limit, {Unit::kPaGauge, 202'874}, atmosphere).against, Against::beyond);
    EXPECT_EQ(checkLeast(limit, {Unit::barAbsolute, 3'042}, {}).against, Against::within);
    // NIST SP 811, appendix B.8: 1 psi is 6.894757 kPa; 29.424 psi is 202.8713 kPa, 29.425 is
    // 202.8782.
    EXPECT_EQ(checkLeast(limit, {Unit::psiGauge, 29'424}, atmosphere).against, Against::beyond);
    EXPECT_EQ(checkLeast(limit, {Unit::psiGauge, 29'425}, atmosphere).against, Against::within);
}

TEST(Limits, TakeMinutesAndSecondsAsTheSame)
{
    const Limit limit{Parameter::exposure, {{Unit::minutes, 4'000}}, {}};
    EXPECT_EQ(checkLeast(limit, {Unit::seconds, 240'000}, {}).against, Against::within);
    EXPECT_EQ(checkLeast(limit, {Unit::seconds, 239'999}, {}).against, Against::beyond);
    EXPECT_EQ(checkMost(limit, {Unit::minutes, 99'000}, {}).against, Against::noLimit);
}

} // namespace
} // namespace loadwarden
