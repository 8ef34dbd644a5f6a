#pragma once

#include "core/exchange/evidence/field.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden::evidence_format {

/// Appends structs as JSON, by the tables of field.h: the way back of ObjectReader. Fields stand in
/// the order of their table; one whose value the reader assumes is left out.
///
/// Throws std::out_of_range where a field cannot be written so that the reader takes it for what it
/// is. What goes beyond single fields is not looked at.
class ObjectWriter {
public:
    explicit ObjectWriter(std::string& out) noexcept : m_out(out) {}

    /// Whether the object states any field.
    bool write(const ObjectType& type, const void* owner);

    /// How many objects were appended.
    [[nodiscard]] std::size_t objects() const noexcept { return m_objects; }

private:
    // Each answers whether it appended a value; one that need not be there only if it is stated.

    bool put(const TextRule& rule, const void* owner, bool needed);
    bool put(const FormRule& rule, const void* owner, bool needed);
    bool put(const WordRule& rule, const void* owner, bool needed);
    bool put(const TimeRule& rule, const void* owner, bool needed);
    bool put(const DateRule& rule, const void* owner, bool needed);
    bool put(const FlagRule& rule, const void* owner, bool needed);
    bool put(const NumberRule& rule, const void* owner, bool needed);
    bool put(const ObjectRule& rule, const void* owner, bool needed);
    bool put(const TextOrObjectRule& rule, const void* owner, bool needed);
    bool put(const ListRule& rule, const void* owner, bool needed);

    bool put(const Field& field, const void* owner, bool needed)
    {
        return std::visit([&](const auto& rule) { return put(rule, owner, needed); }, field.rule);
    }

    /// Whether a value is written; throws where one is needed and there is none.
    template <class Value>
    [[nodiscard]] bool isWritten(const Fetched<Value>& fetched, bool needed) const;

    [[noreturn]] void refuse(const std::string& why) const;

    /// A field on the way to the one that is written, and the element of its list.
    struct Step {
        std::string_view name;
        std::size_t index;
        bool isList;
    };

    std::string& m_out;
    std::size_t m_objects = 0;
    std::vector<Step> m_way;
};

} // namespace loadwarden::evidence_format
