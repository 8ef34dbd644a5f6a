#pragma once

#include "core/acts/bodies/rules.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
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
    void write(std::string& out, const Struct& value) const;
    void read(const Node& from, Struct& value, Trouble& trouble) const;
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
void put(std::string& out, const Value& value, const Rule& rule)
{
    rule.write(out, value);
}

template <class Value, class Rule>
void put(std::string& out, const std::optional<Value>& value, const Rule& rule)
{
    put(out, *value, rule);
}

template <class Value, class Rule>
void put(std::string& out, const std::vector<Value>& values, const ListOf<Rule>& list)
{
    out += '[';
    for (const Value& value : values) {
        out += &value == values.data() ? "" : ",";
        put(out, value, list.rule);
    }
    out += ']';
}

template <class Value, class Rule>
void take(const Node& from, Value& value, const Rule& rule, Trouble& trouble)
{
    if constexpr (requires { rule.read(from, value, trouble); }) {
        rule.read(from, value, trouble);
    } else if (Wanted wanted = rule.read(from, value); !wanted.empty()) {
        trouble.what = "must be " + wanted;
    }
}

template <class Value, class Rule>
void take(const Node& from, std::optional<Value>& value, const Rule& rule, Trouble& trouble)
{
    take(from, value.emplace(), rule, trouble);
}

template <class Value, class Rule>
void take(const Node& from, std::vector<Value>& values, const ListOf<Rule>& list, Trouble& trouble)
{
    if (!from.isArray() || from.size() == 0 || from.size() > list.most) {
        trouble.what = "must be a list of 1 to " + std::to_string(list.most)
                       + " values, or be left out where it has none";
        return;
    }
    const Node* each = from.first();
    for (std::size_t i = 0; i < from.size(); ++i, each = each->next()) {
        take(*each, values.emplace_back(), list.rule, trouble);
        if (!trouble.what.empty()) {
            trouble.where = '/' + std::to_string(values.size() - 1) + trouble.where;
            return;
        }
    }
}

class Writer {
public:
    static constexpr bool writes = true;

    Writer()
    {
        constexpr std::size_t usualBytes = 256;
        constexpr std::size_t usualMembers = 16;
        m_text.reserve(usualBytes);
        m_members.reserve(usualMembers);
    }

    /// A member that always stands there.
    template <class Value, class Rule>
    void must(const char* member, const Value& value, const Rule& rule)
    {
        const std::size_t from = m_text.size();
        put(m_text, value, rule);
        m_members.push_back({member, from, m_text.size()});
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

    /// Appends the object with its members in the order of their names.
    void take(std::string& out)
    {
        std::ranges::sort(m_members, {}, &Member::name);
        constexpr std::size_t aroundMember = 32;
        out.reserve(out.size() + m_text.size() + m_members.size() * aroundMember);
        out += '{';
        for (const Member& member : m_members) {
            // Names of members are words, in which nothing is escaped.
            out += &member == m_members.data() ? "\"" : ",\"";
            out += member.name;
            out += "\":";
            out.append(m_text, member.from, member.to - member.from);
        }
        out += '}';
    }

private:
    struct Member {
        std::string_view name;
        std::size_t from; ///< of its value in m_text
        std::size_t to;
    };

    std::string m_text; ///< values, one after the other
    std::vector<Member> m_members;
};

class Reader {
public:
    static constexpr bool writes = false;

    Reader(const Node& object, Trouble& trouble) : m_object(object), m_trouble(trouble)
    {
        if (!object.isObject()) {
            trouble.what = "must be an object";
        }
        m_taken.reserve(object.size());
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
        if (!m_trouble.what.empty() || m_taken.size() == m_object.size()) {
            return;
        }
        const Node* each = m_object.first();
        while (std::ranges::find(m_taken, each) != m_taken.end()) {
            each = each->next();
        }
        m_trouble = {'/' + std::string(each->name()), "is not known here"};
    }

private:
    template <class Value, class Rule>
    bool read(const char* member, Value& value, const Rule& rule)
    {
        if (!m_trouble.what.empty()) {
            return false;
        }
        const Node* const found = m_object.member(member);
        if (found == nullptr) {
            return false;
        }
        m_taken.push_back(found);
        body_format::take(*found, value, rule, m_trouble);
        if (!m_trouble.what.empty()) {
            m_trouble.where = '/' + (member + m_trouble.where);
        }
        return true;
    }

    const Node& m_object;
    Trouble& m_trouble;
    std::vector<const Node*> m_taken;
};

template <class Struct>
void Nested<Struct>::write(std::string& out, const Struct& value) const
{
    Writer writer;
    members(writer, value);
    writer.take(out);
}

template <class Struct>
void Nested<Struct>::read(const Node& from, Struct& value, Trouble& trouble) const
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
