#include "core/acts/any_act.h"

#include <algorithm>
#include <array>

namespace loadwarden {

AnyAct::AnyAct() = default;
AnyAct::AnyAct(NotUnderstood act) : ActVariant(std::move(act)) {}
#define LW_ACT(Struct, kind, version, paper, subjects)                                             \
    AnyAct::AnyAct(Struct act) : ActVariant(std::move(act)) {}
#include "core/acts/acts.def"
#undef LW_ACT
AnyAct::AnyAct(const AnyAct& other) = default;
AnyAct::AnyAct(AnyAct&& other) noexcept = default;
AnyAct& AnyAct::operator=(const AnyAct& other) = default;
AnyAct& AnyAct::operator=(AnyAct&& other) noexcept = default;
AnyAct::~AnyAct() = default;
namespace {

/// In the order of AnyAct, without its first.
constexpr std::array kinds{
#define LW_ACT(Struct, kind, version, paper, subjects) KindOfAct{kind, version, paper, subjects},
#include "core/acts/acts.def"
#undef LW_ACT
};

static_assert(kinds.size() + 1 == std::variant_size_v<ActVariant>);

} // namespace

KindOfAct kindOf(const AnyAct& act)
{
    if (const auto* unknown = std::get_if<NotUnderstood>(&act)) {
        return {unknown->kind, unknown->version, false, {}};
    }
    return kinds[act.index() - 1];
}

const KindOfAct* findKind(std::string_view kind)
{
    static constexpr auto byName = [] {
        std::array<const KindOfAct*, kinds.size()> all{};
        std::ranges::transform(kinds, all.begin(), [](const KindOfAct& each) { return &each; });
        std::ranges::sort(all, {}, [](const KindOfAct* each) { return each->kind; });
        return all;
    }();
    const auto found = std::ranges::lower_bound(byName, kind, {},
                                                [](const KindOfAct* each) { return each->kind; });
    return found == byName.end() || (*found)->kind != kind ? nullptr : *found;
}

std::size_t indexOf(const KindOfAct& kind)
{
    return static_cast<std::size_t>(&kind - kinds.data()) + 1;
}

} // namespace loadwarden
