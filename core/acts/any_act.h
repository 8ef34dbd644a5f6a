#pragma once

#include "core/acts/kinds/cycle_acts.h"
#include "core/acts/kinds/floor_acts.h"
#include "core/acts/kinds/history_acts.h"
#include "core/acts/kinds/indicator_acts.h"
#include "core/acts/kinds/item_acts.h"
#include "core/acts/kinds/product_acts.h"
#include "core/acts/kinds/register_acts.h"
#include "core/acts/kinds/release_acts.h"
#include "core/acts/kinds/sterilizer_acts.h"
#include "core/acts/kinds/test_acts.h"
#include "core/acts/kinds/trace_acts.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

namespace loadwarden {

/// An act of a kind or a version that this program does not know, as it stands.
struct NotUnderstood {
    std::string kind;
    std::int32_t version = 1;
    std::string body;
};

/// The kinds of the list acts.def.
using ActVariant = std::variant<NotUnderstood
#define LW_ACT(Struct, kind, version, paper, subjects) , Struct
#include "core/acts/acts.def"
#undef LW_ACT
                                >;

/// Any act. What makes, copies, moves and destroys one is compiled once, in any_act.cpp: the code
/// for all the kinds would else be in every source that has an entry.
class AnyAct : public ActVariant {
public:
    AnyAct();
    AnyAct(NotUnderstood act);
#define LW_ACT(Struct, kind, version, paper, subjects) AnyAct(Struct act);
#include "core/acts/acts.def"
#undef LW_ACT
    AnyAct(const AnyAct& other);
    AnyAct(AnyAct&& other) noexcept;
    AnyAct& operator=(const AnyAct& other);
    AnyAct& operator=(AnyAct&& other) noexcept;
    ~AnyAct();
};

/// What the list says of a kind of acts.
struct KindOfAct {
    std::string_view kind;     ///< a dotted word
    std::int32_t version = 1;  ///< the newest that is known, and the one that is written
    bool fromPaper = false;    ///< may be typed for somebody who wrote it on paper
    std::string_view subjects; ///< as in acts.def
};

/// The kind of an act; of one that is not understood its own words, without subjects.
[[nodiscard]] KindOfAct kindOf(const AnyAct& act);

/// The kind of that name, or null.
[[nodiscard]] const KindOfAct* findKind(std::string_view kind);

/// The place in ActVariant of a kind that was found.
[[nodiscard]] std::size_t indexOf(const KindOfAct& kind);

} // namespace loadwarden
