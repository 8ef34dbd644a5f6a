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

// Names of one length: none begins with another.
constexpr std::array binds{":s10", ":s11", ":s12", ":s13", ":s14", ":s15", ":s16", ":s17",
                           ":s18", ":s19", ":s20", ":s21", ":s22", ":s23", ":s24", ":s25",
                           ":s26", ":s27", ":s28", ":s29", ":s30", ":s31", ":s32", ":s33",
                           ":s34", ":s35", ":s36", ":s37", ":s38", ":s39", ":s40", ":s41"};

std::string allBinds()
{
    std::string all;
    for (const char* const bind : binds) {
        all += (all.empty() ? "" : ", ") + std::string(bind);
    }
    return all;
}

std::vector<std::string> textsFor(const Dialect& dialect)
{
    const std::array<std::array<std::string, 2>, 3> places{
        {{"{bytes}", dialect.bytesOf("e.bytes")},
         {"{stored}", dialect.bytesOf("e.hash || e.bytes")},
         {"{each}", allBinds()}}};
    std::vector<std::string> all;
    for (const std::string_view text : texts) {
        std::string sql(text);
        for (const auto& [place, expression] : places) {
            if (const auto at = sql.find(place); at != std::string::npos) {
                sql.replace(at, place.size(), expression);
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

std::span<const char* const> eachBinds()
{
    return binds;
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
