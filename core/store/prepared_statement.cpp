#include "core/store/prepared_statement.h"

#include "core/store/store_error.h"

#include <utility>

namespace loadwarden {

void PreparedStatement::fail(const std::string& code, std::string words) const
{
    if (!code.empty()) {
        words += ", code " + code;
    }
    throw engineError(m_dialect.faultOf(code), std::move(words) + ", in: " + m_sql);
}

void PreparedStatement::noBind(std::string_view name) const
{
    throw engineError(StoreFault::misuse, "no bind " + std::string(name) + " in: " + m_sql);
}

void PreparedStatement::wrongType(int column) const
{
    throw engineError(StoreFault::damaged,
                      "column " + std::to_string(column) + " has no such value, in: " + m_sql);
}

} // namespace loadwarden
