#pragma once

#include "core/store/queries.h"
#include "core/store/statement.h"

#include <algorithm>
#include <cstddef>
#include <span>

namespace loadwarden {

/// Binds values to eachBinds(); the last again where there are fewer.
template <class Value>
void bindEach(Statement& rows, std::span<const Value> some)
{
    const auto binds = eachBinds();
    for (std::size_t i = 0; i < binds.size(); ++i) {
        rows.bind(binds[i], some[std::min(i, some.size() - 1)]);
    }
}

/// Calls visit(some) for one part after the other of what is to be bound.
template <class Value, class Visit>
void forSome(std::span<const Value> all, Visit visit)
{
    for (std::size_t most = eachBinds().size(); !all.empty();
         all = all.subspan(std::min(most, all.size()))) {
        visit(all.first(std::min(most, all.size())));
    }
}

} // namespace loadwarden
