// The worked cases of tests/data/worked_cases: each states what happens in practice, its source or
// that it is common practice, a change to a base record, and the answer worked out by hand.

#include "core/exchange/evidence_writer.h"
#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <set>

namespace loadwarden {
namespace {

// Keeps the order of fields: changes apply in the order in which the file states them.
using Json = nlohmann::ordered_json;
using Pointer = Json::json_pointer;

struct WorkedCase {
    std::string file;
    Json json;
};

std::vector<WorkedCase> readCases()
{
    std::vector<WorkedCase> cases;
    std::set<std::filesystem::path> files;
    const std::string folder = "tests/data/worked_cases/cases";
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(LOADWARDEN_SOURCE_DIR) + "/" + folder)) {
        files.insert(entry.path().filename());
    }
    for (const auto& file : files) {
        for (const Json& each : Json::parse(support::readFile(folder + "/" + file.string()))) {
            cases.push_back({file.string(), each});
        }
    }
    return cases;
}

const std::vector<WorkedCase>& allCases()
{
    static const std::vector<WorkedCase> cases = readCases();
    return cases;
}

void set(Json& record, const std::string& pointer, const Json& value)
{
    if (pointer.ends_with("/-")) {
        record.at(Pointer(pointer).parent_pointer()).push_back(value);
        return;
    }
    const Pointer at(pointer);
    Json& parent = record.at(at.parent_pointer());
    if (!parent.is_array()) {
        parent[at.back()] = value;
    } else if (at.back() == std::to_string(parent.size())) {
        parent.push_back(value);
    } else {
        record.at(at) = value;
    }
}

void remove(Json& record, const std::string& pointer)
{
    const Pointer at(pointer);
    (void)record.at(at); // throws where there is nothing to take away
    Json& parent = record.at(at.parent_pointer());
    if (parent.is_array()) {
        parent.erase(static_cast<std::size_t>(std::stoul(at.back())));
    } else {
        parent.erase(at.back());
    }
}

/// Throws where an object has a field that is none of these, which would change nothing.
void requireFields(const Json& object, const std::set<std::string>& known)
{
    for (const auto& [name, value] : object.items()) {
        if (!known.contains(name)) {
            throw std::invalid_argument("a worked case has no field " + name);
        }
    }
}

/// Throws where the case has an unknown field, or a change that cannot be made.
Json recordOf(const Json& worked)
{
    requireFields(worked,
                  {"id", "practice", "source", "base", "policy", "at", "set", "remove", "expect"});
    Json record = Json::parse(
        support::readFile("tests/data/worked_cases/bases/" + worked.at("base").get<std::string>()));
    const Json changes = worked.value("set", Json::object());
    for (const auto& [pointer, value] : changes.items()) {
        set(record, pointer, value);
    }
    const Json removals = worked.value("remove", Json::array());
    for (const Json& pointer : removals) {
        remove(record, pointer.get<std::string>());
    }
    if (worked.contains("at")) {
        record["decideAt"] = worked.at("at");
    }
    return record;
}

Policy policyOf(const Json& worked)
{
    std::vector<support::PolicyChange> changes;
    const Json settings = worked.value("policy", Json::object());
    for (const auto& [setting, value] : settings.items()) {
        changes.push_back({setting, value.dump()});
    }
    return support::policyWith(changes);
}

std::set<std::string> keysOf(const std::vector<Finding>& findings, Outcome atLeast)
{
    std::set<std::string> keys;
    for (const Finding& finding : findings) {
        if (finding.outcome >= atLeast) {
            keys.emplace(textOf(finding.key));
        }
    }
    return keys;
}

void expectKeys(const Json& expected, const std::vector<Finding>& findings)
{
    std::set<std::string> asked;
    const Json keys = expected.value("keys", Json::array());
    for (const Json& key : keys) {
        asked.insert(key.get<std::string>());
    }
    const std::set<std::string> found = keysOf(findings, Outcome::note);
    EXPECT_TRUE(std::includes(found.begin(), found.end(), asked.begin(), asked.end()))
        << testing::PrintToString(asked) << " not all in " << testing::PrintToString(found);
    if (expected.value("onlyKeys", false)) {
        const std::set<std::string> blocking = keysOf(findings, Outcome::waits);
        std::set<std::string> askedBlocking;
        std::set_intersection(asked.begin(), asked.end(), blocking.begin(), blocking.end(),
                              std::inserter(askedBlocking, askedBlocking.end()));
        EXPECT_EQ(blocking, askedBlocking);
    }
}

void expectDecision(const Json& expected, const Decision& decision)
{
    EXPECT_EQ(textOf(decision.verdict), expected.at("verdict").get<std::string>());
    const Json items = expected.value("items", Json::object());
    EXPECT_EQ(items.size(), decision.items.size()) << "a case states the verdict of every item";
    for (const ItemDecision& item : decision.items) {
        ASSERT_TRUE(items.contains(item.label)) << item.label;
        EXPECT_EQ(textOf(item.verdict), items.at(item.label).get<std::string>()) << item.label;
    }
    if (expected.contains("nextChangeAt")) {
        const Json& at = expected.at("nextChangeAt");
        if (at.is_null()) {
            EXPECT_FALSE(decision.nextChangeAt.has_value());
        } else {
            ASSERT_TRUE(decision.nextChangeAt.has_value());
            EXPECT_EQ(formatUtc(*decision.nextChangeAt), at.get<std::string>());
        }
    }
}

class WorkedCases : public testing::TestWithParam<std::size_t> {};

TEST_P(WorkedCases, AnswersAsPracticeDoes)
{
    const Json& worked = allCases()[GetParam()].json;
    SCOPED_TRACE(worked.at("practice").get<std::string>());
    EXPECT_FALSE(worked.at("source").get<std::string>().empty());
    EvidenceRecord record = support::parseEvidence(recordOf(worked).dump());
    const Policy policy = policyOf(worked);
    const Instant now = record.decideAt.value();
    const Evidence evidence = assemble(std::move(record));
    const Json& expected = worked.at("expect");
    if (expected.contains("test")) {
        requireFields(expected, {"test", "keys"});
        const TestJudgement judgement = judgeTest(evidence, policy, now);
        EXPECT_EQ(textOf(judgement.result), expected.at("test").get<std::string>());
        expectKeys(expected, judgement.findings);
        return;
    }
    requireFields(expected, {"verdict", "items", "keys", "onlyKeys", "nextChangeAt"});
    const Decision decision = decide(evidence, policy, now);
    SCOPED_TRACE(support::describe(decision));
    expectDecision(expected, decision);
    expectKeys(expected, decision.findings);
}

TEST_P(WorkedCases, AnswerTheSameWrittenAndReadAgain)
{
    const Json& worked = allCases()[GetParam()].json;
    const EvidenceRecord record = support::parseEvidence(recordOf(worked).dump());
    const std::string text = writeEvidence(record);
    const EvidenceRecord again = support::parseEvidence(text);
    EXPECT_TRUE(again == record) << text;
    EXPECT_EQ(writeEvidence(again), text);
    const Policy policy = policyOf(worked);
    const Instant now = record.decideAt.value();
    EXPECT_EQ(support::answerText(again, policy, now), support::answerText(record, policy, now));
}

INSTANTIATE_TEST_SUITE_P(All, WorkedCases, testing::Range(std::size_t{0}, allCases().size()),
                         [](const testing::TestParamInfo<std::size_t>& worked) {
                             std::string name =
                                 allCases()[worked.param].json.at("id").get<std::string>();
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

TEST(WorkedCaseFiles, AreAtLeastAHundredWithNamesOfTheirOwn)
{
    std::set<std::string> ids;
    for (const WorkedCase& each : allCases()) {
        EXPECT_TRUE(ids.insert(each.json.at("id").get<std::string>()).second) << each.file;
    }
    EXPECT_GE(ids.size(), 100U);
}

TEST(WorkedCaseFiles, AMisspeltChangeIsRefused)
{
    const Json good = Json::parse(R"({"base":"steam-prevacuum.json",
        "set":{"/load/lot":"X1","/load/items/0/label":"I"},"remove":["/load/items/0","/load/counter"]})");
    EXPECT_EQ(recordOf(good).at("load").at("lot"), "X1");
    EXPECT_FALSE(recordOf(good).at("load").contains("counter"));
    const std::pair<const char*, const char*> misspelt[] = {
        {"/sets", R"({"/load/lot":"X1"})"},
        {"/removes", R"(["/load/lot"])"},
        {"/Set", R"({})"},
        {"/set", R"({"/laod/lot":"X1"})"},
        {"/set", R"({"/load/items/x":{}})"},
        {"/set", R"({"/load/items/0x":{}})"},
        {"/set", R"({"/load/items/1000":{}})"},
        {"/set", R"({"load/lot":"X1"})"},
        {"/remove", R"(["/load/lots"])"},
        {"/remove", R"(["/laod/lot"])"},
        {"/remove", R"(["/load/items/1000"])"},
        {"/remove", R"(["/load/items/0x"])"},
        {"/remove", R"(["/load/items/-"])"},
        {"/remove", R"([7])"},
    };
    for (const auto& [field, value] : misspelt) {
        Json wrong = good;
        wrong[Pointer(field)] = Json::parse(value);
        EXPECT_ANY_THROW((void)recordOf(wrong)) << field << ' ' << value;
    }
    // What is set under a misspelt name the reader of the evidence refuses.
    Json unknown = good;
    unknown["set"]["/load/lots"] = "X1";
    EXPECT_ANY_THROW((void)support::parseEvidence(recordOf(unknown).dump()));
}

} // namespace
} // namespace loadwarden
