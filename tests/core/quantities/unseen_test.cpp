#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace loadwarden {
namespace {

std::string utf8Of(char32_t code)
{
    std::string text;
    const auto push = [&text](char32_t byte) { text += static_cast<char>(byte); };
    if (code < 0x80) {
        push(code);
    } else if (code < 0x800) {
        push(0xC0U | code >> 6U);
        push(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        push(0xE0U | code >> 12U);
        push(0x80U | (code >> 6U & 0x3FU));
        push(0x80U | (code & 0x3FU));
    } else {
        push(0xF0U | code >> 18U);
        push(0x80U | (code >> 12U & 0x3FU));
        push(0x80U | (code >> 6U & 0x3FU));
        push(0x80U | (code & 0x3FU));
    }
    return text;
}

bool isSurrogate(char32_t code)
{
    return code >= 0xD800 && code <= 0xDFFF;
}

// First and last of each range in which every character has White_Space (but U+0020),
// Default_Ignorable_Code_Point or the general category Cc, listed by Perl 5.36 from its Unicode 14
// data: \p{White_Space}\p{DI}\p{Cc}. Of category Cf besides only the three interlinear annotations
// U+FFF9 to U+FFFB; the other characters of Cf are seen.
constexpr std::pair<char32_t, char32_t> unseen[] = {
    {0x0000, 0x001F},   {0x007F, 0x00A0}, {0x00AD, 0x00AD}, {0x034F, 0x034F},   {0x061C, 0x061C},
    {0x115F, 0x1160},   {0x1680, 0x1680}, {0x17B4, 0x17B5}, {0x180B, 0x180F},   {0x2000, 0x200F},
    {0x2028, 0x202F},   {0x205F, 0x206F}, {0x3000, 0x3000}, {0x3164, 0x3164},   {0xFE00, 0xFE0F},
    {0xFEFF, 0xFEFF},   {0xFFA0, 0xFFA0}, {0xFFF0, 0xFFFB}, {0x1BCA0, 0x1BCA3}, {0x1D173, 0x1D17A},
    {0xE0000, 0xE0FFF},
};

TEST(Unseen, IsFoundForEveryCharacterOfUnicode)
{
    for (char32_t code = 0; code <= 0x10FFFF; ++code) {
        if (isSurrogate(code)) {
            continue;
        }
        bool expected = false;
        for (const auto& [first, last] : unseen) {
            expected |= code >= first && code <= last;
        }
        const std::string text = "\u00E9x" + utf8Of(code) + "\u200B";
        const auto found = findUnseen(text);
        ASSERT_TRUE(found) << codeText(code);
        ASSERT_EQ(found->number, expected ? 3U : 4U) << codeText(code);
        ASSERT_EQ(found->code, expected ? code : U'\u200B') << codeText(code);
        ASSERT_EQ(utf8::characterAt(utf8Of(code)).code, code);
    }
}

TEST(Unseen, PlainNamesHaveNone)
{
    for (const char* name : {"", "badge-31", "A b", " ", "~", "Zo\u00EB", "\u4E01 7"}) {
        EXPECT_FALSE(findUnseen(name)) << name;
    }
}

TEST(Unseen, ControlsOfAFreeText)
{
    EXPECT_FALSE(findControl("a\tb\nc \u00A0\u200D"));
    for (const char32_t code :
         {U'\x00', U'\x08', U'\x0B', U'\x0D', U'\x1F', U'\x7F', U'\x80', U'\x85', U'\x9F'}) {
        const auto found = findControl("a\t" + utf8Of(code));
        ASSERT_TRUE(found) << codeText(code);
        EXPECT_EQ(found->code, code);
        EXPECT_EQ(found->number, 3U);
    }
}

// Unicode 15, PropList.txt, Bidi_Control: U+061C, U+200E..F, U+202A..E, U+2066..9; Zl and Zp:
// U+2028, U+2029.
TEST(Unseen, WhatMovesText)
{
    for (const char32_t code : {U'\x061C', U'\x200E', U'\x200F', U'\x2028', U'\x2029', U'\x202A',
                                U'\x202E', U'\x2066', U'\x2069'}) {
        EXPECT_TRUE(movesText(code)) << codeText(code);
    }
    for (const char32_t code :
         {U'\x061B', U'\x061D', U'\x200D', U'\x2010', U'\x2027', U'\x202F', U'\x2065', U'\x206A'}) {
        EXPECT_FALSE(movesText(code)) << codeText(code);
    }
}

TEST(Unseen, CodesHaveFourDigitsAndMore)
{
    EXPECT_EQ(codeText(0), "U+0000");
    EXPECT_EQ(codeText(0xA0), "U+00A0");
    EXPECT_EQ(codeText(0xFEFF), "U+FEFF");
    EXPECT_EQ(codeText(0xE0041), "U+E0041");
}

} // namespace
} // namespace loadwarden
