#include "core/exchange/policy_rows.h"

#include "core/exchange/milder_values.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/policy_settings.h"
#include "core/exchange/toml_table.h"
#include "core/quantities/thousandths.h"

#include <algorithm>

namespace loadwarden {
namespace {

std::string valueText(const toml::node& node)
{
    if (const auto* const word = node.as_string()) {
        return word->get();
    }
    if (const auto* const flag = node.as_boolean()) {
        return flag->get() ? "true" : "false";
    }
    if (const auto* const list = node.as_array()) {
        std::string text;
        for (const toml::node& each : *list) {
            text += (text.empty() ? "" : ", ") + valueText(each);
        }
        return text;
    }
    std::string text;
    if (const auto number = thousandthsOf(node, 3)) {
        appendThousandths(text, *number);
    }
    return text;
}

} // namespace

std::vector<PolicyRow> policyRows(std::string_view toml)
{
    TomlErrors errors("policy");
    const auto file = parseToml(toml, errors);
    if (!file) {
        return {};
    }
    const auto version = (*file)["policy_version"].value_or(settings::newestVersion);
    const toml::table defaults = toml::parse(defaultPolicyText());
    const std::vector<MilderValue> milder = milderValues(toml);
    std::vector<PolicyRow> rows;
    for (const settings::Setting& setting : settings::all) {
        const toml::table& from = setting.since <= version ? *file : defaults;
        const auto stated = from[setting.section][setting.name];
        const toml::node* const value = stated["value"].node();
        if (value == nullptr) {
            return {};
        }
        const std::string field =
            std::string(setting.section) + '.' + std::string(setting.name) + ".value";
        rows.push_back(
            {.section = std::string(setting.section),
             .name = std::string(setting.name),
             .value = valueText(*value),
             .source = stated["source"].value_or(std::string()),
             .confidence = stated["confidence"].value_or(std::string()),
             .isMilder = std::ranges::find(milder, field, &MilderValue::field) != milder.end()});
    }
    return rows;
}

std::vector<PolicyDifference> policyDifferences(std::string_view before, std::string_view after)
{
    const std::vector<PolicyRow> rowsBefore = policyRows(before);
    const std::vector<PolicyRow> rowsAfter = policyRows(after);
    std::vector<PolicyDifference> differences;
    for (std::size_t i = 0; i < std::min(rowsBefore.size(), rowsAfter.size()); ++i) {
        if (rowsBefore[i].value != rowsAfter[i].value) {
            differences.push_back({.section = rowsBefore[i].section,
                                   .name = rowsBefore[i].name,
                                   .before = rowsBefore[i].value,
                                   .after = rowsAfter[i].value});
        }
    }
    return differences;
}

} // namespace loadwarden
