#pragma once

#include "core/exchange/evidence/field.h"

#include <cstddef>
#include <string>
#include <variant>

namespace loadwarden::evidence_format {

/// Appends structs as JSON, by the tables of field.h: the way back of ObjectReader. Fields stand in
/// the order of their table; one whose value the reader assumes is left out.
class ObjectWriter {
public:
    explicit ObjectWriter(std::string& out) noexcept : m_out(out) {}

    /// Whether the object states any field.
    bool write(const ObjectType& type, const void* owner);

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

    /// Where the text ends now, and taking back what was appended since.
    [[nodiscard]] std::size_t mark() const noexcept { return m_out.size(); }
    void backTo(std::size_t mark) { m_out.resize(mark); }

    std::string& m_out;
};

} // namespace loadwarden::evidence_format
