#pragma once

#include "core/acts/any_act.h"
#include "core/quantities/act.h"

#include <cstdint>
#include <span>
#include <string_view>

namespace loadwarden {

/// What a person can ask of the program: an act of each kind, and what leaves no act.
enum class Task : std::uint8_t {
#define LW_RIGHT(Struct, least, signs) Struct,
#define LW_TASK(task, least, signs) task,
#include "core/desk/rights.def"
#undef LW_RIGHT
#undef LW_TASK
};

/// Who may do it.
struct Right {
    Task task{};
    std::string_view name;  ///< as in rights.def
    bool isProgram = false; ///< done by the program, asked for by nobody
    Role least = Role::supervisor;
    bool signs = false; ///< a PIN is asked for each time
};

/// The whole table, in the order of Task.
[[nodiscard]] std::span<const Right> rights();

[[nodiscard]] const Right& rightOf(Task task);

/// The task of recording an act of that kind; of one that is not understood there is none:
/// JournalOpened, which nobody may do.
[[nodiscard]] Task taskOf(const AnyAct& act);

/// Whether the role is enough for the task.
[[nodiscard]] bool mayDo(Role role, Task task);

} // namespace loadwarden
