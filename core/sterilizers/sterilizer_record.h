#pragma once

#include "core/loads/load_record.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

enum class CycleKind : std::uint8_t { load, warmUp, bowieDick, leak, qualification };

enum class FailureKind : std::uint8_t { physical, pcdRejected };

struct ProcessFailure {
    FailureKind kind = FailureKind::physical;
    Act act;

    friend bool operator==(const ProcessFailure&, const ProcessFailure&) = default;
};

enum class Reach : std::uint8_t { thatLoad, sterilizer };

/// Cause, action and reach of a process failure or of a failed test.
struct Resolution {
    bool causeKnown = false;
    Reach reach = Reach::thatLoad;
    std::string what;
    Act act;

    friend bool operator==(const Resolution&, const Resolution&) = default;
};

struct LeakReading {
    std::optional<std::int64_t> settledMs;
    std::optional<std::int64_t> testMs;
    std::optional<std::int64_t> riseThousandthsMbar;
    Act act;

    friend bool operator==(const LeakReading&, const LeakReading&) = default;
};

struct PhysicalStatement {
    bool good = false;
    Act act;

    friend bool operator==(const PhysicalStatement&, const PhysicalStatement&) = default;
};

/// A reason with its author.
struct SignedReason {
    std::string why;
    Act act;

    friend bool operator==(const SignedReason&, const SignedReason&) = default;
};

/// Another cycle of the same sterilizer: a load or a test.
struct HistoryCycle {
    CycleKind kind = CycleKind::load;
    std::string lot;
    Method method = Method::unknown;
    std::string cycleType;
    ClockSource clock = ClockSource::facility;
    Instant start{}; ///< as shown
    std::optional<Instant> end;
    std::optional<std::int64_t> counter;
    CycleOutcome outcome = CycleOutcome::unknown;
    std::vector<std::string> items;
    std::vector<ProcessFailure> failures;
    std::int64_t packagesRejectedOrWet = 0;
    std::vector<Resolution> resolutions;
    std::vector<Vial> vials;
    std::optional<ChemicalIndicator> sheet;
    std::optional<std::int64_t> exposureMs;
    std::optional<std::int64_t> exposureCelsiusHundredths;
    std::optional<bool> chamberEmpty;
    std::optional<bool> dryingRun;
    std::optional<SignedReason> voidReason;
    std::optional<LeakReading> leak;
    std::optional<PhysicalStatement> physical;
    std::vector<ChemicalIndicator> indicators;

    friend bool operator==(const HistoryCycle&, const HistoryCycle&) = default;
};

enum class ServiceState : std::uint8_t { inService, outOfService, qualification, held };

struct ServiceEntry {
    ServiceState state = ServiceState::inService;
    Act act;

    friend bool operator==(const ServiceEntry&, const ServiceEntry&) = default;
};

enum class AlarmEffect : std::uint8_t { harmless, exposureAffecting };

struct ListedAlarm {
    std::string code;
    AlarmEffect effect = AlarmEffect::exposureAffecting;

    friend bool operator==(const ListedAlarm&, const ListedAlarm&) = default;
};

/// Sterilizer's clock minus facility's clock, from a moment on.
struct ClockOffset {
    Instant from{};
    Duration offset{};

    friend bool operator==(const ClockOffset&, const ClockOffset&) = default;
};

struct Closing {
    std::string negativeLot;
    Act act;

    friend bool operator==(const Closing&, const Closing&) = default;
};

struct Incident {
    std::string positiveLot;
    std::vector<Closing> closings;

    friend bool operator==(const Incident&, const Incident&) = default;
};

struct SterilizerAeration {
    std::int64_t minutes = 0;
    std::int64_t celsiusHundredths = 0;

    friend bool operator==(const SterilizerAeration&, const SterilizerAeration&) = default;
};

/// A sterilizer and what is known of its other cycles.
struct SterilizerRecord {
    std::string id;
    std::string model;
    int testMinute = 0;               ///< minute of the local day at which its test period begins
    bool recordsConcentration = true; ///< of ethylene oxide; not said is yes
    bool recordsHumidity = true;      ///< of ethylene oxide; not said is yes
    std::optional<SterilizerAeration> aeration;
    std::vector<ListedAlarm> alarms;
    std::vector<ClockOffset> clockOffsets;
    std::vector<ServiceEntry> service;
    std::vector<HistoryCycle> cycles;
    std::vector<Incident> incidents;

    friend bool operator==(const SterilizerRecord&, const SterilizerRecord&) = default;
};

} // namespace loadwarden
