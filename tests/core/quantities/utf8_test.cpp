#include "core/quantities/utf8.h"

#include <gtest/gtest.h>

#include <string>

namespace loadwarden {
namespace {

// Unicode 15, table 3-7: the first and last of every row, and what lies just outside.
TEST(Utf8, TakesWellFormedCharactersOnly)
{
    struct Row {
        std::string text;
        std::size_t length;
    };
    const Row rows[] = {
        {std::string(1, '\0'), 1},
        {"\x7F", 1},
        {"\xC2\x80", 2},
        {"\xDF\xBF", 2},
        {"\xE0\xA0\x80", 3},
        {"\xE0\xBF\xBF", 3},
        {"\xE1\x80\x80", 3},
        {"\xEC\xBF\xBF", 3},
        {"\xED\x80\x80", 3},
        {"\xED\x9F\xBF", 3},
        {"\xEE\x80\x80", 3},
        {"\xEF\xBF\xBF", 3},
        {"\xF0\x90\x80\x80", 4},
        {"\xF0\xBF\xBF\xBF", 4},
        {"\xF1\x80\x80\x80", 4},
        {"\xF3\xBF\xBF\xBF", 4},
        {"\xF4\x80\x80\x80", 4},
        {"\xF4\x8F\xBF\xBF", 4},
        {"\x80", 0},
        {"\xC1\xBF", 0},
        {"\xC2", 0},
        {"\xC2\xC0", 0},
        {"\xE0\x9F\xBF", 0},
        {"\xED\xA0\x80", 0},
        {"\xE1\x80", 0},
        {"\xE1\x80\xC0", 0},
        {"\xF0\x8F\xBF\xBF", 0},
        {"\xF4\x90\x80\x80", 0},
        {"\xF1\x80\x80", 0},
        {"\xF5\x80\x80\x80", 0},
        {"\xFF", 0},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(utf8::characterLength(row.text), row.length) << testing::PrintToString(row.text);
        EXPECT_EQ(utf8::characterLength(row.text + "x"), row.length) << "more behind it";
    }
}

TEST(Utf8, CountsCharacters)
{
    EXPECT_EQ(utf8::characterCount(""), 0U);
    EXPECT_EQ(utf8::characterCount("abc"), 3U);
    EXPECT_EQ(utf8::characterCount("121 \xC2\xB0"
                                   "C \xF0\x9F\xA7\xAA"),
              8U);
}

} // namespace
} // namespace loadwarden
