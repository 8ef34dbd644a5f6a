#include "core/exchange/milder_values.h"

#include "core/exchange/policy_reader.h"
#include "core/exchange/policy_settings.h"

#include <toml++/toml.h>

#include <algorithm>

namespace loadwarden {

namespace {

using settings::Choice;
using settings::Mildness;
using settings::Setting;

toml::node_view<const toml::node> valueOf(const toml::table& policy, const Setting& setting)
{
    return policy[setting.section][setting.name]["value"];
}

std::string wordOf(const toml::table& policy, const Setting& setting)
{
    return valueOf(policy, setting).value_or(std::string());
}

/// Only words can be milder; a number, a list or a flag that is milder is refused.
bool isMilder(const Setting& setting, std::string_view word)
{
    return std::ranges::any_of(setting.choices, [&](const Choice& choice) {
        return choice.text == word && choice.mildness == Mildness::named;
    });
}

} // namespace

std::vector<MilderValue> milderValues(std::string_view toml)
{
    const toml::table policy = toml::parse(toml);
    const toml::table defaults = toml::parse(defaultPolicyText());
    std::vector<MilderValue> milder;
    for (const Setting& setting : settings::all) {
        std::string word = wordOf(policy, setting);
        if (!isMilder(setting, word)) {
            continue;
        }
        const auto line = valueOf(policy, setting).node()->source().begin.line;
        milder.push_back({static_cast<int>(line),
                          std::string(setting.section) + '.' + std::string(setting.name) + ".value",
                          std::move(word), wordOf(defaults, setting)});
    }
    return milder;
}

} // namespace loadwarden
