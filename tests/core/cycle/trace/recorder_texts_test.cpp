#include "core/cycle/trace/trace_words.h"
#include "tests/core/cycle/trace/reading_support.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <sstream>

namespace loadwarden {
namespace {

using namespace test_reading;

std::string fromHex(const std::string& hex)
{
    std::string bytes;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
        bytes += static_cast<char>(std::stoi(hex.substr(i, 2), nullptr, 16));
    }
    return bytes;
}

std::string outputOf(const char* command)
{
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command, "r"), pclose);
    std::string output;
    char buffer[4096];
    for (std::size_t count = 1; pipe && count != 0;) {
        count = std::fread(buffer, 1, sizeof buffer, pipe.get());
        output.append(buffer, count);
    }
    return output;
}

/// The mapping of a file by the words of recorder_texts.py.
TraceMapping mappingOf(std::istringstream& words)
{
    std::string separator;
    std::string decimal;
    std::string form;
    std::string order;
    words >> separator >> decimal >> form >> order;
    TraceMapping mapping;
    mapping.separator = valueOf(fieldSeparatorWords, separator).value();
    mapping.decimal = valueOf(decimalMarkWords, decimal).value();
    mapping.time.form = valueOf(timeFormWords, form).value();
    mapping.time.order = valueOf(dateOrderWords, order).value_or(DateOrder::yearMonthDay);
    mapping.header = {"t", std::string("A \"quoted\"") + charOf(mapping.separator) + " name", "B",
                      "remark", "C"};
    mapping.headerLine = 2;
    mapping.columns = 5;
    for (const std::size_t column : {1U, 2U, 4U}) {
        mapping.channels.push_back({column, std::to_string(column), ChannelRole::loadTemperature,
                                    RecorderUnit::celsius, PressureZero::absolute});
    }
    return mapping;
}

// Python's csv and datetime as the outside source; see recorder_texts.py beside this file.
TEST(RecorderTexts, AreReadAsPythonsCsvReadsThem)
{
    const std::string output = outputOf(
        LOADWARDEN_PYTHON " '" LOADWARDEN_SOURCE_DIR "/tests/core/cycle/trace/recorder_texts.py'");
    std::istringstream lines(output);
    TraceReading reading;
    std::size_t files = 0;
    std::size_t row = 0;
    std::size_t rows = 0;
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::string kind;
        words >> kind;
        if (kind == "file") {
            ASSERT_EQ(row, reading.trace.samples());
            const TraceMapping mapping = mappingOf(words);
            std::string hex;
            words >> hex;
            reading = read(fromHex(hex), mapping);
            ++files;
            row = 0;
            continue;
        }
        ASSERT_LT(row, reading.trace.samples()) << "file " << files;
        double seconds = 0;
        words >> seconds;
        ASSERT_EQ(reading.trace.seconds[row], seconds) << "file " << files;
        for (const TraceChannel& channel : reading.trace.channels) {
            std::string value;
            words >> value;
            ASSERT_EQ(channel.values[row], std::strtod(value.c_str(), nullptr))
                << "file " << files << " row " << row;
        }
        ++row;
        ++rows;
    }
    EXPECT_EQ(row, reading.trace.samples());
    EXPECT_EQ(files, 108U);
    EXPECT_GT(rows, 2000U);
}

} // namespace
} // namespace loadwarden
