#pragma once

#include "core/quantities/act.h"
#include "core/quantities/date.h"
#include "core/quantities/instant.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace loadwarden {

class SpecificationLibrary;

namespace evidence_format {

// What the format knows of its objects and fields, as constant tables: one ObjectType for each kind
// of object of resources/schema/evidence.schema.json, with one Field for each of its fields. The
// tables stand in *_fields.cpp; bind.h makes their rows; ObjectReader follows them.
//
// "Owner" is the struct of core/ that an object's fields are stored in, without its type.

struct ObjectType;
struct Field;

/// What a check has against a value.
struct Complaint {
    std::string field; ///< JSON Pointer below the object that is checked; empty: the object itself
    std::string message;
};

/// A text of that many characters. A name holds none that cannot be seen, a free text no control
/// character but tab and line feed.
struct TextRule {
    std::size_t least;
    std::size_t most;
    bool isFree;
    void (*store)(void* owner, std::string_view text);
};

/// A text with a form of its own.
struct FormRule {
    /// False: the text is wrong, and message says why.
    bool (*store)(void* owner, std::string_view text, const SpecificationLibrary* library,
                  std::string& message);
};

/// One of some words.
struct WordRule {
    std::span<const std::string_view> words;
    void (*store)(void* owner, std::size_t which);
};

struct TimeRule {
    void (*store)(void* owner, Instant time);
};

struct DateRule {
    void (*store)(void* owner, Date date);
};

struct FlagRule {
    void (*store)(void* owner, bool flag);
};

/// A number with at most that many decimals. Limits and what is stored are scaled by 10^decimals.
struct NumberRule {
    int decimals;
    std::int64_t least;
    std::int64_t most;
    void (*store)(void* owner, std::int64_t scaled, std::string_view written);
};

/// An object of its own.
struct ObjectRule {
    const ObjectType* type;
    void* (*open)(void* owner); ///< where its fields are stored
};

/// An object, or a text that stands for one.
struct TextOrObjectRule {
    FormRule text;
    ObjectRule object;
};

/// A list of values that all follow one rule. The owner of the element is the list.
struct ListRule {
    std::size_t least; ///< elements
    void* (*open)(void* owner);
    const Field* element;
};

using Rule = std::variant<TextRule, FormRule, WordRule, TimeRule, DateRule, FlagRule, NumberRule,
                          ObjectRule, TextOrObjectRule, ListRule>;

struct Field {
    std::string_view name;
    Rule rule;
    bool needed = false;

    /// The same field, which must not be left out.
    [[nodiscard]] consteval Field must() const
    {
        Field field = *this;
        field.needed = true;
        return field;
    }
};

/// Fields that were there, as one bit each in the order of the type's table.
using FieldSet = std::uint64_t;

struct ObjectType {
    std::string_view name; ///< for messages, with its article
    std::span<const Field> fields;
    FieldSet needed = 0;
    FieldSet recordedAt = 0;      ///< the bit of an act's recordedAt; 0: the object is no act
    Act* (*act)(void*) = nullptr; ///< the act that is spread over the object's fields
    /// What goes beyond single fields; false: complaint is filled in.
    bool (*check)(void* object, FieldSet present, Complaint& complaint) = nullptr;
};

/// The bit of a field in its table; a name that is not in it does not compile.
[[nodiscard]] constexpr FieldSet bitOf(std::span<const Field> fields, std::string_view name)
{
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (fields[i].name == name) {
            return FieldSet{1} << i;
        }
    }
    throw "no such field";
}

} // namespace evidence_format

} // namespace loadwarden
