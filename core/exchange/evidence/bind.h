#pragma once

#include "core/exchange/evidence/field.h"
#include "core/quantities/method.h"
#include "core/quantities/word.h"

#include <array>
#include <optional>
#include <type_traits>
#include <vector>

namespace loadwarden::evidence_format {

// Makers of table rows. `Path` is where the value goes: a member of the owner, or a member of a
// member and so on, for example <&IndicatorReading::act, &Act::by>.

template <class Owner, class Member>
Owner ownerOf(Member Owner::*);

template <auto First, auto... Rest>
auto& memberAt(void* owner)
{
    using Owner = decltype(ownerOf(First));
    auto& member = static_cast<Owner*>(owner)->*First;
    if constexpr (sizeof...(Rest) == 0) {
        return member;
    } else {
        return memberAt<Rest...>(&member);
    }
}

template <auto... Path>
using MemberAt = std::remove_reference_t<decltype(memberAt<Path...>(nullptr))>;

/// Characters of a name, and of a free text.
inline constexpr std::size_t mostOfName = 64;
inline constexpr std::size_t mostOfText = 2'000;

/// The row of a text.
template <auto... Path>
consteval Field textField(std::string_view name, std::size_t least, std::size_t most, bool isFree)
{
    return {name, TextRule{least, most, isFree, [](void* owner, std::string_view value) {
                               memberAt<Path...>(owner).assign(value);
                           }}};
}

/// A free text, which may be empty.
template <auto... Path>
consteval Field text(std::string_view name)
{
    return textField<Path...>(name, 0, mostOfText, true);
}

/// A name that may be empty.
template <auto... Path>
consteval Field nameOrNone(std::string_view name)
{
    return textField<Path...>(name, 0, mostOfName, false);
}

/// An identifier.
template <auto... Path>
consteval Field id(std::string_view name)
{
    return textField<Path...>(name, 1, mostOfName, false);
}

template <auto... Path>
consteval Field time(std::string_view name)
{
    return {name, TimeRule{[](void* owner, Instant value) { memberAt<Path...>(owner) = value; }}};
}

template <auto... Path>
consteval Field date(std::string_view name)
{
    return {name, DateRule{[](void* owner, Date value) { memberAt<Path...>(owner) = value; }}};
}

template <auto... Path>
consteval Field flag(std::string_view name)
{
    return {name, FlagRule{[](void* owner, bool value) { memberAt<Path...>(owner) = value; }}};
}

template <const auto& Words>
inline constexpr auto wordTexts = [] {
    std::array<std::string_view, std::size(Words)> texts;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        texts[i] = Words[i].text;
    }
    return texts;
}();

template <const auto& Words, auto... Path>
consteval Field word(std::string_view name)
{
    return {name, WordRule{wordTexts<Words>, [](void* owner, std::size_t which) {
                               memberAt<Path...>(owner) = Words[which].value;
                           }}};
}

/// A whole number.
template <auto... Path>
consteval Field whole(std::string_view name, std::int64_t least, std::int64_t most)
{
    return {name, NumberRule{0, least, most, [](void* owner, std::int64_t value, std::string_view) {
                                 auto& member = memberAt<Path...>(owner);
                                 if constexpr (std::is_same_v<MemberAt<Path...>, int>) {
                                     member = static_cast<int>(value);
                                 } else {
                                     member = value;
                                 }
                             }}};
}

/// Minutes with at most 3 decimals, stored as milliseconds.
template <auto... Path>
consteval Field minutesAsMs(std::string_view name)
{
    return {name,
            NumberRule{3, 0, 100'000'000, [](void* owner, std::int64_t value, std::string_view) {
                           memberAt<Path...>(owner) = value * 60;
                       }}};
}

/// Degrees Celsius with at most 2 decimals, stored as hundredths.
template <auto... Path>
consteval Field celsiusHundredths(std::string_view name)
{
    return {name,
            NumberRule{2, -9'000, 50'000, [](void* owner, std::int64_t value, std::string_view) {
                           memberAt<Path...>(owner) = value;
                       }}};
}

/// An object whose struct is a member, or an optional member.
template <const ObjectType& Type, auto... Path>
consteval Field object(std::string_view name)
{
    return {name, ObjectRule{&Type, [](void* owner) -> void* {
                                 auto& member = memberAt<Path...>(owner);
                                 if constexpr (requires { member.emplace(); }) {
                                     return &member.emplace();
                                 } else {
                                     return &member;
                                 }
                             }}};
}

/// An object whose fields are stored in the owner itself.
template <const ObjectType& Type>
consteval Field objectSpread(std::string_view name)
{
    return {name, ObjectRule{&Type, [](void* owner) { return owner; }}};
}

/// Makes room for a few elements at once: most lists are short, and their elements large.
template <class List>
auto& append(List& list)
{
    if (list.empty()) {
        list.reserve(4);
    }
    return list.emplace_back();
}

template <const ObjectType& Type, class Element>
inline constexpr Field objectElement{
    "", ObjectRule{&Type, [](void* list) -> void* {
                       return &append(*static_cast<std::vector<Element>*>(list));
                   }}};

/// A list of objects in a vector.
template <const ObjectType& Type, auto... Path>
consteval Field objects(std::string_view name)
{
    using Element = typename MemberAt<Path...>::value_type;
    return {name, ListRule{0, [](void* owner) -> void* { return &memberAt<Path...>(owner); },
                           &objectElement<Type, Element>}};
}

inline constexpr Field idElement{
    "", TextRule{1, mostOfName, false, [](void* list, std::string_view value) {
                     static_cast<std::vector<std::string>*>(list)->emplace_back(value);
                 }}};

/// A list of identifiers.
template <auto... Path>
consteval Field ids(std::string_view name, std::size_t least = 0)
{
    return {name, ListRule{least, [](void* owner) -> void* { return &memberAt<Path...>(owner); },
                           &idElement}};
}

template <std::size_t... Counts>
consteval auto join(const std::array<Field, Counts>&... parts)
{
    std::array<Field, (Counts + ...)> all{};
    std::size_t at = 0;
    const auto add = [&](const auto& part) {
        for (const Field& field : part) {
            all[at++] = field;
        }
    };
    (add(parts), ...);
    return all;
}

template <class... Fields>
consteval auto fields(Fields... list)
{
    return std::array<Field, sizeof...(Fields)>{list...};
}

/// What makes an object of a table of fields.
[[nodiscard]] consteval ObjectType objectType(std::string_view name, std::span<const Field> fields,
                                              bool (*check)(void* object, FieldSet present,
                                                            Complaint& complaint) = nullptr)
{
    if (fields.size() > 64) {
        throw "a FieldSet has 64 bits";
    }
    ObjectType type{.name = name, .fields = fields, .check = check};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (bitOf(fields, fields[i].name) != FieldSet{1} << i) {
            throw "a field stands twice in a table";
        }
        type.needed |= fields[i].needed ? FieldSet{1} << i : 0;
    }
    return type;
}

/// The same for an object over which an act is spread.
template <auto... ActPath>
[[nodiscard]] consteval ObjectType signedType(std::string_view name, std::span<const Field> fields,
                                              bool (*check)(void* object, FieldSet present,
                                                            Complaint& complaint) = nullptr)
{
    ObjectType type = objectType(name, fields, check);
    type.recordedAt = bitOf(fields, "recordedAt");
    type.act = [](void* owner) -> Act* {
        if constexpr (sizeof...(ActPath) == 0) {
            return static_cast<Act*>(owner);
        } else {
            return &memberAt<ActPath...>(owner);
        }
    };
    return type;
}

} // namespace loadwarden::evidence_format
