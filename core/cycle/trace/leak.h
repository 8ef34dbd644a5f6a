#pragma once

#include "core/cycle/trace/answer.h"
#include "core/cycle/trace/trace.h"

namespace loadwarden {

/// A rise of pressure in kPa a minute, in the units in which it is stated.
struct LeakRate {
    double kPaPerMinute = notKnown;

    [[nodiscard]] double mbarPerMinute() const { return kPaPerMinute * 10; }

    /// The conventional millimetre of mercury, 133.3224 Pa (NIST SP 811, appendix B.8).
    [[nodiscard]] double mmHgPerMinute() const { return kPaPerMinute / 0.1333224; }
};

/// The rate between two absolute, or two gauge, pressures in kPa; NaN where no time lies between
/// them.
[[nodiscard]] LeakRate leakRate(double fromKPa, double toKPa, double minutes);

/// A leak test: the sealed, evacuated chamber settles and then its pressure's rise is measured.
struct LeakTest {
    /// Whether settling and measuring both fit between evacuation and the letting in of air. Unless
    /// met, the rates are of what there was.
    Shown isComplete = Shown::open;
    double evacuatedSeconds = notKnown; ///< when first as deep as can be
    double evacuatedKPa = notKnown;
    double settledSeconds = notKnown; ///< where measuring begins; it ends with the vacuum
    double settledKPa = notKnown;
    double endSeconds = notKnown;
    double endKPa = notKnown;
    double settlingKPa = notKnown; ///< the rise while settling

    LeakRate byReadings;             ///< from the first and the last sample of measuring
    LeakRate byRegression;           ///< from the straight line through all of them
    double standardError = notKnown; ///< of byRegression, kPa a minute
    [[nodiscard]] double worstKPaPerMinute() const; ///< the greater of both; NaN where one is

    /// Change of the first temperature channel while measuring, and the rise of pressure that it
    /// explains in a gas: a warming chamber hides nothing but feigns a leak, a cooling one hides
    /// it.
    double temperatureChange = notKnown; ///< kelvin
    double explainedKPa = notKnown;
    bool isTemperatureDoubtful = false; ///< changed too much, or not measured
};

/// Measuring ends where air is let in (or with the trace) and lasts as long as the settings say;
/// settling lies before it. Counted from the end so that a pump that still runs after the vacuum is
/// reached hides no leak. All NaN without two samples of pressure.
[[nodiscard]] LeakTest leakTest(const Trace& trace, const TraceSettings& settings = {});

} // namespace loadwarden
