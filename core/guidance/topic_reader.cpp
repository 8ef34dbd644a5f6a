#include "core/guidance/topic_reader.h"

#include "core/guidance/toml_lists.h"
#include "core/guidance/topic_place.h"

#include <algorithm>
#include <array>

namespace loadwarden {

namespace {

constexpr std::size_t mostId = 60;
constexpr std::size_t mostQuestion = 200;
constexpr std::size_t mostText = 2000;
constexpr std::size_t mostSource = 400;
constexpr std::size_t mostName = 120;
constexpr ListBounds phrasings{2, 40, mostQuestion};
constexpr ListBounds steps{1, 12, 500};
constexpr ListBounds relations{1, 12, mostId};
constexpr ListBounds reasons{0, 12, mostId};
constexpr std::string_view idCharacters = "abcdefghijklmnopqrstuvwxyz0123456789-";

constexpr std::array<std::string_view, 5> trusts = {"seen", "restated", "memory", "common-practice",
                                                    "facility"};
// In the order of TopicPicture, without `none`.
constexpr std::array<std::string_view, 4> pictures = {"front-entered", "front-on-boundary",
                                                      "colour", "sheet"};
constexpr std::array<std::string_view, 7> results = {"release", "quarantine", "reprocess", "failed",
                                                     "void",    "pending",    "passed"};

std::optional<Key> keyOf(std::string_view text)
{
    for (int i = 0; i < keyCount; ++i) {
        if (const auto key = static_cast<Key>(i); textOf(key) == text) {
            return key;
        }
    }
    return std::nullopt;
}

bool isRule(std::string_view text)
{
    constexpr std::string_view rules[] = {
#define LW_RULE(enumerator, name) name,
#include "core/release/rules.def"
#undef LW_RULE
    };
    return std::ranges::find(rules, text) != std::end(rules);
}

class Reader {
public:
    Reader(const toml::table& file, const std::string& place, TomlErrors& errors)
        : m_root(file, "", errors),
          m_errors(errors),
          m_id(topicIdOf(place)),
          m_language(languageOf(place))
    {
    }

    Topic topic()
    {
        Topic topic;
        m_root.whole("topic_version", 1, 1);
        topic.id = idAsFile("id");
        topic.language = m_language;
        topic.question = text("question", mostQuestion);
        for (PlacedText& phrasing : proseList(m_root, "also_asked", phrasings, m_errors)) {
            if (phrasing.text == topic.question) {
                m_errors.add(phrasing.line, "also_asked", "repeats the question");
            }
            topic.alsoAsked.push_back(std::move(phrasing.text));
        }
        topic.shortAnswer = text("short_answer", mostText);
        for (PlacedText& step : proseList(m_root, "do_now", steps, m_errors)) {
            topic.doNow.push_back(std::move(step.text));
        }
        topic.why = text("why", mostText);
        if (m_root.has("picture")) {
            const auto picture = m_root.word("picture", pictures);
            topic.picture = picture ? static_cast<TopicPicture>(*picture + 1) : TopicPicture::none;
        }
        topic.caution = text("caution", mostText);
        topic.owner = text("owner", mostName);
        topic.reviewBy = dateOf(m_root, "review_by").value_or(Date{});
        for (PlacedText& other : proseList(m_root, "related", relations, m_errors)) {
            if (other.text == topic.id) {
                m_errors.add(other.line, "related", "names the topic itself");
            }
            topic.related.push_back(std::move(other.text));
        }
        sources(topic);
        for (TomlTable& table : tablesOf(m_root, "case", m_errors)) {
            topic.cases.push_back(caseOf(table));
        }
        for (TomlTable& table : tablesOf(m_root, "calculation", m_errors)) {
            topic.calculations.push_back(calculationOf(table));
        }
        m_root.finish();
        return topic;
    }

    TopicNote note()
    {
        TopicNote note;
        m_root.whole("note_version", 1, 1);
        note.topic = idAsFile("topic");
        note.language = m_language;
        note.note = text("note", mostText);
        note.owner = text("owner", mostName);
        note.reviewBy = dateOf(m_root, "review_by").value_or(Date{});
        m_root.finish();
        return note;
    }

private:
    std::string text(std::string_view key, std::size_t most)
    {
        return prose(m_root, key, most).value_or("");
    }

    std::string idAsFile(std::string_view key)
    {
        const std::string id = text(key, mostId);
        if (id.empty()) {
            return m_id;
        }
        if (id.find_first_not_of(idCharacters) != std::string::npos) {
            m_root.wrong(*m_root.optional(key), key, "may hold only a to z, 0 to 9 and -");
        } else if (id != m_id) {
            m_root.wrong(*m_root.optional(key), key,
                         "must be as the file is called: \"" + m_id + "\"");
        }
        return m_id;
    }

    void sources(Topic& topic)
    {
        for (TomlTable& table : tablesOf(m_root, "source", m_errors)) {
            TopicSource source{prose(table, "text", mostSource).value_or(""), SourceTrust::memory};
            if (const auto trust = table.word("confidence", trusts)) {
                source.trust = static_cast<SourceTrust>(*trust);
                const bool isPractice = source.trust == SourceTrust::commonPractice;
                if (!source.text.empty() && isPractice != (source.text == noSource)) {
                    table.wrong(*table.optional("text"), "text",
                                isPractice ? "must be exactly \"" + std::string(noSource)
                                                 + "\" where the confidence is common-practice"
                                           : "needs the confidence common-practice");
                }
            }
            table.finish();
            topic.sources.push_back(std::move(source));
        }
        if (topic.sources.empty()) {
            m_root.wrong(
                "source",
                "is missing; write a [[source]] with text and confidence, or with the text \""
                    + std::string(noSource) + "\" and the confidence common-practice");
        }
    }

    TopicCase caseOf(TomlTable& table)
    {
        TopicCase result;
        result.line = lineOf(table, "rule");
        result.tells = prose(table, "tells", mostText).value_or("");
        result.rule = prose(table, "rule", mostId).value_or("");
        const bool knowsRule = isRule(result.rule);
        if (!result.rule.empty() && !knowsRule) {
            table.wrong(*table.optional("rule"), "rule", "is no rule of core/release/RULES.md");
        }
        result.evidence = prose(table, "evidence", mostName).value_or("");
        if (const auto word = table.word("expected", results)) {
            result.expected = results[*word];
        }
        if (table.has("item")) {
            result.item = prose(table, "item", mostName).value_or("");
        }
        for (const PlacedText& text : proseList(table, "keys", reasons, m_errors)) {
            const std::optional<Key> key = keyOf(text.text);
            if (!key) {
                m_errors.add(text.line, table.fieldOf("keys"),
                             text.text + " is no key of a finding (core/release/finding_keys.def)");
                continue;
            }
            if (knowsRule && textOf(ruleOf(*key)) != result.rule) {
                m_errors.add(text.line, table.fieldOf("keys"),
                             text.text + " is a key of the rule "
                                 + std::string(textOf(ruleOf(*key))));
            }
            result.keys.push_back(*key);
        }
        table.finish();
        return result;
    }

    TopicCalculation calculationOf(TomlTable& table)
    {
        const auto number = [&](std::string_view key, double most) {
            const toml::node* node = table.required(key);
            const auto value = node == nullptr ? std::nullopt : node->value<double>();
            if (node != nullptr && (!value || !(*value > 0) || *value > most)) {
                table.wrong(*node, key,
                            "must be a number above 0, at most "
                                + std::to_string(static_cast<std::int64_t>(most)));
            }
            return value.value_or(1);
        };
        TopicCalculation result;
        result.tells = prose(table, "tells", mostText).value_or("");
        result.population = number("population", 1e12);
        result.dMinutes = number("d_minutes", 1e4);
        result.minutes = number("minutes", 1e5);
        table.finish();
        return result;
    }

    TomlTable m_root;
    TomlErrors& m_errors;
    std::string m_id;
    std::string m_language;
};

template <class Value, Value (Reader::*read)()>
std::variant<Value, std::vector<TomlError>> readFile(const GuidanceFile& file)
{
    if (auto wrong = encodingError(file.text, file.name)) {
        return std::vector<TomlError>{std::move(*wrong)};
    }
    TomlErrors errors(file.name);
    const std::optional<toml::table> table = parseToml(file.text, errors);
    if (!table) {
        return std::move(errors).sorted();
    }
    Value value = (Reader(*table, file.place, errors).*read)();
    if (!errors.empty()) {
        return std::move(errors).sorted();
    }
    return value;
}

} // namespace

std::string_view textOf(SourceTrust trust)
{
    return trusts[static_cast<std::size_t>(trust)];
}

std::variant<Topic, std::vector<TomlError>> readTopic(const GuidanceFile& file)
{
    return readFile<Topic, &Reader::topic>(file);
}

std::variant<TopicNote, std::vector<TomlError>> readTopicNote(const GuidanceFile& file)
{
    return readFile<TopicNote, &Reader::note>(file);
}

} // namespace loadwarden
