#include "core/cycle/trace/certificate.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

constexpr double survivalPowers = -2;
constexpr double killPowers = 4;

} // namespace

double minutesFor(double powersOfTen, double dMinutes)
{
    return dMinutes > 0 ? powersOfTen * dMinutes : notKnown;
}

ResistanceWindow resistanceWindow(double count, double dMinutes)
{
    if (!(count > 0) || !(dMinutes > 0)) {
        return {notKnown, notKnown};
    }
    const double powers = std::log10(count);
    return {minutesFor(std::max(powers + survivalPowers, 0.0), dMinutes),
            minutesFor(std::max(powers + killPowers, 0.0), dMinutes)};
}

CertificateCheck checkCertificate(double count, double dMinutes, const ResistanceWindow& claimed,
                                  double slackMinutes)
{
    CertificateCheck check;
    check.implied = resistanceWindow(count, dMinutes);
    check.survivalShort = claimed.survivalMinutes < check.implied.survivalMinutes - slackMinutes;
    check.killLong = claimed.killMinutes > check.implied.killMinutes + slackMinutes;
    return check;
}

} // namespace loadwarden
