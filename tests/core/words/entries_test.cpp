// Every field of an act that is not signed is said in words: the fields are those of the published
// evidence schema.

#include "core/words/say.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <set>

namespace loadwarden {
namespace {

using Json = nlohmann::json;

/// Whether an object of the schema is an act, or a signed statement: it has `happenedAt`.
bool isAct(const Json& schema, const Json& type)
{
    if (type.contains("$ref")) {
        const std::string to = type["$ref"];
        return isAct(schema, schema.at(Json::json_pointer(to.substr(1))));
    }
    if (type.contains("items")) {
        return isAct(schema, type["items"]);
    }
    if (type.contains("allOf")) {
        for (const Json& part : type["allOf"]) {
            if (isAct(schema, part)) {
                return true;
            }
        }
    }
    return type.contains("properties") && type["properties"].contains("happenedAt");
}

void collect(const Json& schema, const Json& node, std::set<std::string>& fields)
{
    if (node.is_object() && node.contains("properties")) {
        for (const auto& [name, type] : node["properties"].items()) {
            if (type.is_object() && isAct(schema, type)) {
                fields.insert(name);
            }
        }
    }
    if (node.is_structured()) {
        for (const Json& child : node) {
            collect(schema, child, fields);
        }
    }
}

TEST(Entries, AreSaidForEveryFieldOfAnAct)
{
    std::ifstream in(LOADWARDEN_SOURCE_DIR "/resources/schema/evidence.schema.json");
    const Json schema = Json::parse(in);
    std::set<std::string> fields;
    collect(schema, schema, fields);
    EXPECT_GE(fields.size(), 27U);
    std::set<std::string> sentences;
    for (const std::string& field : fields) {
        Finding finding;
        finding.key = Key::actUnsigned;
        finding.subject = field;
        finding.count = 2;
        const std::string says = say(finding, HouseStyle{}).says;
        EXPECT_TRUE(sentences.insert(says).second) << field;
        finding.subject = "no such field";
        const std::string unknown = say(finding, HouseStyle{}).says;
        EXPECT_THAT(unknown, testing::HasSubstr("no such field: 2"));
        // Words of its own where the field's name is not a word of the trade by itself.
        if (field.find_first_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") != std::string::npos) {
            EXPECT_THAT(says, testing::Not(testing::HasSubstr(field)));
        }
    }
}

} // namespace
} // namespace loadwarden
