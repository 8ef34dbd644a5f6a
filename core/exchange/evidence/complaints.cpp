#include "core/exchange/evidence/complaints.h"

#include "core/exchange/evidence/record_splitter.h"
#include "core/quantities/utf8.h"

#include <algorithm>
#include <array>
#include <vector>

namespace loadwarden::evidence_format {

namespace {

constexpr std::size_t mostQuoted = 60; // characters

std::string scaledText(std::int64_t scaled, int decimals)
{
    std::int64_t unit = 1;
    for (int i = 0; i < decimals; ++i) {
        unit *= 10;
    }
    return std::to_string(scaled / unit); // all limits of the format are whole
}

char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// How many letters must be put in, left away or changed to make one text of the other; capital
/// letters count as small ones.
std::size_t editDistance(std::string_view a, std::string_view b)
{
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t change = diagonal + (lower(a[i]) == lower(b[j]) ? 0U : 1U);
            diagonal = row[j + 1];
            row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
        }
    }
    return row.back();
}

/// The word that was probably meant; empty: none is near.
std::string_view nearest(std::span<const std::string_view> words, std::string_view found)
{
    std::string_view best;
    std::size_t bestDistance = 3;
    if (found.size() > 40) {
        return best;
    }
    for (const std::string_view word : words) {
        const std::size_t distance = editDistance(found, word);
        if (distance < bestDistance && distance < word.size()) {
            best = word;
            bestDistance = distance;
        }
    }
    return best;
}

/// What should be a text and is none.
std::string noText(char first, const char* otherwise)
{
    switch (first) {
    case '\'': return "texts stand in double quotation marks (\"), not in single ones";
    case '\xE2':
    case '\xC2': return "only the straight quotation marks (\") can be read here";
    case '/':
    case '#': return "a comment cannot stand here; the field \"comment\" of the record is for that";
    default: return otherwise;
    }
}

/// A number as written, which may be of any length.
std::string shortened(std::string_view number)
{
    return std::string(number.substr(0, mostQuoted)) + (number.size() > mostQuoted ? "..." : "");
}

std::vector<std::string_view> namesOf(const ObjectType& type)
{
    std::vector<std::string_view> names;
    for (const Field& field : type.fields) {
        names.push_back(field.name);
    }
    return names;
}

} // namespace

std::string quoted(std::string_view text)
{
    std::string out = "\"";
    std::size_t count = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        if (count++ == mostQuoted) {
            out += "...";
            break;
        }
        const utf8::Character character = utf8::characterAt(text.substr(at));
        out += shown(text.substr(at, character.bytes));
        at += character.bytes;
    }
    out += '"';
    return out;
}

std::string listed(std::span<const std::string_view> words)
{
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) {
            out += i + 1 == words.size() ? " or " : ", ";
        }
        out += quoted(words[i]);
    }
    return out;
}

std::string wrongKind(JsonKind found, std::string_view wanted)
{
    constexpr std::array<std::string_view, 6> names{"an object", "a list",        "a text",
                                                    "a number",  "true or false", "null"};
    std::string message = "must be ";
    message += wanted;
    message += "; here stands ";
    message += names[static_cast<std::size_t>(found)];
    if (found == JsonKind::null) {
        message += " (leave the field out when there is nothing to say)";
    }
    return message;
}

std::string wrongLength(const TextRule& rule, std::size_t found)
{
    if (found < rule.least) {
        return "must not be empty; leave the field out when there is nothing to say";
    }
    return "must have at most " + std::to_string(rule.most) + " characters; this has "
           + std::to_string(found);
}

std::string wrongCharacter(const TextRule& rule, Unseen found)
{
    if (!rule.isFree) {
        return unseenText(found);
    }
    return "character " + std::to_string(found.number) + " is " + codeText(found.code)
           + ", a control character; leave it out (only tabs, \\t, and line breaks, \\n, may "
             "stand in a text)";
}

std::string wrongWord(const WordRule& rule, std::string_view found)
{
    std::string message = "must be " + listed(rule.words) + ", not " + quoted(found);
    const std::string_view near = nearest(rule.words, found);
    if (!near.empty()) {
        message += "; was " + quoted(near) + " meant?";
    }
    return message;
}

std::string wrongNumber(const NumberRule& rule, std::string_view written)
{
    const std::string found = ", not " + shortened(written);
    if (rule.least == rule.most) {
        return "must be " + scaledText(rule.least, rule.decimals) + found;
    }
    const std::string range = " from " + scaledText(rule.least, rule.decimals) + " to "
                              + scaledText(rule.most, rule.decimals);
    if (rule.decimals == 0) {
        return "must be a whole number" + range + found;
    }
    return "must be a number" + range + " with at most " + std::to_string(rule.decimals)
           + " decimals" + found;
}

std::string wrongTime(std::string_view found)
{
    const std::string message = "must be a moment with its offset on a day that exists, written "
                                "like 2031-03-04T07:14-06:00, not "
                                + quoted(found);
    if (found.size() <= mostQuoted && parseInstant(std::string(found) + 'Z')) {
        return message + "; the offset from UTC is missing at its end";
    }
    return message;
}

std::string wrongOffset(std::string_view found, Instant time, const Zone& zone)
{
    return "must be written as the facility's clocks show it (" + zone.name()
           + "), or in UTC with Z; " + quoted(found) + " would be "
           + formatAt(time, zone.offsetAt(time))
           + " there: correct the time, its offset from UTC or the facility's time zone";
}

std::string wrongDate(std::string_view found)
{
    const std::string message =
        "must be a date that exists, written like 2031-03-04, not " + quoted(found);
    if (found.size() != 7) {
        return message;
    }
    for (const char* day : {"-31", "-30", "-29", "-28"}) {
        const std::string last = std::string(found) + day;
        if (parseDate(last)) {
            return message + "; where only the month is printed write its last day, " + last;
        }
    }
    return message;
}

std::string noValue(char first)
{
    switch (first) {
    case '\0': return "the record ends where a value is missing";
    case ',':
    case '}': return "a value is missing here";
    case ']': return "a value is missing here, or the comma before it is one too many";
    case '+':
    case '.': return "a number begins with a digit or a minus";
    case ':': return "a colon stands here for nothing";
    default:
        return noText(first,
                      "no value is written like this: a text stands in quotation marks, true and "
                      "false in small letters without them");
    }
}

std::string noName(char first)
{
    switch (first) {
    case '\0': return "the record ends where the name of a field is missing";
    case ',': return "a comma stands here for nothing";
    case '}': return "the comma before this bracket is one too many";
    case '{':
    case '[':
    case ']': return "the name of a field is missing before this bracket";
    default: return noText(first, "the name of a field must stand here, in quotation marks");
    }
}

std::string unknownField(const ObjectType& type, std::string_view found)
{
    std::string message = std::string(type.name) + " has no field " + quoted(found);
    const std::string_view near = nearest(namesOf(type), found);
    if (!near.empty()) {
        return message + "; was " + quoted(near) + " meant?";
    }
    return message + "; its fields are listed in the schema of the evidence file";
}

std::string missingFields(const ObjectType& type, FieldSet present)
{
    const FieldSet missing = type.needed & ~present;
    std::string names;
    std::size_t count = 0;
    for (std::size_t i = 0; i < type.fields.size(); ++i) {
        if ((missing >> i & 1U) != 0) {
            names += (count++ == 0 ? "" : ", ") + quoted(type.fields[i].name);
        }
    }
    return std::string(type.name) + " needs the " + (count == 1 ? "field " : "fields ") + names;
}

std::string wrongEncoding(std::string_view firstBytes)
{
    if (firstBytes.starts_with("\xEF\xBB\xBF")) {
        return "the text begins with a byte order mark; save the file as UTF-8 without one";
    }
    if (firstBytes.starts_with("\xFF\xFE") || firstBytes.starts_with("\xFE\xFF")
        || firstBytes.substr(0, 2).find('\0') != std::string_view::npos) {
        return "the text looks like UTF-16 or UTF-32; save the file as UTF-8";
    }
    return {};
}

std::string nulProblem()
{
    return "a byte of value 0 stands in the text, which no UTF-8 text file has; the file may be "
           "damaged, or saved in another encoding";
}

std::string tooLongProblem()
{
    return "the record is longer than " + std::to_string(mostRecordBytes >> 20U)
           + " MiB; a record is of one load";
}

} // namespace loadwarden::evidence_format
