#include "core/store/queries.h"

#include <array>
#include <vector>

namespace loadwarden {
namespace {

constexpr std::array texts{
#define LW_QUERY(name, sql) std::string_view(sql),
#include "core/store/queries.def"
#undef LW_QUERY
};

std::vector<std::string> textsFor(const Dialect& dialect)
{
    constexpr std::array<std::array<std::string_view, 2>, 2> places{
        {{"{bytes}", "e.bytes"}, {"{stored}", "e.hash || e.bytes"}}};
    std::vector<std::string> all;
    for (const std::string_view text : texts) {
        std::string sql(text);
        for (const auto& [place, expression] : places) {
            if (const auto at = sql.find(place); at != std::string::npos) {
                sql.replace(at, place.size(), dialect.bytesOf(expression));
            }
        }
        all.push_back(std::move(sql));
    }
    return all;
}

} // namespace

const std::string& sqlOf(Query query, const Dialect& dialect)
{
    static const std::vector<std::string> sqlite = textsFor(Dialect(Dialect::Engine::sqlite));
    static const std::vector<std::string> postgres = textsFor(Dialect(Dialect::Engine::postgres));
    const auto& all = dialect.engine() == Dialect::Engine::sqlite ? sqlite : postgres;
    return all[static_cast<std::size_t>(query)];
}

std::span<const NamedQuery> namedQueries()
{
    static constexpr std::array all{
#define LW_QUERY(name, sql) NamedQuery{Query::name, #name},
#include "core/store/queries.def"
#undef LW_QUERY
    };
    return all;
}

} // namespace loadwarden
