// The table of RULES.md, 3, Settling, row by row.

#include "core/indicators/settle.h"

#include <gtest/gtest.h>

#include <string>

namespace loadwarden {
namespace {

/// Readings written as words: who and what, `a+` good by a, `b-` bad, `c?` unclear, `_?` without a
/// name.
std::vector<IndicatorReading> readings(const std::string& words)
{
    std::vector<IndicatorReading> all;
    for (std::size_t i = 0; i + 1 < words.size(); i += 3) {
        IndicatorReading reading;
        reading.act.by = words[i] == '_' ? "" : std::string(1, words[i]);
        reading.act.recordedAt = Instant{static_cast<std::int64_t>(i)};
        reading.seen = words[i + 1] == '+'   ? Seen::endColourReached
                       : words[i + 1] == '-' ? Seen::unchanged
                                             : Seen::unclear;
        all.push_back(reading);
    }
    return all;
}

Settled settled(const std::string& words, const std::optional<Act>& unsettled = {},
                const std::optional<Act>& lost = {})
{
    const auto all = readings(words);
    Settled result = settle(all, unsettled, lost, [](const IndicatorReading& reading) {
        switch (reading.seen) {
        case Seen::endColourReached: return Answer::good;
        case Seen::unchanged: return Answer::bad;
        default: return Answer::unclear;
        }
    });
    result.rejectedBy = nullptr; // points into readings that are gone
    result.firstUnclear = nullptr;
    return result;
}

struct Row {
    const char* words;
    SettledState state;
};

TEST(Settling, FollowsItsTable)
{
    const Row table[] = {
        {"", SettledState::none},
        {"a+", SettledState::accepted},
        {"a-", SettledState::rejected},
        {"a?", SettledState::unclear},
        {"a+ b-", SettledState::rejected},
        {"a- b+", SettledState::rejected},
        {"a? b+", SettledState::accepted},
        {"a? a+", SettledState::unclear},
        {"a? _+", SettledState::unclear},
        {"_? b+", SettledState::unclear},
        {"a? b?", SettledState::rejected},
        {"a? a?", SettledState::unclear},
        {"a? _?", SettledState::unclear},
        {"a? b-", SettledState::rejected},
        {"a? b+ c-", SettledState::rejected},
        {"a? b+ c?", SettledState::rejected},
        {"a? b+ c+", SettledState::accepted},
        {"a+ b?", SettledState::unclear},
        {"a+ b? a+", SettledState::accepted},
        {"a+ b? b+", SettledState::unclear},
        {"a? a+ b+", SettledState::accepted},
    };
    for (const Row& row : table) {
        EXPECT_EQ(settled(row.words).state, row.state) << row.words;
    }
}

TEST(Settling, TakesWhatCannotBeSettledAsRejected)
{
    const Act declared;
    EXPECT_EQ(settled("a?", declared).state, SettledState::rejected);
    EXPECT_EQ(settled("a+", declared).state, SettledState::accepted);
    EXPECT_EQ(settled("a? b+", declared).state, SettledState::accepted);
    EXPECT_EQ(settled("", declared).state, SettledState::none);
    EXPECT_EQ(settled("a?", {}, declared).state, SettledState::rejected) << "called lost";
    EXPECT_EQ(settled("a+", {}, declared).state, SettledState::accepted);
}

TEST(Settling, TakesTwoSpellingsOfOneReaderForOne)
{
    EXPECT_EQ(settled("a? A+").state, SettledState::unclear);
    EXPECT_EQ(settled("a? A?").state, SettledState::unclear);
    EXPECT_EQ(settled("a?  +").state, SettledState::unclear) << "a blank names nobody";
    EXPECT_EQ(settled("a? B+").state, SettledState::accepted);
}

TEST(Settling, TakesReadingsByWhenTheyWereRecordedAndTiesAsGiven)
{
    auto all = readings("a? b+ c-");
    all[0].act.recordedAt = Instant{9};
    all[1].act.recordedAt = Instant{3};
    all[2].act.recordedAt = Instant{3};
    sortReadings(all);
    EXPECT_EQ(all[0].act.by, "b");
    EXPECT_EQ(all[1].act.by, "c");
    EXPECT_EQ(all[2].act.by, "a");
}

} // namespace
} // namespace loadwarden
