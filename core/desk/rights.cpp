#include "core/desk/rights.h"

#include <array>
#include <cstddef>
#include <type_traits>

namespace loadwarden {
namespace {

// The words of rights.def.
struct Least {
    Role role = Role::supervisor;
    bool isProgram = false;
};

constexpr Least program{Role::supervisor, true};
constexpr Least viewer{Role::viewer};
constexpr Least operating{Role::operating};
constexpr Least lead{Role::lead};
constexpr Least supervisor{Role::supervisor};

constexpr Right row(Task task, std::string_view name, Least least, bool signs)
{
    return {task, name, least.isProgram, least.role, signs};
}

constexpr std::array table = {
#define LW_RIGHT(Struct, least, signs) row(Task::Struct, #Struct, least, signs),
#define LW_TASK(task, least, signs) row(Task::task, #task, least, signs),
#include "core/desk/rights.def"
#undef LW_RIGHT
#undef LW_TASK
};

// The acts of rights.def are those of acts.def in the same order, behind NotUnderstood.
constexpr std::size_t actCount = 0
#define LW_RIGHT(Struct, least, signs) +1
#define LW_TASK(task, least, signs)
#include "core/desk/rights.def"
#undef LW_RIGHT
#undef LW_TASK
    ;
static_assert(actCount + 1 == std::variant_size_v<ActVariant>, "rights.def lacks a kind of act");

template <class Struct, Task task>
constexpr bool stands =
    std::is_same_v<std::variant_alternative_t<static_cast<std::size_t>(task) + 1, ActVariant>,
                   Struct>;
#define LW_RIGHT(Struct, least, signs)                                                             \
    static_assert(stands<Struct, Task::Struct>, "rights.def is not in the order of acts.def");
#define LW_TASK(task, least, signs)
#include "core/desk/rights.def"
#undef LW_RIGHT
#undef LW_TASK

} // namespace

std::span<const Right> rights()
{
    return table;
}

const Right& rightOf(Task task)
{
    return table[static_cast<std::size_t>(task)];
}

Task taskOf(const AnyAct& act)
{
    return act.index() == 0 ? Task::JournalOpened : static_cast<Task>(act.index() - 1);
}

bool mayDo(Role role, Task task)
{
    const Right& right = rightOf(task);
    return !right.isProgram && role >= right.least;
}

} // namespace loadwarden
