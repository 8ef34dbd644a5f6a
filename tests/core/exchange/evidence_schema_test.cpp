#include "core/exchange/evidence/object_types.h"
#include "tests/core/exchange/evidence_support.h"

#include <cmath>
#include <set>

// The reader's tables against the published schema: every object, field, needed field, range,
// length and word. Source: resources/schema/evidence.schema.json.

namespace loadwarden::tests {

namespace {

using namespace evidence_format;
using Json = nlohmann::json;

class SchemaWalk {
public:
    explicit SchemaWalk(Json schema) : m_schema(std::move(schema)) {}

    void compare(const ObjectType& type, const Json& node, const std::string& place)
    {
        const Json& object = resolve(node);
        if (!m_seen.insert({&type, &object}).second) {
            return;
        }
        ++objects;
        ASSERT_EQ(object.at("type"), "object") << place;
        EXPECT_EQ(object.at("additionalProperties"), false) << place;
        std::set<std::string> ofSchema;
        for (const auto& [name, rule] : object.at("properties").items()) {
            ofSchema.insert(name);
        }
        std::set<std::string> ofTable;
        for (const Field& field : type.fields) {
            ofTable.insert(std::string(field.name));
        }
        ASSERT_EQ(ofTable, ofSchema) << place;
        const Json needed = object.value("required", Json::array());
        for (const Field& field : type.fields) {
            const std::string below = place + '/' + std::string(field.name);
            const bool isNeeded =
                std::find(needed.begin(), needed.end(), std::string(field.name)) != needed.end();
            EXPECT_EQ(field.needed, isNeeded) << below;
            compareField(field, object.at("properties").at(std::string(field.name)), below);
        }
        EXPECT_EQ(type.act != nullptr, ofTable.contains("recordedAt")) << place;
    }

    int objects = 0;
    int fields = 0;

private:
    const Json& resolve(const Json& node)
    {
        if (!node.contains("$ref")) {
            return node;
        }
        const auto name = node.at("$ref").get<std::string>();
        return m_schema.at(Json::json_pointer(name.substr(1)));
    }

    void compareField(const Field& field, const Json& node, const std::string& place)
    {
        ++fields;
        const Json& rule = resolve(node);
        std::visit([&](const auto& ofTable) { compareRule(ofTable, rule, place); }, field.rule);
    }

    static void compareRule(const TextRule& table, const Json& rule, const std::string& place)
    {
        EXPECT_EQ(rule.at("type"), "string") << place;
        EXPECT_EQ(table.least, rule.value("minLength", 0U)) << place;
        EXPECT_EQ(table.most, rule.at("maxLength").get<std::size_t>()) << place;
        EXPECT_FALSE(rule.contains("pattern")) << place;
    }

    static void compareRule(const FormRule&, const Json& rule, const std::string& place)
    {
        EXPECT_EQ(rule.at("type"), "string") << place;
    }

    static void compareRule(const WordRule& table, const Json& rule, const std::string& place)
    {
        std::set<std::string> words;
        for (const std::string_view word : table.words) {
            words.insert(std::string(word));
        }
        EXPECT_EQ(Json(words), Json(rule.at("enum").get<std::set<std::string>>())) << place;
    }

    static void compareRule(const TimeRule&, const Json& rule, const std::string& place)
    {
        EXPECT_NE(rule.at("pattern").get<std::string>().find("T("), std::string::npos) << place;
    }

    static void compareRule(const DateRule&, const Json& rule, const std::string& place)
    {
        const auto pattern = rule.at("pattern").get<std::string>();
        EXPECT_TRUE(pattern.starts_with("^20[0-9]{2}-") && pattern.ends_with("[01])$")) << place;
    }

    static void compareRule(const FlagRule&, const Json& rule, const std::string& place)
    {
        EXPECT_EQ(rule.at("type"), "boolean") << place;
    }

    static void compareRule(const NumberRule& table, const Json& rule, const std::string& place)
    {
        if (rule.contains("const")) {
            EXPECT_EQ(table.decimals, 0) << place;
            EXPECT_EQ(table.least, rule.at("const").get<std::int64_t>()) << place;
            EXPECT_EQ(table.most, table.least) << place;
            return;
        }
        const double scale = std::pow(10.0, table.decimals);
        EXPECT_EQ(rule.at("type"), table.decimals == 0 ? "integer" : "number") << place;
        EXPECT_EQ(static_cast<double>(table.least), rule.at("minimum").get<double>() * scale)
            << place;
        EXPECT_EQ(static_cast<double>(table.most), rule.at("maximum").get<double>() * scale)
            << place;
        if (table.decimals > 0) {
            EXPECT_NE(rule.at("description")
                          .get<std::string>()
                          .find("At most " + std::to_string(table.decimals) + " decimals."),
                      std::string::npos)
                << place;
        }
    }

    void compareRule(const ObjectRule& table, const Json& rule, const std::string& place)
    {
        compare(*table.type, rule, place);
    }

    void compareRule(const TextOrObjectRule& table, const Json& rule, const std::string& place)
    {
        compare(*table.object.type, rule.at("oneOf").at(0), place);
        EXPECT_EQ(rule.at("oneOf").at(1).at("type"), "string") << place;
    }

    void compareRule(const ListRule& table, const Json& rule, const std::string& place)
    {
        EXPECT_EQ(rule.at("type"), "array") << place;
        EXPECT_EQ(table.least, rule.value("minItems", 0U)) << place;
        EXPECT_FALSE(rule.contains("maxItems") || rule.contains("uniqueItems")) << place;
        compareField(*table.element, rule.at("items"), place + "/0");
    }

    Json m_schema;
    std::set<std::pair<const ObjectType*, const Json*>> m_seen;
};

TEST(EvidenceSchema, TablesAndSchemaSayTheSame)
{
    const Json schema = Json::parse(fileText("resources/schema/evidence.schema.json"));
    SchemaWalk walk(schema);
    walk.compare(recordType, schema, "");
    EXPECT_GT(walk.objects, 40);
    EXPECT_GT(walk.fields, 200);
}

} // namespace

} // namespace loadwarden::tests
