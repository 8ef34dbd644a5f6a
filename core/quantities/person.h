#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

namespace loadwarden {

/// Some bytes of a text in UTF-8.
class CharacterSet {
public:
    explicit constexpr CharacterSet(std::string_view characters)
    {
        for (const char c : characters) {
            m_has[static_cast<unsigned char>(c)] = true;
        }
    }
    /// The same and all bytes from first to last.
    [[nodiscard]] constexpr CharacterSet with(unsigned first, unsigned last) const
    {
        CharacterSet both = *this;
        for (unsigned byte = first; byte <= last; ++byte) {
            both.m_has[byte] = true;
        }
        return both;
    }
    [[nodiscard]] constexpr bool contains(char c) const
    {
        return m_has[static_cast<unsigned char>(c)];
    }
    /// Where from a place on the first other character stands; the end where there is none.
    [[nodiscard]] constexpr std::size_t skipIn(std::string_view text, std::size_t from) const
    {
        while (from < text.size() && contains(text[from])) {
            ++from;
        }
        return from;
    }

private:
    std::array<bool, 256> m_has{};
};

/// What does not count in a name: the white space of ASCII.
inline constexpr CharacterSet blanks(" \t\n\v\f\r");

/// What does not count in a cycle type.
inline constexpr CharacterSet cycleTypeBlanks(" \t\n\v\f\r-_");

/// Whether anything of a cycle type is left then: what has nothing left is unknown.
[[nodiscard]] inline bool isKnownCycleType(std::string_view type)
{
    return cycleTypeBlanks.skipIn(type, 0) != type.size();
}

/// Letters, digits, and all beyond ASCII.
inline constexpr CharacterSet saying =
    CharacterSet("").with('0', '9').with('A', 'Z').with('a', 'z').with(0x80, 0xFF);

/// Whether a text says anything: it has a letter, a digit or a character beyond ASCII. A hyphen or
/// a question mark is no signature and no reason.
[[nodiscard]] inline bool isNamed(std::string_view by)
{
    for (const char c : by) { // mostly ends with the first: asked of every act, so it is kept small
        if (saying.contains(c)) {
            return true;
        }
    }
    return false;
}

/// Whether two names are the same where some characters and the case of A to Z do not matter.
[[nodiscard]] inline bool isSameWithout(const CharacterSet& ignored, std::string_view a,
                                        std::string_view b)
{
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    std::size_t i = 0;
    std::size_t k = 0;
    while (true) {
        i = ignored.skipIn(a, i);
        k = ignored.skipIn(b, k);
        if (i == a.size() || k == b.size()) {
            return i == a.size() && k == b.size();
        }
        if (lower(a[i++]) != lower(b[k++])) {
            return false;
        }
    }
}

/// Whether two names or numbers are one person: blanks and the case of A to Z do not matter, so
/// that two spellings of one badge are not taken for two persons. Labels of items are compared so,
/// too.
[[nodiscard]] inline bool isSamePerson(std::string_view a, std::string_view b)
{
    return isSameWithout(blanks, a, b);
}

/// A name as isSamePerson compares it: without blanks, A to Z in small letters.
[[nodiscard]] inline std::string foldedPerson(std::string_view name)
{
    std::string folded;
    for (const char c : name) {
        if (!blanks.contains(c)) {
            folded += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }
    return folded;
}

/// Whether two cycle types are the same, however they are written: blanks, hyphens, low lines and
/// the case of A to Z do not matter.
[[nodiscard]] inline bool isSameCycleType(std::string_view a, std::string_view b)
{
    return isSameWithout(cycleTypeBlanks, a, b);
}

/// Whether two names or numbers name two different persons.
[[nodiscard]] inline bool isAnotherPerson(std::string_view a, std::string_view b)
{
    return isNamed(a) && isNamed(b) && !isSamePerson(a, b);
}

} // namespace loadwarden
