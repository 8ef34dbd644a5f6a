#pragma once

#include "core/exchange/evidence/field.h"
#include "core/quantities/method.h"
#include "core/quantities/word.h"

#include <array>
#include <optional>
#include <type_traits>
#include <vector>

namespace loadwarden::evidence_format {

// Makers of table rows. `Path` is where the value goes and comes from: a member of the owner, or a
// member of a member and so on, for example <&IndicatorReading::act, &Act::by>.

template <class Owner, class Member, class... Rest>
Owner ownerOf(Member Owner::*, Rest...);

/// The struct in which a path begins.
template <auto... Path>
using OwnerOf = decltype(ownerOf(Path...));

template <auto First, auto... Rest>
auto& below(auto& owner)
{
    if constexpr (sizeof...(Rest) == 0) {
        return owner.*First;
    } else {
        return below<Rest...>(owner.*First);
    }
}

template <auto... Path>
auto& memberAt(void* owner)
{
    return below<Path...>(*static_cast<OwnerOf<Path...>*>(owner));
}

template <auto... Path>
const auto& memberOf(const void* owner)
{
    return below<Path...>(*static_cast<const OwnerOf<Path...>*>(owner));
}

template <auto... Path>
using MemberAt = std::remove_cvref_t<decltype(memberAt<Path...>(nullptr))>;

template <class Member>
inline constexpr bool isOptional = false;
template <class Value>
inline constexpr bool isOptional<std::optional<Value>> = true;

/// The value of a member when nothing is stated.
template <auto... Path>
const auto& assumedAt()
{
    static const auto value = [] {
        OwnerOf<Path...> blank{};
        return memberAt<Path...>(&blank);
    }();
    return value;
}

/// What is stated in a member, as `convert` makes a field's value of it.
template <auto... Path, class Convert>
auto fetched(const void* owner, Convert convert)
{
    const auto& member = memberOf<Path...>(owner);
    if constexpr (isOptional<MemberAt<Path...>>) {
        using Value = decltype(convert(*member));
        return member ? Fetched<Value>{Stated::yes, convert(*member)} : Fetched<Value>{};
    } else {
        using Value = decltype(convert(member));
        const bool isAssumed = member == assumedAt<Path...>();
        return Fetched<Value>{isAssumed ? Stated::assumed : Stated::yes, convert(member)};
    }
}

/// The same of a member that holds the field's value as it is.
template <auto... Path>
auto fetched(const void* owner)
{
    return fetched<Path...>(owner, [](const auto& value) { return value; });
}

/// Characters of a name, and of a free text.
inline constexpr std::size_t mostOfName = 64;
inline constexpr std::size_t mostOfText = 2'000;

/// The row of a text.
template <auto... Path>
consteval Field textField(std::string_view name, std::size_t least, std::size_t most, bool isFree)
{
    return {name, TextRule{least, most, isFree,
                           [](void* owner, std::string_view value) {
                               memberAt<Path...>(owner).assign(value);
                           },
                           [](const void* owner) {
                               const std::string& text = memberOf<Path...>(owner);
                               return Fetched<std::string_view>{
                                   text.empty() ? Stated::assumed : Stated::yes, text};
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
    return {name, TimeRule{[](void* owner, Instant value) { memberAt<Path...>(owner) = value; },
                           [](const void* owner) { return fetched<Path...>(owner); }}};
}

template <auto... Path>
consteval Field date(std::string_view name)
{
    return {name, DateRule{[](void* owner, Date value) { memberAt<Path...>(owner) = value; },
                           [](const void* owner) { return fetched<Path...>(owner); }}};
}

template <auto... Path>
consteval Field flag(std::string_view name)
{
    return {name, FlagRule{[](void* owner, bool value) { memberAt<Path...>(owner) = value; },
                           [](const void* owner) { return fetched<Path...>(owner); }}};
}

template <const auto& Words>
inline constexpr auto wordTexts = [] {
    std::array<std::string_view, std::size(Words)> texts;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        texts[i] = Words[i].text;
    }
    return texts;
}();

/// A word by its place among some; one that is not there is not stated.
template <const auto& Words, class Value>
Fetched<std::size_t> placeOf(const Fetched<Value>& word)
{
    for (std::size_t i = 0; i < std::size(Words); ++i) {
        if (Words[i].value == word.value) {
            return {word.stated, i};
        }
    }
    return {};
}

template <const auto& Words, auto... Path>
consteval Field word(std::string_view name)
{
    return {name,
            WordRule{wordTexts<Words>,
                     [](void* owner, std::size_t which) {
                         memberAt<Path...>(owner) = Words[which].value;
                     },
                     [](const void* owner) { return placeOf<Words>(fetched<Path...>(owner)); }}};
}

/// A whole number.
template <auto... Path>
consteval Field whole(std::string_view name, std::int64_t least, std::int64_t most)
{
    return {name, NumberRule{0, least, most,
                             [](void* owner, std::int64_t value, std::string_view) {
                                 auto& member = memberAt<Path...>(owner);
                                 if constexpr (std::is_same_v<MemberAt<Path...>, int>) {
                                     member = static_cast<int>(value);
                                 } else {
                                     member = value;
                                 }
                             },
                             [](const void* owner) {
                                 return fetched<Path...>(owner, [](std::int64_t value) {
                                     return Number{.scaled = value};
                                 });
                             }}};
}

/// Minutes with at most 3 decimals, stored as milliseconds.
template <auto... Path>
consteval Field minutesAsMs(std::string_view name)
{
    return {name, NumberRule{3, 0, 100'000'000,
                             [](void* owner, std::int64_t value, std::string_view) {
                                 memberAt<Path...>(owner) = value * 60;
                             },
                             [](const void* owner) {
                                 return fetched<Path...>(
                                     owner, [](std::int64_t value) { return numberOf(value, 60); });
                             }}};
}

/// Degrees Celsius with at most 2 decimals, stored as hundredths.
template <auto... Path>
consteval Field celsiusHundredths(std::string_view name)
{
    return {name, NumberRule{2, -9'000, 50'000,
                             [](void* owner, std::int64_t value, std::string_view) {
                                 memberAt<Path...>(owner) = value;
                             },
                             [](const void* owner) {
                                 return fetched<Path...>(owner, [](std::int64_t value) {
                                     return Number{.scaled = value};
                                 });
                             }}};
}

/// An object whose struct is a member, or an optional member.
template <const ObjectType& Type, auto... Path>
consteval Field object(std::string_view name)
{
    return {name, ObjectRule{&Type,
                             [](void* owner) -> void* {
                                 auto& member = memberAt<Path...>(owner);
                                 if constexpr (isOptional<MemberAt<Path...>>) {
                                     return &member.emplace();
                                 } else {
                                     return &member;
                                 }
                             },
                             [](const void* owner) -> Fetched<const void*> {
                                 const auto& member = memberOf<Path...>(owner);
                                 if constexpr (!isOptional<MemberAt<Path...>>) {
                                     return {Stated::assumed, &member};
                                 } else if (member) {
                                     return {Stated::yes, &*member};
                                 } else {
                                     return {};
                                 }
                             }}};
}

/// An object whose fields are stored in the owner itself.
template <const ObjectType& Type>
consteval Field objectSpread(std::string_view name)
{
    return {name, ObjectRule{&Type, [](void* owner) { return owner; },
                             [](const void* owner) -> Fetched<const void*> {
                                 return {Stated::assumed, owner};
                             }}};
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
    "", ObjectRule{
            &Type,
            [](void* list) -> void* { return &append(*static_cast<std::vector<Element>*>(list)); },
            [](const void* element) -> Fetched<const void*> {
                return {Stated::yes, element};
            }}};

/// An element of a vector.
template <auto... Path>
const void* elementAt(const void* owner, std::size_t index)
{
    const auto& list = memberOf<Path...>(owner);
    return index < list.size() ? &list[index] : nullptr;
}

/// A list of objects in a vector.
template <const ObjectType& Type, auto... Path>
consteval Field objects(std::string_view name)
{
    using Element = typename MemberAt<Path...>::value_type;
    return {name, ListRule{0, [](void* owner) -> void* { return &memberAt<Path...>(owner); },
                           &objectElement<Type, Element>, elementAt<Path...>}};
}

inline constexpr Field idElement{
    "", TextRule{1, mostOfName, false,
                 [](void* list, std::string_view value) {
                     static_cast<std::vector<std::string>*>(list)->emplace_back(value);
                 },
                 [](const void* element) -> Fetched<std::string_view> {
                     return {Stated::yes, *static_cast<const std::string*>(element)};
                 }}};

/// A list of identifiers.
template <auto... Path>
consteval Field ids(std::string_view name, std::size_t least = 0)
{
    return {name, ListRule{least, [](void* owner) -> void* { return &memberAt<Path...>(owner); },
                           &idElement, elementAt<Path...>}};
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
    if (fields.size() > mostFields) {
        throw "a table has too many fields";
    }
    ObjectType type{.name = name, .fields = fields, .index = FieldIndex(fields), .check = check};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (bitOf(fields, fields[i].name) != FieldSet{1} << i) {
            throw "a field stands twice in a table";
        }
        if (!canBeFetched(fields[i])) {
            throw "a field has no way back";
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
