#pragma once

#include "core/acts/kinds/register_acts.h"
#include "core/acts/kinds/sterilizer_acts.h"
#include "core/desk/names.h"
#include "core/desk/person.h"
#include "core/desk/service_now.h"
#include "core/indicators/indicator.h"
#include "core/quantities/date.h"
#include "core/quantities/zone.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// Something of a register, as its newest entry has it.
template <class Recorded>
struct Registered {
    std::string id;
    Recorded recorded;
    std::int64_t seq = 0;
    Instant at{};   ///< when that was recorded
    std::string by; ///< whose id stands there
};

struct RegisteredSterilizer : Registered<SterilizerRecorded> {
    ServiceNow service;
    std::optional<ClockCompared> clock; ///< as compared last
    std::vector<ListedAlarm> alarms;    ///< as classed, each code once: the worse counts
};

struct RegisteredIncubator : Registered<IncubatorRecorded> {
    std::vector<OutOfRange> outOfRange; ///< in the order in which it was put out

    /// The earliest moment from which it is out of range; nullopt: it is in range.
    [[nodiscard]] std::optional<Instant> outSince() const;
    /// Whether it would be in range if it were said to be so again since that moment.
    [[nodiscard]] bool isEndedBy(Instant moment) const;
};

struct RegisteredLot : Registered<ProductLotRecorded> {
    std::string product; ///< pr-
};

/// How a lot's expiry stands to a day.
enum class LotState : std::uint8_t {
    inDate,
    expiresSoon, ///< within the two weeks in which Today names it
    expired,
    notStated,
    slip ///< no shelf life is that long: it counts as not stated
};

[[nodiscard]] LotState lotState(const std::optional<Date>& expires, Date day);

using RegisteredProduct = Registered<ProductRecorded>;
using RegisteredSpecification = Registered<SpecificationRecorded>;
using RegisteredPackaging = Registered<PackagingRecorded>;
using RegisteredDevice = Registered<DeviceRecorded>;
using RegisteredPolicy = Registered<PolicyRecorded>;

/// What a supervisor looks after, each in the order in which it was first recorded.
struct Registers {
    Date day{}; ///< of the facility, by which lots expire
    std::vector<Person> people;
    std::vector<RegisteredSterilizer> sterilizers;
    std::vector<RegisteredSpecification> specifications;
    std::vector<RegisteredProduct> products;
    std::vector<RegisteredLot> lots;
    std::vector<RegisteredPackaging> packagings;
    std::vector<RegisteredDevice> devices;
    std::vector<RegisteredIncubator> incubators;
    std::vector<RegisteredPolicy> policies; ///< every revision, the newest first: it decides
    Names names;
};

/// What stands in the journal now. Throws StoreError.
[[nodiscard]] Registers registersOf(ReadSnapshot& snapshot, const Zone& zone, Instant now);

/// The least number with which no sterilizer's lot control numbers begin, for one more.
[[nodiscard]] std::string freeSterilizerNumber(const Registers& registers);

} // namespace loadwarden
