#pragma once

#include "core/exchange/evidence/field.h"
#include "core/exchange/evidence/json_scanner.h"

#include <string>
#include <string_view>

namespace loadwarden::evidence_format {

/// Objects that a record may have at most, so that a small file cannot ask for much memory.
inline constexpr std::size_t mostObjects = 20'000;

/// Reads one JSON text into structs, by the tables of field.h. Stops at the first thing that is
/// wrong.
class ObjectReader {
public:
    ObjectReader(std::string_view json, const SpecificationLibrary* library) noexcept
        : m_scanner(json), m_library(library)
    {
    }

    /// Whether the text is one object of that type, and nothing else; its fields are then in owner.
    [[nodiscard]] bool read(const ObjectType& type, void* owner);

    // After a false:
    [[nodiscard]] std::string takePointer() { return std::move(m_pointer); }
    [[nodiscard]] std::string takeMessage() { return std::move(m_message); }

private:
    bool readObject(const ObjectType& type, void* owner);
    bool readField(const ObjectType& type, void* owner, FieldSet& present, std::size_t& likely);
    bool finishObject(const ObjectType& type, void* owner, FieldSet present);

    bool take(const TextRule& rule, void* owner);
    bool take(const FormRule& rule, void* owner);
    bool take(const WordRule& rule, void* owner);
    bool take(const TimeRule& rule, void* owner);
    bool take(const DateRule& rule, void* owner);
    bool take(const FlagRule& rule, void* owner);
    bool take(const NumberRule& rule, void* owner);
    bool take(const ObjectRule& rule, void* owner);
    bool take(const TextOrObjectRule& rule, void* owner);
    bool take(const ListRule& rule, void* owner);

    bool take(const Field& field, void* owner)
    {
        return std::visit([&](const auto& rule) { return take(rule, owner); }, field.rule);
    }

    /// Takes a text; another kind of value is refused.
    bool takeText(std::string_view& text);
    bool refuseKind(JsonKind found, std::string_view wanted);
    bool refuse(std::string message);
    bool refuseJson();

    JsonScanner m_scanner;
    const SpecificationLibrary* m_library;
    std::size_t m_objects = 0;
    std::string m_pointer;
    std::string m_message;
};

} // namespace loadwarden::evidence_format
