#include "core/cycle/trace/trace_words.h"
#include "core/words/say_trace.h"
#include "tests/core/words/well_said.h"

#include <gtest/gtest.h>

#include <set>

namespace loadwarden {
namespace {

using test_words::hasMarker;
using test_words::isSentence;

TraceDefect full(TraceDefectKind kind, std::int64_t samples, SampleFate fate)
{
    return {.kind = kind,
            .place = {12, 7},
            .lastLine = 11 + std::max<std::int64_t>(samples, 1),
            .samples = samples,
            .fate = fate,
            .column = 3,
            .channel = "Chamber",
            .role = ChannelRole::chamberTemperature,
            .text = "TEXT",
            .expected = "EXPECTED",
            .value = 12.5,
            .limit = 40,
            .over = 2};
}

TEST(SayTrace, EveryDefectHasSentencesOfItsOwn)
{
    std::set<std::string> all;
    for (const auto& word : traceDefectWords) {
        SCOPED_TRACE(word.text);
        for (const std::int64_t samples : {0, 1, 3}) {
            for (const SampleFate fate :
                 {SampleFate::kept, SampleFate::valueLeftOut, SampleFate::leftOut}) {
                const TraceDefectSaid said = say(full(word.value, samples, fate));
                EXPECT_TRUE(isSentence(said.says)) << said.says;
                EXPECT_TRUE(isSentence(said.next)) << said.next;
            }
        }
        all.insert(say(full(word.value, 1, SampleFate::kept)).says);
        const std::string heading = say(word.value);
        EXPECT_FALSE(heading.empty() || heading.ends_with('.') || hasMarker(heading)) << heading;
    }
    EXPECT_EQ(all.size(), traceDefectKindCount);
}

TEST(SayTrace, SaysLineColumnAndWhatBecameOfIt)
{
    const TraceDefectSaid one =
        say(full(TraceDefectKind::textInNumber, 1, SampleFate::valueLeftOut));
    EXPECT_EQ(one.says, "Line 12, character 7, column 3 (Chamber): \"TEXT\" stands in the place of "
                        "a number.");
    EXPECT_EQ(one.next, "The value was left out. Have sensor and recorder checked.");
    const TraceDefectSaid run = say(full(TraceDefectKind::timeRepeated, 3, SampleFate::leftOut));
    EXPECT_TRUE(run.says.starts_with("Lines 12 to 14, column 3")) << run.says;
    EXPECT_TRUE(run.next.starts_with("Left out: 3 lines.")) << run.next;
    EXPECT_EQ(say(full(TraceDefectKind::jump, 1, SampleFate::kept)).says,
              "Line 12, character 7, column 3 (Chamber): it changed by 12.5 K in 2 s; a sensor "
              "cannot by more than 40 K.");
}

TEST(SayTrace, EveryReasonOfAProposalIsSaid)
{
    for (std::size_t why = 0; why < proposalReasonCount; ++why) {
        std::set<std::string> all;
        for (const Sureness sureness : {Sureness::stated, Sureness::likely, Sureness::guessed}) {
            const std::string said = say(ProposalNote{
                .sureness = sureness, .why = static_cast<ProposalReason>(why), .text = "WORDS"});
            EXPECT_TRUE(isSentence(said)) << said;
            all.insert(said);
        }
        EXPECT_EQ(all.size(), 3U);
    }
    for (std::size_t item = 0; item < proposedItemCount; ++item) {
        EXPECT_FALSE(say(static_cast<ProposedItem>(item)).empty());
    }
}

TEST(SayTrace, EveryFaultAndTermIsSaid)
{
    EXPECT_TRUE(say(MappingFault::none).empty());
    for (int fault = 1; fault <= static_cast<int>(MappingFault::impossibleValue); ++fault) {
        EXPECT_TRUE(isSentence(say(static_cast<MappingFault>(fault)))) << fault;
    }
    std::set<std::string> terms;
    std::size_t count = 0;
    const auto addAll = [&](const auto& table) {
        for (const auto& word : table) {
            const std::string term = say(word.value);
            EXPECT_FALSE(term.empty() || term.ends_with('.') || hasMarker(term)) << word.text;
            terms.insert(std::string(typeid(word.value).name()) + term);
            ++count;
        }
    };
    addAll(textEncodingWords);
    addAll(fieldSeparatorWords);
    addAll(decimalMarkWords);
    addAll(timeFormWords);
    addAll(dateOrderWords);
    addAll(channelRoleWords);
    addAll(recorderUnitWords);
    addAll(pressureZeroWords);
    EXPECT_EQ(terms.size(), count) << "two values of one kind have one term";
}

} // namespace
} // namespace loadwarden
