#pragma once

#include "core/cycle/trace/settings.h"

namespace loadwarden {

/// The times at the reference temperature that a biological indicator's population and D value
/// imply (ISO 11138-1, USP; restated): it survives at least (log10 N0 − 2)·D and is killed within
/// (log10 N0 + 4)·D. Minutes; NaN where N0 or D is not above 0. Few organisms survive no time that
/// could be promised: then 0.
struct ResistanceWindow {
    double survivalMinutes = 0;
    double killMinutes = 0;
};

[[nodiscard]] ResistanceWindow resistanceWindow(double count, double dMinutes);

/// Minutes at the reference that lower a population by so many powers of ten; NaN where D is not
/// above 0.
[[nodiscard]] double minutesFor(double powersOfTen, double dMinutes);

/// What a certificate claims against what its own N0 and D imply.
struct CertificateCheck {
    ResistanceWindow implied;
    /// Claimed survival time below, or kill time above, what is implied by more than the slack.
    /// What is NaN on either side is not judged.
    bool survivalShort = false;
    bool killLong = false;
};

/// `slackMinutes` allows for the rounding of printed times (common practice, no source).
[[nodiscard]] CertificateCheck checkCertificate(double count, double dMinutes,
                                                const ResistanceWindow& claimed,
                                                double slackMinutes = 0.05);

} // namespace loadwarden
