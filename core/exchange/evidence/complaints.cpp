#include "core/exchange/evidence/complaints.h"

#include "core/exchange/evidence/record_splitter.h"

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
        const std::size_t length = utf8Length(text.data() + at, text.data() + text.size());
        const auto byte = static_cast<unsigned char>(text[at]);
        if (length == 0 || byte < 0x20 || byte == 0x7F) {
            constexpr std::string_view digits = "0123456789abcdef";
            out += "\\u00";
            out += digits[byte >> 4U];
            out += digits[byte & 0xFU];
            ++at;
            continue;
        }
        out.append(text, at, length);
        at += length;
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

std::string wrongWord(const WordRule& rule, std::string_view found)
{
    std::string message = "must be " + listed(rule.words) + ", not " + quoted(found);
    const std::string_view near = nearest(rule.words, found);
    if (!near.empty()) {
        message += "; was " + quoted(near) + " meant?";
    }
    return message;
}

std::string wrongNumber(const NumberRule& rule)
{
    if (rule.least == rule.most) {
        return "must be " + scaledText(rule.least, rule.decimals);
    }
    const std::string range = " from " + scaledText(rule.least, rule.decimals) + " to "
                              + scaledText(rule.most, rule.decimals);
    if (rule.decimals == 0) {
        return "must be a whole number" + range;
    }
    return "must be a number" + range + " with at most " + std::to_string(rule.decimals)
           + " decimals";
}

std::string wrongTime(std::string_view found)
{
    return "must be a moment with its offset on a day that exists, written like "
           "2031-03-04T07:14-06:00, not "
           + quoted(found);
}

std::string wrongDate(std::string_view found)
{
    return "must be a date that exists, written like 2031-03-04, not " + quoted(found);
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

std::string pointerStep(std::string_view name)
{
    std::string step = "/";
    for (const char c : name) {
        if (c == '~') {
            step += "~0";
        } else if (c == '/') {
            step += "~1";
        } else {
            step += c;
        }
    }
    return step;
}

} // namespace loadwarden::evidence_format
