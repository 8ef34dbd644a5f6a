#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace loadwarden {

/// What does not count in a name: the white space of ASCII.
inline constexpr std::string_view blanks = " \t\n\v\f\r";

/// What does not count in a cycle type.
inline constexpr std::string_view cycleTypeBlanks = " \t\n\v\f\r-_";

/// Whether anything of a cycle type is left then: what has nothing left is unknown.
[[nodiscard]] inline bool isKnownCycleType(std::string_view type)
{
    return type.find_first_not_of(cycleTypeBlanks) != std::string_view::npos;
}

/// Whether a text says anything: it has a letter, a digit or a character beyond ASCII. A hyphen or
/// a question mark is no signature and no reason.
[[nodiscard]] inline bool isNamed(std::string_view by)
{
    for (const char c : by) { // mostly ends with the first: asked of every act, so it is kept small
        if ((c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z')
            || static_cast<unsigned char>(c) >= 0x80) {
            return true;
        }
    }
    return false;
}

/// Whether two names are the same where some characters and the case of A to Z do not matter.
[[nodiscard]] inline bool isSameWithout(std::string_view ignored, std::string_view a,
                                        std::string_view b)
{
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    std::size_t i = 0;
    std::size_t k = 0;
    while (true) {
        i = std::min(a.find_first_not_of(ignored, i), a.size());
        k = std::min(b.find_first_not_of(ignored, k), b.size());
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
        if (blanks.find(c) == std::string_view::npos) {
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
