#include "tests/core/exchange/evidence_support.h"

#include <rapidcheck/gtest.h>

#include <filesystem>

// What must be so for every text.

namespace loadwarden::tests {

namespace {

std::vector<std::string> exampleTexts()
{
    std::vector<std::string> texts;
    const std::string folder = "resources/schema/examples";
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(LOADWARDEN_SOURCE_DIR) + '/' + folder)) {
        if (entry.path().extension() == ".json") {
            texts.push_back(fileText(folder + '/' + entry.path().filename().string()));
        }
    }
    return texts;
}

const std::vector<std::string>& examples()
{
    static const std::vector<std::string> texts = exampleTexts();
    return texts;
}

/// Without a library no stored specification is known, which must not hide what is looked for.
std::string withoutStoredSpecification(const std::string& text)
{
    nlohmann::ordered_json record = nlohmann::ordered_json::parse(text);
    if (record.contains("specification") && record["specification"].is_string()) {
        record.erase("specification");
    }
    return record.dump();
}

TEST(EvidenceProperties, EveryTruncationIsAnErrorAndNeverACrash)
{
    ASSERT_FALSE(examples().empty());
    for (const std::string& example : examples()) {
        const std::string text = withoutStoredSpecification(example);
        mustRead(text);
        for (std::size_t length = 0; length < text.size(); ++length) {
            // A copy of exactly that length, so that the sanitizer sees a step beyond it.
            const std::vector<char> cut(text.begin(),
                                        text.begin() + static_cast<std::ptrdiff_t>(length));
            const auto result = readEvidence({cut.data(), cut.size()}, "cut", 1, nullptr);
            ASSERT_TRUE(std::holds_alternative<ReadError>(result)) << length;
        }
    }
}

TEST(EvidenceProperties, EveryTruncationOfAStreamEndsWithAnError)
{
    const std::string text = withoutStoredSpecification(examples().front());
    for (std::size_t length = 0; length < text.size(); length += 7) {
        std::istringstream in(text + "\n" + text.substr(0, length));
        EvidenceReader reader(in, "cut", nullptr);
        ASSERT_TRUE(std::holds_alternative<EvidenceRecord>(reader.next().value()));
        const auto second = reader.next();
        ASSERT_EQ(second.has_value(), length > 0);
        ASSERT_TRUE(!second || std::holds_alternative<ReadError>(*second)) << length;
        ASSERT_FALSE(reader.next());
    }
}

RC_GTEST_PROP(EvidenceProperties, WhatIsNoJsonForALibraryIsNoRecordHere, ())
{
    std::string text = *rc::gen::elementOf(examples());
    const int changes = *rc::gen::inRange(1, 4);
    for (int i = 0; i < changes; ++i) {
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
        switch (*rc::gen::inRange(0, 3)) {
        case 0: text[at] = *rc::gen::arbitrary<char>(); break;
        case 1: text.erase(at, 1); break;
        default:
            text.insert(at, 1, *rc::gen::elementOf(std::string("{}[]\",:\\0-.e\xC3\n")));
            break;
        }
    }
    const auto result = readText(text);
    if (!nlohmann::json::accept(text)) {
        RC_ASSERT(std::holds_alternative<ReadError>(result));
    }
    if (const auto* error = std::get_if<ReadError>(&result)) {
        RC_ASSERT(!error->problems.empty());
        RC_ASSERT(error->problems.size() <= mostProblems);
        const auto lines = std::ranges::count(text, '\n') + 1;
        for (const ReadProblem& problem : error->problems) {
            RC_ASSERT(!problem.message.empty());
            const bool isPointer = problem.pointer.empty() || problem.pointer.front() == '/';
            RC_ASSERT(isPointer);
            RC_ASSERT(problem.place.line >= 1);
            RC_ASSERT(problem.place.line <= lines);
            RC_ASSERT(problem.place.column >= 1);
        }
    }
}

/// The same record with the fields of every object in another order.
nlohmann::ordered_json reordered(const nlohmann::ordered_json& value)
{
    if (value.is_array()) {
        auto list = nlohmann::ordered_json::array();
        for (const auto& element : value) {
            list.push_back(reordered(element));
        }
        return list;
    }
    if (!value.is_object()) {
        return value;
    }
    auto object = nlohmann::ordered_json::object();
    for (auto field = value.end(); field != value.begin();) {
        --field;
        object[field.key()] = reordered(field.value());
    }
    return object;
}

TEST(EvidenceProperties, TheOrderOfFieldsSaysNothing)
{
    for (const std::string& example : examples()) {
        const auto forward = nlohmann::ordered_json::parse(withoutStoredSpecification(example));
        const EvidenceRecord a = mustRead(forward.dump());
        const EvidenceRecord b = mustRead(reordered(forward).dump());
        EXPECT_EQ(a.load.items.size(), b.load.items.size());
        EXPECT_EQ(a.load.start, b.load.start);
        EXPECT_EQ(a.decideAt, b.decideAt);
        ASSERT_EQ(a.load.readings.size(), b.load.readings.size());
        for (std::size_t i = 0; i < a.load.readings.size(); ++i) {
            EXPECT_EQ(a.load.readings[i].value, b.load.readings[i].value);
            EXPECT_EQ(a.load.readings[i].act.recordedAt, b.load.readings[i].act.recordedAt);
        }
    }
}

} // namespace

} // namespace loadwarden::tests
