#include "core/journal/canonical_json.h"

#include "core/quantities/json_text.h"

#include <nlohmann/json.hpp>

namespace loadwarden {
namespace {

using nlohmann::json;

void append(std::string& out, const json& value, int depth)
{
    if (depth > deepestValue) {
        throw json::other_error::create(502, "an object is nested too deeply", &value);
    }
    switch (value.type()) {
    case json::value_t::null: out += "null"; break;
    case json::value_t::boolean: out += value.get<bool>() ? "true" : "false"; break;
    case json::value_t::number_integer:
    case json::value_t::number_unsigned: out += std::to_string(integerOf(value)); break;
    case json::value_t::string: appendJsonString(out, value.get_ref<const std::string&>()); break;
    case json::value_t::array: {
        char before = '[';
        for (const json& each : value) {
            out += before;
            append(out, each, depth + 1);
            before = ',';
        }
        out += before == '[' ? "[]" : "]";
        break;
    }
    case json::value_t::object: {
        // nlohmann's objects are maps, sorted by the bytes of their names.
        char before = '{';
        for (const auto& [name, each] : value.items()) {
            out += before;
            appendJsonString(out, name);
            out += ':';
            append(out, each, depth + 1);
            before = ',';
        }
        out += before == '{' ? "{}" : "}";
        break;
    }
    case json::value_t::number_float:
    case json::value_t::binary:
    case json::value_t::discarded:
        throw json::other_error::create(501, "a number is no integer", &value);
    }
}

} // namespace

std::int64_t integerOf(const json& value)
{
    if (!value.is_number_integer()) { // signed or unsigned
        throw json::other_error::create(501, "a number is no integer", &value);
    }
    const bool tooGreat =
        value.is_number_unsigned()
        && value.get<std::uint64_t>() > static_cast<std::uint64_t>(greatestInteger);
    const std::int64_t integer = tooGreat ? greatestInteger + 1 : value.get<std::int64_t>();
    if (integer > greatestInteger || integer < -greatestInteger) {
        throw json::other_error::create(500, "an integer is beyond 2^53", &value);
    }
    return integer;
}

std::string canonicalJson(const json& value)
{
    std::string out;
    append(out, value, 0);
    return out;
}

} // namespace loadwarden
