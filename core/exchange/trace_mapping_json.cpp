#include "core/exchange/trace_mapping_json.h"

#include "core/cycle/trace/trace_words.h"
#include "core/exchange/json_members.h"

#include <nlohmann/json.hpp>

#include <set>
#include <utility>
#include <vector>

namespace loadwarden {
namespace {

constexpr int version = 1;
constexpr std::size_t mostBytes = std::size_t{1} << 20U;
constexpr std::size_t mostLines = 1'000'000;

/// A column, from 1 in the text and from 0 in the program.
std::size_t columnIn(JsonMembers& reader, const char* name)
{
    return reader.count(name, 1, mostTraceColumns) - 1;
}

TimeColumn readTimeColumn(const Json& json, std::string& problem)
{
    JsonMembers reader(json, "time", problem);
    TimeColumn time;
    time.column = columnIn(reader, "column");
    time.form = reader.word("form", timeFormWords);
    if (time.form == TimeForm::dateTime) {
        time.order = reader.word("dateOrder", dateOrderWords);
        if (reader.has("dateColumn")) {
            time.dateColumn = columnIn(reader, "dateColumn");
        }
    }
    reader.close();
    return time;
}

MappedChannel readChannel(const Json& json, std::size_t which, std::string& problem)
{
    JsonMembers reader(json, "channels[" + std::to_string(which + 1) + "]", problem);
    MappedChannel channel;
    channel.column = columnIn(reader, "column");
    channel.name = reader.text("name");
    channel.role = reader.word("role", channelRoleWords);
    if (channel.role != ChannelRole::notUsed) {
        channel.unit = reader.word("unit", recorderUnitWords);
    }
    if (channel.role == ChannelRole::chamberPressure) {
        channel.zero = reader.word("zero", pressureZeroWords);
    }
    reader.close();
    return channel;
}

TraceMapping readMembers(const Json& json, std::string& problem)
{
    TraceMapping mapping;
    JsonMembers reader(json, "", problem);
    (void)reader.count("traceMappingVersion", version, version);
    mapping.encoding = reader.word("encoding", textEncodingWords);
    mapping.separator = reader.word("separator", fieldSeparatorWords);
    mapping.decimal = reader.word("decimal", decimalMarkWords);
    if (reader.has("header")) {
        for (const Json& name : reader.list("header", mostTraceColumns)) {
            mapping.header.push_back(name.is_string() ? name.get<std::string>() : std::string());
            if (!name.is_string() && problem.empty()) {
                problem = "\"header\" must be a list of texts in quotation marks.";
            }
        }
        mapping.headerLine = reader.count("headerLine", 1, mostLines);
    }
    mapping.linesToSkip = reader.count("linesToSkip", 0, mostLines);
    mapping.columns = reader.count("columns", 1, mostTraceColumns);
    mapping.time = readTimeColumn(reader.object("time"), problem);
    if (reader.has("counterColumn")) {
        mapping.counterColumn = columnIn(reader, "counterColumn");
    }
    if (reader.has("counterLabel")) {
        mapping.counterLabel = reader.text("counterLabel");
    }
    std::size_t which = 0;
    for (const Json& channel : reader.list("channels", mostTraceColumns)) {
        mapping.channels.push_back(readChannel(channel, which++, problem));
    }
    reader.close();
    return mapping;
}

std::string sayFault(MappingFault fault)
{
    switch (fault) {
    case MappingFault::none: return {};
    case MappingFault::noColumns: return "\"columns\" must be 1 at least.";
    case MappingFault::tooManyColumns: return "There must be 256 columns at most.";
    case MappingFault::columnOutside:
        return "A \"column\" lies beyond the number of \"columns\" of a line.";
    case MappingFault::columnTwice: return "One \"column\" is used for two things.";
    case MappingFault::noChannel:
        return "At least one of the \"channels\" must have a \"role\" other than \"not-used\".";
    case MappingFault::unitOfOtherKind:
        return "A channel's \"unit\" does not go with its \"role\".";
    case MappingFault::dateWithoutClock:
        return "\"dateColumn\" goes with the \"form\" \"date-time\" only.";
    case MappingFault::headerWithoutLine: return "\"header\" must name one column at least.";
    case MappingFault::impossibleValue: return "The mapping holds a value that does not exist.";
    }
    return {};
}

/// JSON without members that stand twice; nullopt: it is none.
bool parse(std::string_view text, Json& json, std::string& problem)
{
    std::vector<std::set<std::string>> names;
    const Json::parser_callback_t once = [&](int depth, Json::parse_event_t event, Json& parsed) {
        constexpr int deepest = 8;
        if (depth > deepest) {
            problem = "The mapping's braces and brackets are nested too deeply.";
        } else if (event == Json::parse_event_t::object_start) {
            names.emplace_back();
        } else if (event == Json::parse_event_t::object_end && !names.empty()) {
            names.pop_back();
        } else if (event == Json::parse_event_t::key && !names.empty()
                   && !names.back().insert(parsed.get<std::string>()).second && problem.empty()) {
            problem = "\"" + parsed.get<std::string>() + "\" stands twice in one object.";
        }
        return problem.empty();
    };
    constexpr bool withExceptions = false;
    json = Json::parse(text, once, withExceptions);
    if (json.is_discarded() && problem.empty()) {
        problem = "The mapping is no JSON text.";
    }
    return problem.empty();
}

} // namespace

std::string writeTraceMapping(const TraceMapping& mapping)
{
    Json json;
    json["traceMappingVersion"] = version;
    json["encoding"] = wordOf(textEncodingWords, mapping.encoding);
    json["separator"] = wordOf(fieldSeparatorWords, mapping.separator);
    json["decimal"] = wordOf(decimalMarkWords, mapping.decimal);
    if (!mapping.header.empty()) {
        json["header"] = mapping.header;
        json["headerLine"] = mapping.headerLine;
    }
    json["linesToSkip"] = mapping.linesToSkip;
    json["columns"] = mapping.columns;
    Json& time = json["time"];
    time["column"] = mapping.time.column + 1;
    time["form"] = wordOf(timeFormWords, mapping.time.form);
    if (mapping.time.form == TimeForm::dateTime) {
        time["dateOrder"] = wordOf(dateOrderWords, mapping.time.order);
        if (mapping.time.dateColumn) {
            time["dateColumn"] = *mapping.time.dateColumn + 1;
        }
    }
    if (mapping.counterColumn) {
        json["counterColumn"] = *mapping.counterColumn + 1;
    }
    if (!mapping.counterLabel.empty()) {
        json["counterLabel"] = mapping.counterLabel;
    }
    json["channels"] = Json::array();
    for (const MappedChannel& channel : mapping.channels) {
        Json each;
        each["column"] = channel.column + 1;
        each["name"] = channel.name;
        each["role"] = wordOf(channelRoleWords, channel.role);
        if (channel.role != ChannelRole::notUsed) {
            each["unit"] = wordOf(recorderUnitWords, channel.unit);
        }
        if (channel.role == ChannelRole::chamberPressure) {
            each["zero"] = wordOf(pressureZeroWords, channel.zero);
        }
        json["channels"].push_back(std::move(each));
    }
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

std::variant<TraceMapping, TraceMappingError> readTraceMapping(std::string_view text)
{
    std::string problem;
    Json json;
    if (text.size() > mostBytes) {
        return TraceMappingError{"The mapping is larger than 1 MiB; that is none."};
    }
    if (!parse(text, json, problem)) {
        return TraceMappingError{std::move(problem)};
    }
    TraceMapping mapping = readMembers(json, problem);
    if (problem.empty()) {
        problem = sayFault(faultOf(mapping));
    }
    if (!problem.empty()) {
        return TraceMappingError{std::move(problem)};
    }
    return mapping;
}

} // namespace loadwarden
