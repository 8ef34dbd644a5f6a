#pragma once

#include "core/quantities/date.h"
#include "core/release/finding.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What stands in the place of a source where there is none.
inline constexpr std::string_view noSource = "common practice, no source";

/// How sure a source is: read in the document, read in a text that restates it, known but not found
/// in a text, a habit of the trade without a document, a rule of the facility's own.
enum class SourceTrust : std::uint8_t { seen, restated, memory, commonPractice, facility };

[[nodiscard]] std::string_view textOf(SourceTrust trust);

struct TopicSource {
    std::string text; ///< document and topic or section; `noSource` where there is none
    SourceTrust trust = SourceTrust::memory;
};

/// A small evidence on which the decision is asked, so that a topic and the rules cannot disagree.
struct TopicCase {
    std::string tells;     ///< the evidence in a sentence
    std::string rule;      ///< by its name in RULES.md
    std::string evidence;  ///< file name, in the folder evidence/
    std::string expected;  ///< a verdict, or a test's result, as the decision's JSON calls them
    std::string item;      ///< label of the item whose verdict it is; empty: the load or the test
    std::vector<Key> keys; ///< of the findings that must be there; none: nothing speaks against it
    int line = 1;          ///< in the topic's file
};

/// How an indicator answers, where the topic is about one: what may be drawn beside it.
enum class TopicPicture : std::uint8_t { none, frontEntered, frontOnBoundary, colour, sheet };

/// A row of the calculator of survivors (assurance.h).
struct TopicCalculation {
    std::string tells;
    double population = 0; ///< organisms before
    double dMinutes = 0;   ///< at the cycle's temperature
    double minutes = 0;    ///< equivalent time there
};

/// One question and its answer in one language. resources/guidance/README.md says what stands
/// where.
struct Topic {
    std::string id;       ///< the same in every language
    std::string language; ///< "en"
    bool isOfFacility = false;
    std::string question;
    std::vector<std::string> alsoAsked; ///< other ways to ask it
    std::string shortAnswer;
    std::vector<std::string> doNow; ///< steps, in their order
    std::string why;
    TopicPicture picture = TopicPicture::none;
    std::vector<TopicSource> sources; ///< never empty
    std::string caution;
    std::string owner;
    Date reviewBy;
    std::vector<std::string> related; ///< ids
    std::vector<TopicCase> cases;
    std::vector<TopicCalculation> calculations;
};

/// What a facility says to a topic that the program brings along.
struct TopicNote {
    std::string topic; ///< id
    std::string language;
    std::string note;
    std::string owner; ///< of the topic in this house
    Date reviewBy;
};

} // namespace loadwarden
