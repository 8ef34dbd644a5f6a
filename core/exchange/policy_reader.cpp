#include "core/exchange/policy_reader.h"

#include "core/exchange/embedded.h"
#include "core/exchange/policy_settings.h"
#include "core/exchange/toml_table.h"
#include "core/quantities/thousandths.h"

#include <QByteArrayView>
#include <QCryptographicHash>

#include <algorithm>
#include <stdexcept>

namespace loadwarden {

namespace {

using settings::Choice;
using settings::Kind;
using settings::Mildness;
using settings::Setting;
using settings::Value;

constexpr std::size_t mostTitle = 200;
constexpr std::size_t mostId = 60;

constexpr std::string_view idCharacters = "abcdefghijklmnopqrstuvwxyz0123456789-";

std::string choicesText(std::span<const Choice> choices)
{
    std::string text;
    for (const Choice& choice : choices) {
        if (choice.mildness == Mildness::refused) {
            continue;
        }
        text += text.empty() ? "" : ", ";
        text += choice.text;
        text += choice.mildness == Mildness::named ? " (milder)" : "";
    }
    return text;
}

std::string typesText(std::span<const int> types)
{
    std::string text;
    for (const int type : types) {
        text += (text.empty() ? "" : ", ") + std::to_string(type);
    }
    return text;
}

const Choice* find(std::span<const Choice> choices, const toml::node& node)
{
    const auto* string = node.as_string();
    if (string == nullptr) {
        return nullptr;
    }
    const auto found = std::find_if(choices.begin(), choices.end(), [&](const Choice& choice) {
        return choice.text == string->get();
    });
    return found == choices.end() ? nullptr : &*found;
}

/// Reads one setting's value; what it cannot accept it says and answers nullopt.
class ValueReader {
public:
    ValueReader(const Setting& setting, TomlTable& table) : m_setting(setting), m_table(table) {}

    std::optional<Value> read()
    {
        if (m_setting.kind == Kind::flag) {
            const std::optional<bool> flag = m_table.flag(key);
            return flag ? std::optional(Value{.choice = *flag ? 1U : 0U}) : std::nullopt;
        }
        const toml::node* node = m_table.required(key);
        if (node == nullptr) {
            return std::nullopt;
        }
        switch (m_setting.kind) {
        case Kind::number: return number(*node);
        case Kind::word: return word(*node);
        case Kind::words: return words(*node);
        case Kind::types: return types(*node);
        case Kind::flag: break;
        }
        return std::nullopt;
    }

private:
    static constexpr std::string_view key = "value";

    std::nullopt_t refuse(const toml::node& where, std::string message)
    {
        m_table.wrong(where, key, std::move(message));
        return std::nullopt;
    }

    std::optional<Value> number(const toml::node& node)
    {
        const std::string allowed = "allowed: " + thousandthsText(m_setting.least) + " to "
                                    + thousandthsText(m_setting.most);
        if (!node.is_number()) {
            return refuse(node, "must be a number; " + allowed);
        }
        const std::optional<std::int64_t> value = thousandthsOf(node, m_setting.decimals);
        if (!value) {
            return refuse(node, m_setting.decimals == 0 ? "must be a whole number; " + allowed
                                                        : "must be a number with at most "
                                                              + std::to_string(m_setting.decimals)
                                                              + " decimals; " + allowed);
        }
        const bool above = *value > m_setting.most;
        if (!above && *value >= m_setting.least) {
            return Value{.thousandths = *value};
        }
        const bool milder = above == (m_setting.milder == settings::Milder::above);
        return refuse(node, thousandthsText(*value)
                                + (milder ? " is milder than the default; " : " is out of range; ")
                                + allowed);
    }

    std::optional<Value> word(const toml::node& node)
    {
        const std::string allowed = "allowed: " + choicesText(m_setting.choices);
        const Choice* choice = find(m_setting.choices, node);
        if (choice == nullptr) {
            return refuse(node, "must be one of the words allowed; " + allowed);
        }
        if (choice->mildness == Mildness::refused) {
            return refuse(node,
                          std::string(choice->text) + " is milder than the default; " + allowed);
        }
        return Value{.choice = static_cast<std::size_t>(choice - m_setting.choices.data())};
    }

    std::optional<Value> words(const toml::node& node)
    {
        const std::string allowed = "allowed: any of " + choicesText(m_setting.choices);
        const auto* list = node.as_array();
        if (list == nullptr) {
            return refuse(node, "must be a list; " + allowed);
        }
        Value value;
        bool good = true;
        for (const toml::node& entry : *list) {
            const Choice* choice = find(m_setting.choices, entry);
            if (choice == nullptr) {
                refuse(entry, "holds what is not allowed; " + allowed);
                good = false;
                continue;
            }
            const std::size_t bit = std::size_t{1} << (choice - m_setting.choices.data());
            if ((value.bits & bit) != 0) {
                refuse(entry, "names " + std::string(choice->text) + " twice");
                good = false;
            }
            value.bits |= bit;
        }
        return good ? std::optional(value) : std::nullopt;
    }

    std::optional<Value> types(const toml::node& node)
    {
        const std::string allowed =
            "allowed: " + typesText(m_setting.allowed) + " or a part of them";
        const auto* list = node.as_array();
        if (list == nullptr) {
            return refuse(node, "must be a list; " + allowed);
        }
        if (list->empty()) {
            return refuse(node, "must not be empty: no indicator would count; " + allowed);
        }
        Value value;
        bool good = true;
        for (const toml::node& entry : *list) {
            const auto* whole = entry.as_integer();
            const auto found = whole == nullptr ? m_setting.allowed.end()
                                                : std::find(m_setting.allowed.begin(),
                                                            m_setting.allowed.end(), whole->get());
            if (found == m_setting.allowed.end()) {
                refuse(entry, whole != nullptr && whole->get() >= 1 && whole->get() <= 6
                                  ? "type " + std::to_string(whole->get())
                                        + " is milder than the default; " + allowed
                                  : "holds what is not an ISO 11140-1 type; " + allowed);
                good = false;
                continue;
            }
            if (value.types.contains(*found)) {
                refuse(entry, "names type " + std::to_string(*found) + " twice");
                good = false;
            }
            value.types.add(*found);
        }
        return good ? std::optional(value) : std::nullopt;
    }

    const Setting& m_setting;
    TomlTable& m_table;
};

void readSetting(const Setting& setting, TomlTable& section, Policy& policy)
{
    std::optional<TomlTable> table = section.table(setting.name);
    if (!table) {
        return;
    }
    if (const std::optional<Value> value = ValueReader(setting, *table).read()) {
        setting.set(policy, *value);
    }
    table->provenance();
    table->finish();
}

/// Answers the policy_version by which the settings are read.
int readHead(TomlTable& root, Policy& policy)
{
    const auto version = root.whole("policy_version", 1, settings::newestVersion);
    if (const auto id = root.text("id", mostId)) {
        if (id->find_first_not_of(idCharacters) != std::string::npos) {
            root.wrong(*root.optional("id"), "id", "may hold only a to z, 0 to 9 and -");
        }
        policy.id = *id;
    }
    if (const auto revision = root.whole("revision", 1, 100'000)) {
        policy.revision = static_cast<int>(*revision);
    }
    policy.title = root.text("title", mostTitle).value_or("");
    return static_cast<int>(version.value_or(settings::newestVersion));
}

void readSettings(TomlTable& root, int version, Policy& policy)
{
    const auto isStated = [version](const Setting& setting) { return setting.since <= version; };
    auto next = std::ranges::find_if(settings::all, isStated);
    while (next != settings::all.end()) {
        const std::string_view name = next->section;
        std::optional<TomlTable> section = root.has(name) ? root.table(name) : std::nullopt;
        if (!section && !root.has(name)) {
            root.optional(name);
        }
        for (; next != settings::all.end() && next->section == name;
             next = std::find_if(next + 1, settings::all.end(), isStated)) {
            if (section) {
                readSetting(*next, *section, policy);
            } else if (!root.has(name)) {
                root.wrong(std::string(name) + "." + std::string(next->name), "is missing");
            }
        }
        if (section) {
            section->finish();
        }
    }
}

std::string digestOf(std::string_view bytes)
{
    return QCryptographicHash::hash(QByteArray(bytes.data(), static_cast<qsizetype>(bytes.size())),
                                    QCryptographicHash::Sha256)
        .toHex()
        .toStdString();
}

/// Whether a policy bears the id of another without being the same; titles may differ.
bool borrowsId(const Policy& policy, const Policy& owner)
{
    Policy same = owner;
    same.title = policy.title;
    same.digest = policy.digest;
    return policy.id == owner.id && policy != same;
}

/// `known` is the policy whose id is taken; none: every id is free.
std::variant<Policy, std::vector<PolicyError>> read(std::string_view toml, std::string fileName,
                                                    const Policy* known)
{
    TomlErrors errors(std::move(fileName));
    const std::optional<toml::table> file = parseToml(toml, errors);
    if (!file) {
        return std::move(errors).sorted();
    }
    Policy policy;
    TomlTable root(*file, "", errors);
    const int version = readHead(root, policy);
    readSettings(root, version, policy);
    root.finish();
    if (errors.empty() && known != nullptr && borrowsId(policy, *known)) {
        root.wrong(*root.optional("id"), "id",
                   policy.id
                       + " is the id of the default policy, and this file has other settings or "
                         "another revision; give your copy an id of its own");
    }
    if (!errors.empty()) {
        return std::move(errors).sorted();
    }
    policy.digest = digestOf(toml);
    return policy;
}

} // namespace

std::variant<Policy, std::vector<PolicyError>> readPolicy(std::string_view toml,
                                                          std::string fileName)
{
    return read(toml, std::move(fileName), &defaultPolicy());
}

std::string_view defaultPolicyText()
{
    return embedded::policies().front().text;
}

const Policy& defaultPolicy()
{
    static const Policy policy = [] {
        auto answer = read(defaultPolicyText(), "us-hospital.toml", nullptr);
        if (const auto* errors = std::get_if<std::vector<PolicyError>>(&answer)) {
            throw std::logic_error("the default policy is not valid: " + textOf(errors->front()));
        }
        return std::get<Policy>(std::move(answer));
    }();
    return policy;
}

} // namespace loadwarden
