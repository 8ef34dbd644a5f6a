#include "core/cycle/trace/trace_words.h"
#include "core/exchange/trace_mapping_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loadwarden {
namespace {

TraceMapping fullMapping()
{
    TraceMapping mapping;
    mapping.encoding = TextEncoding::latin1;
    mapping.separator = FieldSeparator::semicolon;
    mapping.decimal = DecimalMark::comma;
    mapping.header = {"Date", "Time", "T \"1\" °C", "", "p", "No"};
    mapping.headerLine = 4;
    mapping.linesToSkip = 2;
    mapping.columns = 6;
    mapping.time = {1, TimeForm::dateTime, DateOrder::dayMonthYear, 0};
    mapping.counterColumn = 5;
    mapping.counterLabel = "Cycle no";
    mapping.channels = {
        {2, "T \"1\" °C", ChannelRole::drainTemperature, RecorderUnit::fahrenheit,
         PressureZero::absolute},
        {3, "", ChannelRole::notUsed},
        {4, "p", ChannelRole::chamberPressure, RecorderUnit::psi, PressureZero::gauge}};
    return mapping;
}

std::string problemOf(const std::string& json)
{
    const auto result = readTraceMapping(json);
    const auto* error = std::get_if<TraceMappingError>(&result);
    return error == nullptr ? "none" : error->message;
}

TEST(TraceMappingJson, ComesBackAsItWas)
{
    for (const TimeForm form :
         {TimeForm::seconds, TimeForm::hoursMinutesSeconds, TimeForm::dateTime}) {
        TraceMapping mapping = fullMapping();
        if (form != TimeForm::dateTime) {
            mapping.time = {.column = 1, .form = form};
            mapping.counterColumn.reset();
            mapping.header.clear();
            mapping.headerLine = 0;
        }
        const std::string json = writeTraceMapping(mapping);
        const auto result = readTraceMapping(json);
        ASSERT_TRUE(std::holds_alternative<TraceMapping>(result)) << json << problemOf(json);
        EXPECT_EQ(std::get<TraceMapping>(result), mapping);
    }
}

TEST(TraceMappingJson, SaysWhatIsWrongAndWhere)
{
    const nlohmann::json good = nlohmann::json::parse(writeTraceMapping(fullMapping()));
    const auto with = [&good](const std::string& pointer, const nlohmann::json& value) {
        nlohmann::json json = good;
        json[nlohmann::json::json_pointer(pointer)] = value;
        return problemOf(json.dump());
    };
    EXPECT_EQ(problemOf(good.dump()), "none");
    EXPECT_EQ(with("/separator", "pipe"),
              "\"separator\" must be one of \"comma\", \"semicolon\", \"tab\".");
    EXPECT_EQ(with("/columns", 0), "\"columns\" must be a whole number from 1 to 256.");
    EXPECT_EQ(with("/columns", -1), "\"columns\" must be a whole number from 1 to 256.");
    EXPECT_EQ(with("/columns", 6.5), "\"columns\" must be a whole number from 1 to 256.");
    EXPECT_EQ(with("/columns", 3), "A \"column\" lies beyond the number of \"columns\" of a line.");
    EXPECT_EQ(with("/time/form", 3).substr(0, 11), "\"time.form\"");
    EXPECT_EQ(with("/time", 3), "\"time\" must be an object in braces.");
    EXPECT_EQ(with("/more", 3), "\"more\" is no member that this program knows; take it out.");
    EXPECT_EQ(with("/channels/0/unit", "kPa"),
              "A channel's \"unit\" does not go with its \"role\".");
    EXPECT_EQ(with("/channels/0/column", 2), "One \"column\" is used for two things.");
    EXPECT_EQ(with("/channels/2/zero", "none").substr(0, 18), "\"channels[3].zero\"");
    EXPECT_EQ(with("/header", nlohmann::json::array({1})),
              "\"header\" must be a list of texts in quotation marks.");
    EXPECT_EQ(with("/traceMappingVersion", 2),
              "\"traceMappingVersion\" must be a whole number from 1 to 1.");
    for (const auto& [name, value] : good.items()) {
        nlohmann::json json = good;
        json.erase(name);
        if (name != "header" && name != "counterColumn" && name != "counterLabel") {
            EXPECT_NE(problemOf(json.dump()), "none") << name;
        }
    }
}

TEST(TraceMappingJson, AnswersForAnyText)
{
    EXPECT_EQ(problemOf(""), "The mapping is no JSON text.");
    EXPECT_EQ(problemOf("{\"a\":1"), "The mapping is no JSON text.");
    EXPECT_EQ(problemOf("[1,2]"), "The text must be an object in braces.");
    EXPECT_EQ(problemOf("{\"a\":1,\"a\":2}"), "\"a\" stands twice in one object.");
    EXPECT_EQ(problemOf(std::string(100'000, '[')),
              "The mapping's braces and brackets are nested too deeply.");
    EXPECT_EQ(problemOf(std::string(2'000'000, ' ')),
              "The mapping is larger than 1 MiB; that is none.");
    EXPECT_EQ(problemOf("\xFF"), "The mapping is no JSON text.");
}

/// Every word is one value's, and every value has a word.
template <class Table>
void expectWords(const Table& table, std::size_t count)
{
    EXPECT_EQ(std::size(table), count);
    for (std::size_t i = 0; i < count; ++i) {
        EXPECT_EQ(static_cast<std::size_t>(table[i].value), i) << table[i].text;
        EXPECT_EQ(valueOf(table, table[i].text), table[i].value);
    }
}

TEST(TraceMappingJson, EveryValueHasAWord)
{
    expectWords(traceDefectWords, traceDefectKindCount);
    expectWords(timeFormWords, static_cast<std::size_t>(TimeForm::dateTime) + 1);
    expectWords(channelRoleWords, static_cast<std::size_t>(ChannelRole::notUsed) + 1);
    expectWords(recorderUnitWords, static_cast<std::size_t>(RecorderUnit::mmHg) + 1);
    expectWords(fieldSeparatorWords, static_cast<std::size_t>(FieldSeparator::tab) + 1);
    expectWords(dateOrderWords, static_cast<std::size_t>(DateOrder::monthDayYear) + 1);
}

} // namespace
} // namespace loadwarden
