#pragma once

#include "core/acts/bodies/node.h"
#include "core/acts/kinds/values.h"
#include "core/cycle/quantity.h"
#include "core/journal/envelope.h"
#include "core/quantities/date.h"
#include "core/quantities/json_text.h"
#include "core/quantities/word.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

// How single values stand in a body (ACTS.md, 1). A rule appends a value in canonical form and
// reads it again; read() gives what must be there instead ("a date such as …"), or nothing where
// all is well.

namespace loadwarden::body_format {

/// Empty: the value was read.
using Wanted = std::string;

/// A text of that many characters; unless `lines` a name, on one line and without characters that
/// cannot be seen (core/quantities/unseen.h).
struct Text {
    std::size_t least = 1;
    std::size_t most = 2'000;
    bool lines = true;

    [[nodiscard]] bool holds(std::string_view text) const;
    void write(std::string& out, const std::string& value) const;
    [[nodiscard]] Wanted read(const Node& from, std::string& value) const;
};

inline constexpr Text aName{1, 64, false};
inline constexpr Text aText{};

/// Characters of an id. The fold lengthens some (`@` and a seq, `@` and a count), and what comes
/// out must still be a name.
inline constexpr std::size_t mostOfId = 40;

/// Whether a text is an id: two small letters, a hyphen, then letters, digits and `-._`; at
/// most mostOfId.
[[nodiscard]] bool isId(std::string_view text);

/// An id with that prefix of two letters; without one any id.
struct IdOf {
    std::string_view prefix{};

    void write(std::string& out, const std::string& value) const;
    [[nodiscard]] Wanted read(const Node& from, std::string& value) const;
};

/// A BLAKE2b hash in hexadecimal.
struct Digest {
    void write(std::string& out, const std::string& value) const;
    [[nodiscard]] Wanted read(const Node& from, std::string& value) const;
};

inline constexpr Digest aDigest{};

struct Flag {
    void write(std::string& out, bool value) const { out += value ? "true" : "false"; }
    [[nodiscard]] Wanted read(const Node& from, bool& value) const;
};

inline constexpr Flag aFlag{};

struct Whole {
    std::int64_t least = 0;
    std::int64_t most = 0;
    std::int64_t step = 1; ///< must be a multiple of it

    void write(std::string& out, std::int64_t value) const { out += std::to_string(value); }
    [[nodiscard]] Wanted read(const Node& from, std::int64_t& value) const;
    [[nodiscard]] Wanted read(const Node& from, int& value) const
    {
        std::int64_t wide = 0;
        Wanted wanted = read(from, wide);
        value = static_cast<int>(wide);
        return wanted;
    }
};

inline constexpr Whole aCounter{0, 1'000'000'000};
/// Hours of aeration or incubation, in minutes.
inline constexpr std::int64_t mostMinutes = 100'000;
inline constexpr Whole inMinutes{0, mostMinutes};
/// What evidence states in minutes with 3 decimals.
inline constexpr Whole inMilliseconds{0, mostMinutes * 60'000, 60};
inline constexpr Whole inCelsiusHundredths{-9'000, 50'000};

/// A moment as `[ms, offset]`.
struct Time {
    void write(std::string& out, const JournalTime& value) const;
    [[nodiscard]] Wanted read(const Node& from, JournalTime& value) const;
};

inline constexpr Time aTime{};

struct Day {
    void write(std::string& out, Date value) const;
    [[nodiscard]] Wanted read(const Node& from, Date& value) const;
};

inline constexpr Day aDay{};

/// A number as typed. Limits are in thousandths.
struct Typed {
    int decimals = 3;
    std::int64_t least = 0;
    std::int64_t most = 0;

    void write(std::string& out, const TypedNumber& value) const
    {
        appendJsonString(out, value.typed);
    }
    [[nodiscard]] Wanted read(const Node& from, TypedNumber& value) const;
};

inline constexpr Typed typedMinutes{3, 0, 100'000'000};
inline constexpr Typed typedCelsius{2, -90'000, 500'000};

/// A value as typed, with its unit.
struct TypedValue {
    void write(std::string& out, const TypedQuantity& value) const;
    [[nodiscard]] Wanted read(const Node& from, TypedQuantity& value) const;
};

inline constexpr TypedValue aTypedValue{};

/// A value in its unit, without zeros at its end.
struct Value {
    void write(std::string& out, const Quantity& value) const;
    [[nodiscard]] Wanted read(const Node& from, Quantity& value) const;
};

inline constexpr Value aValue{};

/// "a", "b" or "c", for what is wanted.
template <class Words>
[[nodiscard]] Wanted oneOfWords(const Words& words)
{
    Wanted wanted = "one of";
    for (const auto& word : words) {
        wanted += (&word == &*std::begin(words) ? " \"" : ", \"") + std::string(word) + '"';
    }
    return wanted;
}

/// A word of a table.
template <const auto& Table>
struct OneOf {
    template <class Enum>
    void write(std::string& out, const Enum& which) const
    {
        appendJsonString(out, wordOf(Table, which));
    }
    template <class Enum>
    [[nodiscard]] Wanted read(const Node& from, Enum& which) const
    {
        if (const std::string_view* const text = from.text()) {
            if (const auto found = valueOf(Table, *text)) {
                which = *found;
                return {};
            }
        }
        std::vector<std::string_view> words;
        for (const auto& word : Table) {
            words.push_back(word.text);
        }
        return oneOfWords(words);
    }
};

template <const auto& Table>
inline constexpr OneOf<Table> oneOf{};

/// A word of an enumeration that has textOf() and runs from 0 to `Last`.
template <auto Last>
struct WordUpTo {
    using Enum = decltype(Last);

    void write(std::string& out, Enum which) const { appendJsonString(out, textOf(which)); }
    [[nodiscard]] Wanted read(const Node& from, Enum& which) const
    {
        std::vector<std::string_view> words;
        for (int i = 0; i <= static_cast<int>(Last); ++i) {
            const auto each = static_cast<Enum>(i);
            words.push_back(textOf(each));
            if (from.text() != nullptr && *from.text() == words.back()) {
                which = each;
                return {};
            }
        }
        return oneOfWords(words);
    }
};

template <auto Last>
inline constexpr WordUpTo<Last> wordUpTo{};

} // namespace loadwarden::body_format
