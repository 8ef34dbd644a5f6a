#pragma once

#include "core/acts/kinds/register_acts.h"
#include "core/desk/service_now.h"
#include "core/indicators/directions.h"
#include "core/store/read_snapshot.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// Something of a register under its name.
struct Choice {
    std::string id;
    std::string name;
};

struct PackagingChoice {
    std::string id; ///< pk-
    std::string name;
    MethodSet methods;
};

/// A lot of an indicator product, as one is put into a load.
struct LotChoice {
    std::string product; ///< pr-
    std::string lot;     ///< pl-
    std::string productName;
    std::string number;
    std::optional<Date> expires;
    IndicatorKind kind = IndicatorKind::chemical;
    Response response = Response::colour;
    int type = 0;      ///< ISO 11140-1, of a chemical one
    MethodSet methods; ///< that its product is for
    bool isRecalled = false;
    std::optional<ReadingDirections> directions; ///< of its product; nullopt: none registered

    /// Whether it says anything in a cycle of that method; true where that is not known.
    [[nodiscard]] bool fits(Method method) const
    {
        return !isRecalled && (method == Method::unknown || methods.contains(method));
    }
};

struct DeviceChoice {
    std::string id; ///< dv-
    Device device;
};

struct SpecificationChoice {
    std::string id; ///< sp-
    CycleSpecification specification;
};

struct SterilizerChoice {
    std::string id; ///< sz-
    std::string name;
    ServiceNow service;
    MethodSet methods; ///< of what it ran last; empty: nothing is known, or lookForMethods() was
                       ///< not asked

    bool aerates = false; ///< its aeration is stated, which only ethylene oxide asks for

    /// Whether a program of that method may be for it.
    [[nodiscard]] bool mayRun(Method method) const
    {
        return method == Method::unknown || methods.empty() || methods.contains(method);
    }
};

/// What the registers offer to somebody who prepares a load, each list in the order in which it was
/// first recorded.
struct Choices {
    std::vector<SterilizerChoice> sterilizers;
    std::vector<SpecificationChoice> specifications;
    std::vector<LotChoice> lots;
    std::vector<PackagingChoice> packagings;
    std::vector<DeviceChoice> devices;

    /// The lot of that id, or null.
    [[nodiscard]] const LotChoice* lot(std::string_view id) const;
};

/// As the registers stand now. Throws StoreError.
[[nodiscard]] Choices choicesOf(ReadSnapshot& snapshot);

/// Says of each sterilizer by which methods it works: what it ran last shows that, and that its
/// aeration is stated. Throws StoreError.
void lookForMethods(ReadSnapshot& snapshot, Choices& choices);

} // namespace loadwarden
