#include "app/cli/desk/json_line.h"

#include "core/quantities/utf8.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>
#include <stdexcept>
#include <string_view>
#include <vector>

namespace loadwarden::cli {

namespace {

using nlohmann::json;

/// Of the byte at that place, from 1: columns count characters.
std::string columnOf(std::string_view line, std::size_t at)
{
    std::size_t column = 1;
    for (std::size_t i = 0; i < std::min(at, line.size());) {
        i += std::max<std::size_t>(utf8::characterLength(line.substr(i)), 1);
        ++column;
    }
    return "column " + std::to_string(column);
}

/// Where the first byte is that belongs to no character of UTF-8; npos: all are good.
std::size_t firstStray(std::string_view text)
{
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t length = utf8::characterLength(text.substr(i));
        if (length == 0) {
            return i;
        }
        i += length;
    }
    return std::string_view::npos;
}

/// `at`: the byte at which the reader gave up.
std::string sentenceOf(std::string_view line, std::size_t at)
{
    if (at >= line.size()) {
        return "the line ends before its JSON does; a bracket or a quotation mark is missing";
    }
    return columnOf(line, at)
           + ": this is no JSON from here on; look there and just before for a quotation mark, "
             "comma, colon or bracket that is missing or too much";
}

} // namespace

json objectOf(const std::string& line)
{
    if (line.size() > mostBytesOfLine) {
        throw std::runtime_error("the line is longer than a million bytes");
    }
    if (const std::size_t stray = firstStray(line); stray != std::string_view::npos) {
        throw std::runtime_error(columnOf(line, stray)
                                 + ": this is no text in UTF-8; save the file as UTF-8");
    }
    std::vector<std::set<std::string>> members;
    const auto watch = [&](int, json::parse_event_t event, json& value) {
        if (event == json::parse_event_t::object_start) {
            members.emplace_back();
        } else if (event == json::parse_event_t::object_end) {
            members.pop_back();
        } else if (event == json::parse_event_t::key
                   && !members.back().insert(value.get<std::string>()).second) {
            throw std::runtime_error("the member \"" + value.get<std::string>()
                                     + "\" stands there twice");
        }
        return true;
    };
    try {
        json object = json::parse(line, watch);
        if (object.is_object()) {
            return object;
        }
    } catch (const json::parse_error& error) {
        // Its bytes count from 1.
        throw std::runtime_error(sentenceOf(line, error.byte == 0 ? 0 : error.byte - 1));
    } catch (const json::exception&) {
        // A number that no double holds.
        throw std::runtime_error("it has a number that is too great");
    }
    throw std::runtime_error("each line is one JSON object, from { to }");
}

} // namespace loadwarden::cli
