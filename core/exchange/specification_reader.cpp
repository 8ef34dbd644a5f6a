#include "core/exchange/specification_reader.h"

#include "core/cycle/limits.h"
#include "core/cycle/unit_range.h"
#include "core/exchange/toml_table.h"
#include "core/quantities/thousandths.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace loadwarden {

namespace {

constexpr std::size_t mostId = 60;
constexpr std::size_t mostName = 64;
constexpr std::size_t mostTitle = 200;
constexpr std::string_view idCharacters = "abcdefghijklmnopqrstuvwxyz0123456789-";

constexpr std::array<std::string_view, 4> methodWords = {"steam", "ethylene-oxide",
                                                         "hydrogen-peroxide", "dry-heat"};
constexpr std::array<std::string_view, 3> airRemovalWords = {"gravity", "prevacuum",
                                                             "steam-flush-pressure-pulse"};
constexpr std::array<std::string_view, 6> purposeWords = {
    "routine", "immediate-use", "warm-up", "bowie-dick", "leak", "qualification"};

/// What a unit is called in a specification's file.
struct UnitName {
    std::string_view key;
    Unit unit;
};

/// In the order in which a unit without a limit of its own looks for one.
constexpr std::array unitNames = {
    UnitName{"celsius", Unit::celsius},          UnitName{"fahrenheit", Unit::fahrenheit},
    UnitName{"minutes", Unit::minutes},          UnitName{"kpa_absolute", Unit::kPaAbsolute},
    UnitName{"bar_absolute", Unit::barAbsolute}, UnitName{"kpa_gauge", Unit::kPaGauge},
    UnitName{"bar_gauge", Unit::barGauge},       UnitName{"psi_gauge", Unit::psiGauge},
    UnitName{"mg_per_l", Unit::mgPerL},          UnitName{"percent", Unit::percent},
};

const Quantity* find(const std::vector<Quantity>& values, Unit unit)
{
    const auto found = std::find_if(values.begin(), values.end(),
                                    [&](const Quantity& value) { return value.unit == unit; });
    return found == values.end() ? nullptr : &*found;
}

std::string_view keyOf(Unit unit)
{
    const auto* found = std::find_if(unitNames.begin(), unitNames.end(),
                                     [&](const UnitName& name) { return name.unit == unit; });
    return found->key;
}

/// Whether a temperature stated in both scales is one temperature, rounded: at most 2 K apart.
bool scalesAgree(const Quantity& celsius, const Quantity& fahrenheit)
{
    constexpr std::int64_t most = 18'000; // in units of 1/9000 K
    return std::abs(celsius.thousandths * 9 - (fahrenheit.thousandths - 32'000) * 5) <= most;
}

class Reader {
public:
    explicit Reader(TomlTable root) : m_root(std::move(root)) {}

    CycleSpecification read()
    {
        head();
        settings();
        limits();
        for (const Limit& limit : m_specification.limits) {
            bounds(limit);
        }
        m_root.finish();
        return std::move(m_specification);
    }

private:
    void head()
    {
        m_root.whole("specification_version", 1, 1);
        if (auto id = m_root.text("id", mostId)) {
            if (id->find_first_not_of(idCharacters) != std::string::npos) {
                m_root.wrong(*m_root.optional("id"), "id", "may hold only a to z, 0 to 9 and -");
            }
            m_specification.id = std::move(*id);
        }
        m_specification.revision =
            static_cast<int>(m_root.whole("revision", 1, 99'999).value_or(0));
        m_root.text("title", mostTitle);
        const auto method = m_root.word("method", methodWords);
        if (method) {
            m_specification.method = static_cast<Method>(*method);
        }
        if (method && m_specification.method != Method::steam) {
            if (const toml::node* node = m_root.optional("air_removal")) {
                m_root.wrong(*node, "air_removal", "is stated for steam only");
            }
        } else if (const auto air = m_root.word("air_removal", airRemovalWords)) {
            m_specification.airRemoval = static_cast<AirRemoval>(*air);
        }
        if (const auto purpose = m_root.word("purpose", purposeWords)) {
            m_specification.purpose = static_cast<Purpose>(*purpose);
        }
        m_specification.cycleType = m_root.name("cycle_type", mostName).value_or("");
        if (m_root.has("program")) {
            m_specification.program = m_root.name("program", mostName).value_or("");
        }
        m_specification.extended = m_root.flag("extended").value_or(false);
    }

    /// The values of a table with source and confidence, at least one.
    std::vector<Quantity> values(TomlTable& table, Parameter parameter)
    {
        std::vector<Quantity> values;
        std::vector<std::string_view> fitting;
        bool wrong = false;
        for (const UnitName& unit : unitNames) {
            if (!fits(parameter, unit.unit)) {
                continue;
            }
            fitting.push_back(unit.key);
            const toml::node* node = table.optional(unit.key);
            if (node == nullptr) {
                continue;
            }
            const UnitRange range = rangeOf(unit.unit);
            const auto thousandths = thousandthsOf(*node, range.decimals);
            if (!thousandths || *thousandths < range.least * 1000
                || *thousandths > range.most * 1000) {
                table.wrong(*node, unit.key,
                            "must be a number from " + std::to_string(range.least) + " to "
                                + std::to_string(range.most) + " with at most "
                                + std::to_string(range.decimals) + " decimals");
                wrong = true;
                continue;
            }
            values.push_back({unit.unit, *thousandths});
        }
        if (values.empty() && !wrong) {
            table.wrong("", "states no value; at least one of: " + listed(fitting));
        }
        const Quantity* celsius = find(values, Unit::celsius);
        const Quantity* fahrenheit = find(values, Unit::fahrenheit);
        if (celsius != nullptr && fahrenheit != nullptr && !scalesAgree(*celsius, *fahrenheit)) {
            table.wrong(*table.optional("fahrenheit"), "fahrenheit",
                        "is not the same temperature as celsius (more than 2 K apart)");
        }
        table.provenance();
        table.finish();
        return values;
    }

    /// Those of the table under a key, none where there is no such table.
    std::vector<Quantity> valuesUnder(TomlTable& parent, std::string_view key, Parameter parameter)
    {
        if (!parent.has(key)) {
            return {};
        }
        auto table = parent.table(key);
        return table ? values(*table, parameter) : std::vector<Quantity>{};
    }

    static std::optional<std::int64_t> firstAsMs(const std::vector<Quantity>& times)
    {
        return times.empty() ? std::nullopt : std::optional(milliseconds(times.front()));
    }

    void settings()
    {
        if (!m_root.has("settings")) {
            return;
        }
        auto table = m_root.table("settings");
        if (!table) {
            return;
        }
        m_temperature = valuesUnder(*table, "temperature", Parameter::temperature);
        m_exposure = valuesUnder(*table, "exposure", Parameter::exposure);
        m_drying = valuesUnder(*table, "drying", Parameter::drying);
        if (!m_temperature.empty()) {
            m_specification.settings.temperature = m_temperature.front();
            if (m_temperature.size() > 1) {
                m_specification.settings.inFahrenheit = m_temperature.back();
            }
        }
        m_specification.settings.exposureMs = firstAsMs(m_exposure);
        m_specification.settings.dryingMs = firstAsMs(m_drying);
        table->finish();
    }

    void limits()
    {
        if (!m_root.has("limits")) {
            return;
        }
        auto table = m_root.table("limits");
        if (!table) {
            return;
        }
        for (std::size_t i = 0; i < parameterCount; ++i) {
            const auto parameter = static_cast<Parameter>(i);
            if (!table->has(textOf(parameter))) {
                continue;
            }
            auto limitTable = table->table(textOf(parameter));
            if (!limitTable) {
                continue;
            }
            if (!limitTable->has("least") && !limitTable->has("most")) {
                limitTable->wrong("", "states neither least nor most");
            }
            Limit limit{.parameter = parameter,
                        .least = valuesUnder(*limitTable, "least", parameter),
                        .most = valuesUnder(*limitTable, "most", parameter)};
            for (const Quantity& least : limit.least) {
                const Quantity* most = find(limit.most, least.unit);
                if (most != nullptr && least.thousandths > most->thousandths) {
                    limitTable->wrong("least." + std::string(keyOf(least.unit)), "lies above most");
                }
            }
            limitTable->finish();
            m_specification.limits.push_back(std::move(limit));
        }
        table->finish();
    }

    /// A program set outside the limits of its own record would never pass, or the limits are
    /// wrong.
    void bounds(const Limit& limit)
    {
        const std::string_view key = textOf(limit.parameter);
        const std::vector<Quantity>* set = limit.parameter == Parameter::temperature
                                               ? &m_temperature
                                           : limit.parameter == Parameter::exposure ? &m_exposure
                                           : limit.parameter == Parameter::drying   ? &m_drying
                                                                                    : nullptr;
        if (set == nullptr || set->empty()) {
            return;
        }
        auto table = m_root.table("settings")->table(key);
        for (const Quantity& value : *set) {
            const Quantity* least = find(limit.least, value.unit);
            const Quantity* most = find(limit.most, value.unit);
            if ((least != nullptr && value.thousandths < least->thousandths)
                || (most != nullptr && value.thousandths > most->thousandths)) {
                const std::string_view unit = keyOf(value.unit);
                table->wrong(*table->optional(unit), unit,
                             thousandthsText(value.thousandths)
                                 + " lies outside the limits of the record");
            }
        }
    }

    TomlTable m_root;
    CycleSpecification m_specification;
    std::vector<Quantity> m_temperature;
    std::vector<Quantity> m_exposure;
    std::vector<Quantity> m_drying;
};

} // namespace

std::variant<CycleSpecification, std::vector<SpecificationError>>
readSpecification(std::string_view toml, std::string fileName)
{
    TomlErrors errors(std::move(fileName));
    const std::optional<toml::table> file = parseToml(toml, errors);
    if (!file) {
        return std::move(errors).sorted();
    }
    CycleSpecification specification = Reader(TomlTable(*file, "", errors)).read();
    if (!errors.empty()) {
        return std::move(errors).sorted();
    }
    return specification;
}

} // namespace loadwarden
