#pragma once

#include "core/acts/kinds/register_acts.h"
#include "core/desk/service_now.h"
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
    int type = 0; ///< ISO 11140-1, of a chemical one
};

struct SpecificationChoice {
    std::string id; ///< sp-
    CycleSpecification specification;
};

struct SterilizerChoice {
    std::string id; ///< sz-
    std::string name;
    ServiceNow service;
};

/// What the registers offer to somebody who prepares a load, each list in the order in which it was
/// first recorded.
struct Choices {
    std::vector<SterilizerChoice> sterilizers;
    std::vector<SpecificationChoice> specifications;
    std::vector<LotChoice> lots;
    std::vector<PackagingChoice> packagings;
    std::vector<Choice> devices;

    /// The lot of that id, or null.
    [[nodiscard]] const LotChoice* lot(std::string_view id) const;
};

/// As the registers stand now. Throws StoreError.
[[nodiscard]] Choices choicesOf(ReadSnapshot& snapshot);

} // namespace loadwarden
