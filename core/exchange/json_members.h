#pragma once

#include "core/quantities/word.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <set>
#include <string>
#include <utility>

namespace loadwarden {

using Json = nlohmann::ordered_json;

/// Reads members of an object; the first that is wrong is kept, and what comes after it is empty.
class JsonMembers {
public:
    JsonMembers(const Json& object, std::string place, std::string& problem)
        : m_object(object), m_place(std::move(place)), m_problem(problem)
    {
        if (!object.is_object()) {
            complain("", "must be an object in braces");
        }
    }

    [[nodiscard]] bool has(const char* name)
    {
        m_known.insert(name);
        return m_object.is_object() && m_object.contains(name);
    }

    template <class Table>
    [[nodiscard]] auto word(const char* name, const Table& table)
    {
        using Value = decltype(std::begin(table)->value);
        const Json* json = member(name);
        if (json != nullptr && json->is_string()) {
            if (const auto value = valueOf(table, json->template get_ref<const std::string&>())) {
                return *value;
            }
        }
        std::string words;
        for (const auto& each : table) {
            words += (words.empty() ? "\"" : ", \"") + std::string(each.text) + '"';
        }
        complain(name, "must be one of " + words);
        return Value{};
    }

    [[nodiscard]] std::string text(const char* name)
    {
        const Json* json = member(name);
        if (json == nullptr || !json->is_string()) {
            complain(name, "must be a text in quotation marks");
            return {};
        }
        return json->get<std::string>();
    }

    /// A whole number from `least` on.
    [[nodiscard]] std::size_t count(const char* name, std::size_t least, std::size_t most)
    {
        const Json* json = member(name);
        if (json == nullptr || !json->is_number_unsigned() || json->get<std::size_t>() < least
            || json->get<std::size_t>() > most) {
            complain(name, "must be a whole number from " + std::to_string(least) + " to "
                               + std::to_string(most));
            return least;
        }
        return json->get<std::size_t>();
    }

    [[nodiscard]] const Json& list(const char* name, std::size_t most)
    {
        static const Json none = Json::array();
        const Json* json = member(name);
        if (json == nullptr || !json->is_array() || json->size() > most) {
            complain(name, "must be a list in brackets of at most " + std::to_string(most));
            return none;
        }
        return *json;
    }

    [[nodiscard]] const Json& object(const char* name)
    {
        static const Json none = Json::object();
        const Json* json = member(name);
        if (json == nullptr) {
            complain(name, "must be an object in braces");
            return none;
        }
        return *json;
    }

    /// Complains of members that nobody asked for.
    void close()
    {
        if (!m_object.is_object()) {
            return;
        }
        for (const auto& [name, value] : m_object.items()) {
            if (!m_known.contains(name)) {
                complain(name, "is no member that this program knows; take it out");
            }
        }
    }

private:
    const Json* member(const char* name) { return has(name) ? &m_object.at(name) : nullptr; }

    void complain(const std::string& name, const std::string& what)
    {
        if (m_problem.empty()) {
            const std::string dot = m_place.empty() || name.empty() ? "" : ".";
            const std::string member = m_place + dot + name;
            m_problem = (member.empty() ? "The text" : '"' + member + '"') + ' ' + what + '.';
        }
    }

    const Json& m_object;
    std::string m_place;
    std::string& m_problem;
    std::set<std::string> m_known;
};

} // namespace loadwarden
