#pragma once

#include "core/acts/bodies/rules.h"

#include <algorithm>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

// One description of a body serves writing and reading: a function template
//
//     template <class Io> void members(Io& io, Ref<Io, CycleStarted> act)
//     {
//         io.must("clock", act.clock, oneOf<clockWords>);
//         io.may("counter", act.counter, aCounter);
//     }
//
// for every struct, found by its argument. LW_BODY makes the two functions of it.

namespace loadwarden::body_format {

/// What members() takes: the writer looks, the reader fills.
template <class Io, class Struct>
using Ref = std::conditional_t<Io::writes, const Struct&, Struct&>;

/// Whether a value says nothing; then its member is left out.
template <class T>
[[nodiscard]] bool isLeftOut(const T& value)
{
    if constexpr (requires { value.has_value(); }) {
        return !value.has_value();
    } else {
        return value.empty();
    }
}

/// The first thing that is wrong with a body.
struct Trouble {
    std::string where; ///< members from the outside in, with strokes between
    std::string what;  ///< after the name of the member: "must be …"; empty: nothing is wrong
};

template <class Struct>
struct Nested {
    [[nodiscard]] json write(const Struct& value) const;
    void read(const json& from, Struct& value, Trouble& trouble) const;
};

template <class Struct>
inline constexpr Nested<Struct> nested{};

/// A list of values that follow one rule. Empty lists are left out.
template <class Rule>
struct ListOf {
    Rule rule;
    std::size_t most = 1'000;
};

template <class Rule>
[[nodiscard]] constexpr ListOf<Rule> listOf(const Rule& rule, std::size_t most = 1'000)
{
    return {rule, most};
}

template <class Value, class Rule>
[[nodiscard]] json put(const Value& value, const Rule& rule)
{
    return rule.write(value);
}

template <class Value, class Rule>
[[nodiscard]] json put(const std::optional<Value>& value, const Rule& rule)
{
    return put(*value, rule);
}

template <class Value, class Rule>
[[nodiscard]] json put(const std::vector<Value>& values, const ListOf<Rule>& list)
{
    json out = json::array();
    for (const Value& value : values) {
        out.push_back(put(value, list.rule));
    }
    return out;
}

template <class Value, class Rule>
void take(const json& from, Value& value, const Rule& rule, Trouble& trouble)
{
    if constexpr (requires { rule.read(from, value, trouble); }) {
        rule.read(from, value, trouble);
    } else if (Wanted wanted = rule.read(from, value); !wanted.empty()) {
        trouble.what = "must be " + wanted;
    }
}

template <class Value, class Rule>
void take(const json& from, std::optional<Value>& value, const Rule& rule, Trouble& trouble)
{
    take(from, value.emplace(), rule, trouble);
}

template <class Value, class Rule>
void take(const json& from, std::vector<Value>& values, const ListOf<Rule>& list, Trouble& trouble)
{
    if (!from.is_array() || from.empty() || from.size() > list.most) {
        trouble.what = "must be a list of 1 to " + std::to_string(list.most)
                       + " values, or be left out where it has none";
        return;
    }
    for (const json& each : from) {
        take(each, values.emplace_back(), list.rule, trouble);
        if (!trouble.what.empty()) {
            trouble.where = '/' + std::to_string(values.size() - 1) + trouble.where;
            return;
        }
    }
}

class Writer {
public:
    static constexpr bool writes = true;

    /// A member that always stands there.
    template <class Value, class Rule>
    void must(const char* member, const Value& value, const Rule& rule)
    {
        m_object[member] = put(value, rule);
    }
    /// A member that is left out where nothing is known.
    template <class Value, class Rule>
    void may(const char* member, const Value& value, const Rule& rule)
    {
        if (!isLeftOut(value)) {
            must(member, value, rule);
        }
    }
    /// A member that is left out where it says what leaving it out says.
    template <class Value, class Rule>
    void unless(const char* member, const Value& leftOut, const Value& value, const Rule& rule)
    {
        if (value != leftOut) {
            must(member, value, rule);
        }
    }
    /// What goes beyond single members: asked when reading.
    void require(bool, const char*) {}

    [[nodiscard]] json take() { return std::move(m_object); }

private:
    json m_object = json::object();
};

class Reader {
public:
    static constexpr bool writes = false;

    Reader(const json& object, Trouble& trouble) : m_object(object), m_trouble(trouble)
    {
        if (!object.is_object()) {
            trouble.what = "must be an object";
        }
    }

    template <class Value, class Rule>
    void must(const char* member, Value& value, const Rule& rule)
    {
        if (!read(member, value, rule) && m_trouble.what.empty()) {
            m_trouble = {std::string("/") + member, "must not be left out"};
        }
    }
    template <class Value, class Rule>
    void may(const char* member, Value& value, const Rule& rule)
    {
        if (read(member, value, rule) && m_trouble.what.empty() && isLeftOut(value)) {
            m_trouble = {std::string("/") + member, "must be left out where it is empty"};
        }
    }
    template <class Value, class Rule>
    void unless(const char* member, const Value& leftOut, Value& value, const Rule& rule)
    {
        value = leftOut;
        read(member, value, rule);
    }
    void require(bool holds, const char* what)
    {
        if (!holds && m_trouble.what.empty()) {
            m_trouble.what = what;
        }
    }

    /// Refuses members that nothing asked for.
    void finish()
    {
        if (!m_trouble.what.empty() || m_taken == m_object.size()) {
            return;
        }
        for (const auto& [member, each] : m_object.items()) {
            if (std::find(m_known.begin(), m_known.end(), member) == m_known.end()) {
                m_trouble = {'/' + member, "is not known here"};
                return;
            }
        }
    }

private:
    template <class Value, class Rule>
    bool read(const char* member, Value& value, const Rule& rule)
    {
        m_known.emplace_back(member);
        if (!m_trouble.what.empty()) {
            return false;
        }
        const auto found = m_object.find(member);
        if (found == m_object.end()) {
            return false;
        }
        ++m_taken;
        body_format::take(*found, value, rule, m_trouble);
        if (!m_trouble.what.empty()) {
            m_trouble.where = '/' + (member + m_trouble.where);
        }
        return true;
    }

    const json& m_object;
    Trouble& m_trouble;
    std::vector<std::string_view> m_known;
    std::size_t m_taken = 0;
};

template <class Struct>
json Nested<Struct>::write(const Struct& value) const
{
    Writer writer;
    members(writer, value);
    return writer.take();
}

template <class Struct>
void Nested<Struct>::read(const json& from, Struct& value, Trouble& trouble) const
{
    Reader reader(from, trouble);
    if (trouble.what.empty()) {
        members(reader, value);
        reader.finish();
    }
}

} // namespace loadwarden::body_format

/// The two functions of an act's body, of its members(); at namespace loadwarden::body_format.
#define LW_BODY(Struct)                                                                            \
    void describe(Writer& io, const Struct& act)                                                   \
    {                                                                                              \
        members(io, act);                                                                          \
    }                                                                                              \
    void describe(Reader& io, Struct& act)                                                         \
    {                                                                                              \
        members(io, act);                                                                          \
    }
