// Who is named, and which two spellings are one person (RULES.md, 1, Act).

#include "core/quantities/act.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

TEST(Person, IsNamedByAnythingButBlanks)
{
    EXPECT_FALSE(isNamed(""));
    EXPECT_FALSE(isNamed("   "));
    EXPECT_TRUE(isNamed(" x "));
    EXPECT_TRUE(isNamed("0"));
}

TEST(Person, IsTheSameWithoutRegardToBlanksAndCase)
{
    struct Row {
        const char* a;
        const char* b;
        bool same;
    };
    const Row rows[] = {
        {"AB12", "AB12", true},
        {"AB12", "ab12", true},
        {"AB 12", " ab1 2 ", true},
        {"AB12", "AB13", false},
        {"AB12", "AB1", false},
        {"AB1", "AB12", false},
        {"AB12", "XB12", false},
        {"AB1 ", "AB1", true},
        {"", " ", true},
        {"", "A", false},
        {" A", "", false},
        {"@[`{", "@[`{", true},
        {"[", "{", false},
        {"@", "`", false},
        {"Z9", "z9", true},
        {"\xC3\x84", "\xC3\xA4", false}, // only A to Z have a case here
    };
    for (const Row& row : rows) {
        EXPECT_EQ(isSamePerson(row.a, row.b), row.same) << row.a << " and " << row.b;
        EXPECT_EQ(isSamePerson(row.b, row.a), row.same) << row.b << " and " << row.a;
    }
}

TEST(Person, IsAnotherOnlyWhereBothAreNamed)
{
    EXPECT_TRUE(isAnotherPerson("p1", "p2"));
    EXPECT_FALSE(isAnotherPerson("p1", "P 1"));
    EXPECT_FALSE(isAnotherPerson("p1", " "));
    EXPECT_FALSE(isAnotherPerson("", "p2"));
    EXPECT_FALSE(isAnotherPerson("", ""));
}

TEST(Person, WhoIsNotNamedSignsNothing)
{
    const Instant at{1'000};
    EXPECT_TRUE(stands({"p1", Role::operating, at, at}, at));
    EXPECT_FALSE(stands({"  ", Role::operating, at, at}, at));
    EXPECT_FALSE(stands({"", Role::supervisor, at, at}, at));
    EXPECT_FALSE(stands({"p1", Role::viewer, at, at}, at));
    EXPECT_FALSE(stands({"p1", Role::operating, at, at}, at - Duration::milliseconds(1)));
    EXPECT_FALSE(stands({"p1", Role::operating, at + Duration::milliseconds(1), at}, at));
}

} // namespace
} // namespace loadwarden
