#pragma once

#include "core/acts/kinds/values.h"
#include "core/cycle/specification.h"
#include "core/indicators/product.h"
#include "core/loads/item.h"
#include "core/packaging/packaging.h"
#include "core/quantities/act.h"
#include "core/sterilizers/sterilizer_record.h"

#include <cstdint>
#include <optional>
#include <string>

// Registers: whole values, the newest counts (ACTS.md, 2).

namespace loadwarden {

struct JournalOpened {
    std::string facility;
    std::string journal;
    std::string timeZone;
};

struct FacilityRecorded {
    std::string name;
    std::string timeZone;
    std::optional<TypedNumber> atmosphereKPa;
};

struct StaffRecorded {
    std::string name;
    Role role = Role::viewer;
    std::string badge; ///< empty: none
    bool active = true;
};

/// The hash of the PIN stands elsewhere.
struct StaffPinSet {};

struct PolicyRecorded {
    std::string name;
    std::int64_t revision = 1;
    std::string digest; ///< of the file's bytes, hexadecimal
    std::string toml;   ///< the file
};

struct SterilizerRecorded {
    std::string name; ///< as its printout calls it
    std::string model;
    std::int64_t testMinute = 0; ///< local minute of the day
    bool recordsConcentration = true;
    bool recordsHumidity = true;
    std::optional<SterilizerAeration> aeration;
};

/// The specification's id is its name here; the sp- id stands among the subjects.
struct SpecificationRecorded {
    CycleSpecification specification;
};

/// The product's id stands among the subjects.
struct ProductRecorded {
    std::string name;
    IndicatorProduct product;
};

struct ProductLotRecorded {
    std::string number;
    std::optional<Date> expires;
};

/// The packaging's id stands among the subjects.
struct PackagingRecorded {
    std::string name;
    Packaging packaging;
};

struct DeviceRecorded {
    Device device;
};

struct IncubatorRecorded {
    std::string name;
};

/// A key by which this journal is sealed from now on, beside those before it: a key was lost, or
/// another computer or user seals, too.
struct SealKeyRecorded {
    std::string key; ///< the public one, hexadecimal
    std::string why;
};

} // namespace loadwarden
