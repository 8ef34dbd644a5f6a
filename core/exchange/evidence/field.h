#pragma once

#include "core/quantities/act.h"
#include "core/quantities/date.h"
#include "core/quantities/instant.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

namespace loadwarden {

class SpecificationLibrary;

namespace evidence_format {

// What the format knows of its objects and fields, as constant tables: one ObjectType for each kind
// of object of resources/schema/evidence.schema.json, with one Field for each of its fields. The
// tables stand in *_fields.cpp; bind.h makes their rows; ObjectReader follows them one way and
// ObjectWriter the other, so each rule says how a value is stored and how it is fetched.
//
// "Owner" is the struct of core/ that an object's fields are stored in, without its type. Of a
// record it is the EvidenceRecord.

struct ObjectType;
struct Field;

/// What a check has against a value.
struct Complaint {
    std::string field; ///< JSON Pointer below the object that is checked; empty: the object itself
    std::string message;
};

/// What an owner has in a field.
enum class Stated : std::uint8_t {
    no,
    assumed, ///< what reading leaves there when the field is left out
    yes
};

template <class Value>
struct Fetched {
    Stated stated = Stated::no;
    Value value{}; ///< views and pointers are valid as long as the owner stays as it is
};

/// A text of that many characters. A name holds none that cannot be seen, a free text no control
/// character but tab and line feed.
struct TextRule {
    std::size_t least;
    std::size_t most;
    bool isFree;
    void (*store)(void* owner, std::string_view text);
    Fetched<std::string_view> (*fetch)(const void* owner);
};

/// Stores a text with a form of its own. False: the text is wrong, and message says why.
using FormStore = bool (*)(void* owner, std::string_view text, const SpecificationLibrary* library,
                           std::string& message);

/// A text with a form of its own.
struct FormRule {
    FormStore store;
    Fetched<std::string> (*fetch)(const void* owner);
};

/// One of some words.
struct WordRule {
    std::span<const std::string_view> words;
    void (*store)(void* owner, std::size_t which);
    Fetched<std::size_t> (*fetch)(const void* owner);
};

struct TimeRule {
    void (*store)(void* owner, Instant time);
    Fetched<Instant> (*fetch)(const void* owner);
};

struct DateRule {
    void (*store)(void* owner, Date date);
    Fetched<Date> (*fetch)(const void* owner);
};

struct FlagRule {
    void (*store)(void* owner, bool flag);
    Fetched<bool> (*fetch)(const void* owner);
};

/// A number as it is fetched.
struct Number {
    std::int64_t scaled = 0;
    std::string_view written{}; ///< as it was typed, where the owner keeps that
    bool isExact = true;        ///< false: the owner's number has more decimals than the field may
};

/// A number of an owner that counts in units of which `many` are one of the field's.
[[nodiscard]] constexpr Number numberOf(std::int64_t units, std::int64_t many) noexcept
{
    return {.scaled = units / many, .isExact = units % many == 0};
}

/// A number with at most that many decimals, which are 3 at most. Limits, what is stored and what
/// is fetched are scaled by 10^decimals.
struct NumberRule {
    int decimals;
    std::int64_t least;
    std::int64_t most;
    void (*store)(void* owner, std::int64_t scaled, std::string_view written);
    Fetched<Number> (*fetch)(const void* owner);
};

/// An object of its own.
struct ObjectRule {
    const ObjectType* type;
    void* (*open)(void* owner); ///< where its fields are stored
    /// Where they are; `assumed`: as far as the object states none, it could have been left out.
    Fetched<const void*> (*fetch)(const void* owner);
};

/// An object, or a text that stands for one. What it stood for is fetched as the object.
struct TextOrObjectRule {
    FormStore text;
    ObjectRule object;
};

/// A list of values that all follow one rule. The owner of an element that is stored is the list,
/// of one that is fetched the element itself.
struct ListRule {
    std::size_t least; ///< elements
    void* (*open)(void* owner);
    const Field* element;
    const void* (*at)(const void* owner, std::size_t index); ///< null after the last element
};

using Rule = std::variant<TextRule, FormRule, WordRule, TimeRule, DateRule, FlagRule, NumberRule,
                          ObjectRule, TextOrObjectRule, ListRule>;

struct Field {
    std::string_view name;
    Rule rule;
    bool needed = false;
    /// Whether an owner that is read needs the field; null: that does not depend on the owner.
    bool (*neededIn)(const void* owner) = nullptr;

    /// The same field, which must not be left out.
    [[nodiscard]] consteval Field must() const
    {
        Field field = *this;
        field.needed = true;
        return field;
    }

    /// The same field, which some owners must not leave out. Their type's check refuses it.
    [[nodiscard]] consteval Field mustIn(bool (*needs)(const void* owner)) const
    {
        Field field = *this;
        field.neededIn = needs;
        return field;
    }

    [[nodiscard]] bool isNeededIn(const void* owner) const
    {
        return needed || (neededIn != nullptr && neededIn(owner));
    }
};

/// Whether what a field stores can also be fetched.
[[nodiscard]] constexpr bool canBeFetched(const Field& field)
{
    return std::visit(
        [](const auto& rule) {
            using AnyRule = std::remove_cvref_t<decltype(rule)>;
            if constexpr (std::is_same_v<AnyRule, ListRule>) {
                return rule.at != nullptr && canBeFetched(*rule.element);
            } else if constexpr (std::is_same_v<AnyRule, TextOrObjectRule>) {
                return rule.object.fetch != nullptr;
            } else {
                return rule.fetch != nullptr;
            }
        },
        field.rule);
}

/// Asked of every name and word of a file; of different lengths most are.
[[nodiscard]] inline bool isSameText(std::string_view a, std::string_view b) noexcept
{
    return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size()) == 0;
}

/// Fields that were there, as one bit each in the order of the type's table.
using FieldSet = std::uint64_t;

/// The most fields that a table may have: a FieldSet has as many bits.
inline constexpr std::size_t mostFields = 64;

/// Where the fields of a table stand by their names. A field lies in the slot that its name tells,
/// or in the next that was free.
class FieldIndex {
public:
    constexpr FieldIndex() = default;
    explicit constexpr FieldIndex(std::span<const Field> fields)
    {
        for (std::size_t i = 0; i < fields.size(); ++i) {
            std::size_t slot = slotOf(fields[i].name);
            while (m_taken[slot] != 0) {
                slot = (slot + 1) % slotCount;
            }
            m_taken[slot] = static_cast<std::uint8_t>(i + 1);
        }
    }

    /// The field of that name in the table that the index was made of, or null.
    [[nodiscard]] const Field* find(std::span<const Field> fields,
                                    std::string_view name) const noexcept
    {
        for (std::size_t slot = slotOf(name); m_taken[slot] != 0; slot = (slot + 1) % slotCount) {
            const Field& field = fields[m_taken[slot] - std::size_t{1}];
            if (isSameText(field.name, name)) {
                return &field;
            }
        }
        return nullptr;
    }

private:
    static constexpr std::size_t slotCount = 2 * mostFields; // so that half of them stay free

    static constexpr std::size_t slotOf(std::string_view name) noexcept
    {
        if (name.empty()) {
            return 0;
        }
        const auto at = [name](std::size_t i) { return static_cast<unsigned char>(name[i]); };
        return (name.size() + at(0) * 3U + at(name.size() / 2) * 5U + at(name.size() - 1) * 7U)
               % slotCount;
    }

    std::array<std::uint8_t, slotCount>
        m_taken{}; ///< a field's place in its table, from 1; 0: free
};

struct ObjectType {
    std::string_view name; ///< for messages, with its article
    std::span<const Field> fields;
    FieldIndex index; ///< of its fields
    FieldSet needed = 0;
    FieldSet recordedAt = 0;      ///< the bit of an act's recordedAt; 0: the object is no act
    Act* (*act)(void*) = nullptr; ///< the act that is spread over the object's fields
    /// What goes beyond single fields; false: complaint is filled in.
    bool (*check)(void* object, FieldSet present, Complaint& complaint) = nullptr;
    /// Whether the fields can state all that an owner has; null: they always can.
    bool (*canState)(const void* owner) = nullptr;

    /// The same type, whose owners may have what none of its fields states.
    [[nodiscard]] consteval ObjectType onlyWhere(bool (*can)(const void* owner)) const
    {
        ObjectType type = *this;
        type.canState = can;
        return type;
    }
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
