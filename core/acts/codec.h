#pragma once

#include "core/acts/any_act.h"

#include <nlohmann/json_fwd.hpp>

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace loadwarden {

/// Who did an act and signed for it on paper, where another typed it (ACTS.md, 1).
struct FromPaper {
    std::string by; ///< st-
    Role role = Role::operating;
};

/// The body of an entry.
struct ActBody {
    AnyAct act;
    std::optional<FromPaper> paper;
};

/// What is wrong with a body, in a sentence.
struct ActFault {
    std::string what;
};

/// Makes a body of one version of a kind into that of the next. Pure; the body that it is given may
/// hold anything. It may throw nlohmann::json::exception where it does not find what it needs.
struct Upcaster {
    std::string_view kind;
    std::int32_t from = 0; ///< version
    nlohmann::json (*up)(nlohmann::json body) = nullptr;
};

/// The upcasters of every version ever released.
[[nodiscard]] std::span<const Upcaster> upcasters();

/// The body in the journal's canonical form (core/journal/FORMAT.md), texts in normalization form
/// C. Whether its values are within their ranges is asked by decodeBody() only.
[[nodiscard]] std::string encodeBody(const ActBody& body);

/// Reads a body of a kind and version. A kind that is unknown, or a version newer than this
/// program, gives NotUnderstood; an older version is brought up. A body that is not exactly as
/// encodeBody() would write it is a fault: a member that does not belong there, a wrong type, a
/// value out of range, another spelling.
[[nodiscard]] std::variant<ActBody, ActFault>
decodeBody(std::string_view kind, std::int32_t version, std::string_view body,
           std::span<const Upcaster> upcasters = loadwarden::upcasters());

} // namespace loadwarden
