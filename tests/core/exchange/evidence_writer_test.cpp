#include "core/exchange/evidence/object_reader.h"
#include "core/exchange/evidence_writer.h"
#include "tests/core/exchange/evidence_support.h"
#include "tests/core/exchange/evidence_tables.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <chrono>
#include <functional>
#include <map>
#include <set>
#include <stdexcept>

// What is written is read as the same record. Whole files and their decisions:
// tests/proof/written_evidence_test.cpp.

namespace loadwarden::tests {

namespace {

using namespace evidence_format;
using testing::HasSubstr;
using testing::Not;

/// The record of a text that was written, without a library: no name of a specification is left.
EvidenceRecord reread(const EvidenceRecord& record)
{
    const std::string text = writeEvidence(record);
    EXPECT_EQ(std::ranges::count(text, '\n'), 1);
    EXPECT_EQ(text.back(), '\n');
    return mustRead(text);
}

std::string rewritten(const std::string& text)
{
    return writeEvidence(mustRead(text));
}

std::string line(const std::string& json)
{
    return json + '\n';
}

TEST(EvidenceWriter, LeastRecord)
{
    EXPECT_EQ(rewritten(withLoad("")), line(withLoad("")));
    const std::string test =
        R"({"evidenceVersion":1,"facility":{"timeZone":"America/Chicago"},"test":{"kind":"leak","lot":"T1","start":"2031-03-04T06:00:00.000Z"}})";
    EXPECT_EQ(rewritten(test), line(test));
}

TEST(EvidenceWriter, BytesOfARecord)
{
    const std::string written = rewritten(R"({
        "load": {
            "readings": [{"minutes": 4.10, "parameter": "exposure", "role": "operator", "by": "p1",
                          "happenedAt": "2031-03-04T07:14-06:00",
                          "recordedAt": "2031-03-04T13:14Z"}],
            "outcome": "ended", "start": "2031-03-04T07:00:00.5-06:00", "lot": "L1",
            "clock": "facility", "items": [], "printoutLost": {"by": "p2", "role": "lead",
            "happenedAt": "2031-03-04T08:00Z", "recordedAt": "2031-03-04T08:01Z"}},
        "facility": {"atmosphereKPa": 101.30, "timeZone": "America/Chicago"},
        "products": [{"kind": "biological", "id": "b", "methods": ["dry-heat", "steam", "steam"],
                      "response": "growth", "releaseMinutes": 1e3, "species": "other"}],
        "evidenceVersion": 1, "comment": ""})");
    EXPECT_EQ(
        written,
        line(
            R"({"evidenceVersion":1,"facility":{"timeZone":"America/Chicago","atmosphereKPa":101.3},)"
            R"("products":[{"id":"b","kind":"biological","methods":["steam","dry-heat"],)"
            R"("response":"growth","species":"other","releaseMinutes":1000}],)"
            R"("load":{"lot":"L1","start":"2031-03-04T13:00:00.500Z","outcome":"ended",)"
            R"("printoutLost":{"by":"p2","role":"lead","happenedAt":"2031-03-04T08:00:00.000Z",)"
            R"("recordedAt":"2031-03-04T08:01:00.000Z"},)"
            R"("readings":[{"parameter":"exposure","minutes":4.10,"by":"p1",)"
            R"("happenedAt":"2031-03-04T13:14:00.000Z"}]}})"));
}

// What is left out and what is there without anything in it: where the two differ, both stay.

TEST(EvidenceWriter, EmptyObjectsStayWhereTheySaySomething)
{
    EXPECT_EQ(rewritten(withLoad(R"("immediateUse":{})")), line(withLoad(R"("immediateUse":{})")));
    EXPECT_EQ(rewritten(withItem(R"("peroxide":{},"external":{})")),
              line(withItem(R"("external":{})")));
    EXPECT_EQ(rewritten(withItem(R"("peroxide":{"moist":false},"internalVisible":false)")),
              line(withItem(R"("peroxide":{"moist":false})")));
    EXPECT_EQ(rewritten(withItem(R"("internals":[{},{}],"devices":[])")),
              line(withItem(R"("internals":[{},{}])")));
}

TEST(EvidenceWriter, WhatIsNeededStaysWhateverItIs)
{
    const std::string why = R"("voidReason":{"why":"","happenedAt":"2031-03-04T06:00:00.000Z"})";
    const std::string physical =
        R"("physical":{"good":false,"happenedAt":"2031-03-04T06:00:00.000Z"})";
    const std::string cycle = R"({"kind":"leak","lot":"T","start":"2031-03-04T06:00:00.000Z",)"
                              + why + ',' + physical + '}';
    EXPECT_THAT(rewritten(withSterilizer("\"cycles\":[" + cycle + ']')), HasSubstr(cycle));
    const std::string product =
        R"({"id":"c","kind":"chemical","methods":[],"response":"colour","type":1})";
    EXPECT_THAT(rewritten(withTop("\"products\":[" + product + ']')), HasSubstr(product));
}

TEST(EvidenceWriter, NothingIsSaidOfATestsLoad)
{
    EvidenceRecord record =
        mustRead(R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},)"
                 R"("test":{"kind":"leak","lot":"T","start":"2031-03-04T06:00Z"}})");
    record.load.lot = "L";
    EXPECT_THAT(writeEvidence(record), Not(HasSubstr("\"load\"")));
    record.load = {};
    EXPECT_EQ(reread(record), record);
}

// Numbers and times.

TEST(EvidenceWriter, ReadingsStayAsTheyWereTyped)
{
    const auto readingOf = [](const std::string& celsius) {
        return withLoad(R"("readings":[{"parameter":"temperature","celsius":)" + celsius
                        + R"(,"happenedAt":"2031-03-04T06:00:00.000Z"}])");
    };
    for (const char* typed : {"132", "132.0", "132.10", "1.321e2", "1321E-1", "-0", "0.000", "-90",
                              "500", "499.99", "0.5e0"}) {
        EXPECT_EQ(rewritten(readingOf(typed)), line(readingOf(typed)));
    }
    // Without the text, or with that of another number, the number itself.
    EvidenceRecord record = mustRead(readingOf("132.10"));
    ParameterReading& reading = record.load.readings.front();
    for (const char* typed : {"", "132.1a", "+132.1", "132,1", "132.2", "1.32"}) {
        reading.typed = typed;
        EXPECT_EQ(writeEvidence(record), line(readingOf("132.1"))) << typed;
    }
    reading.value.thousandths = -10;
    EXPECT_EQ(writeEvidence(record), line(readingOf("-0.01")));
}

TEST(EvidenceWriter, MomentsAtBothEndsOfTheFormat)
{
    const std::pair<const char*, const char*> rows[] = {
        {"2000-01-01T00:00Z", "2000-01-01T00:00:00.000Z"},
        {"2000-01-01T00:00:00.001Z", "2000-01-01T00:00:00.001Z"},
        {"1999-12-31T18:00-06:00", nullptr}, // a year that cannot be written
        {"2000-01-01T00:00-06:00", "2000-01-01T06:00:00.000Z"},
        {"2099-12-31T23:59:59.999Z", "2099-12-31T23:59:59.999Z"},
        {"2099-12-31T17:59:59.999-06:00", "2099-12-31T23:59:59.999Z"},
        {"2099-12-31T18:00-06:00", nullptr},
    };
    for (const auto& [typed, written] : rows) {
        const auto decideAt = [](const char* time) {
            return R"({"evidenceVersion":1,"decideAt":")" + std::string(time)
                   + R"(","facility":{"timeZone":"America/Chicago"},"load":{}})";
        };
        if (written == nullptr) {
            EXPECT_EQ(mustRefuse(decideAt(typed)).pointer, "/decideAt") << typed;
            continue;
        }
        EXPECT_EQ(rewritten(decideAt(typed)), line(decideAt(written)));
        EXPECT_EQ(mustRead(decideAt(written)).decideAt, parseInstant(typed)) << typed;
    }
}

// Texts, against a general-purpose library.

TEST(EvidenceWriter, TextsOfEveryKind)
{
    std::string longest;
    for (std::size_t i = 0; i < mostOfText; ++i) {
        longest += "\xF0\x9F\xA7\xAA";
    }
    for (const std::string& text :
         {std::string("\"\\/ \\b"), std::string("a\tb\nc"), std::string("\xC3\xA9 \xE2\x82\xAC"),
          std::string("\xF0\x9F\xA7\xAA \xF4\x8F\xBF\xBD"),
          std::string("\xE2\x80\xA8 \xE2\x80\x8B \xEF\xBB\xBF"), longest}) {
        EvidenceRecord record;
        record.comment = text;
        const std::string written = writeEvidence(record);
        EXPECT_EQ(nlohmann::json::parse(written).at("comment").get<std::string>(), text);
        EXPECT_EQ(reread(record), record);
    }
}

// Every field of the tables.

TEST(EvidenceWriter, EveryFieldComesBackAndCanBeToldApart)
{
    std::set<std::string> refused;
    std::set<std::string> alone;
    for (const Leaf& leaf : allLeaves()) {
        // By what stands beside it: what was written for each value.
        std::map<std::size_t, std::map<std::string, std::vector<TableJson>>> writtenBeside;
        for (const TableJson& value : valuesOf(leaf)) {
            bool isRead = false;
            const std::vector<TableJson> records = recordsWith(leaf, value);
            for (std::size_t i = 0; i < records.size(); ++i) {
                const auto record = readTable(records[i]);
                if (!record) {
                    continue;
                }
                isRead = true;
                ASSERT_EQ(reread(*record), *record) << records[i];
                writtenBeside[i][writeEvidence(*record)].push_back(value);
            }
            if (!isRead) {
                refused.insert(leaf.name() + ' ' + value.dump());
            }
        }
        bool isCompared = false;
        for (const auto& [beside, values] : writtenBeside) {
            isCompared = isCompared || values.size() > 1;
            for (const auto& [text, same] : values) {
                EXPECT_EQ(same.size(), 1U) << leaf.name() << " is written the same for "
                                           << TableJson(same) << " in " << text;
            }
        }
        if (!isCompared) {
            alone.insert(leaf.name());
        }
    }
    EXPECT_GT(allLeaves().size(), 500U);
    EXPECT_EQ(refused, (std::set<std::string>{R"(/test/kind "load")"}));
    // A version has one value, and a product of the other kind has other fields.
    EXPECT_EQ(alone, (std::set<std::string>{"/evidenceVersion", "/products/0/kind"}));
}

/// Whether the fields of an object stand in the order of their table, and below it.
void expectOrder(const ObjectType& type, const TableJson& object)
{
    auto next = type.fields.begin();
    for (const auto& [name, value] : object.items()) {
        const auto field = std::find_if(next, type.fields.end(),
                                        [&](const Field& each) { return each.name == name; });
        ASSERT_NE(field, type.fields.end()) << name << " in " << object;
        next = field + 1;
        const auto* list = std::get_if<ListRule>(&field->rule);
        const Rule& rule = list == nullptr ? field->rule : list->element->rule;
        const auto* either = std::get_if<TextOrObjectRule>(&rule);
        const auto* below = either != nullptr ? &either->object : std::get_if<ObjectRule>(&rule);
        if (below != nullptr) {
            for (const TableJson& each : list == nullptr ? TableJson::array({value}) : value) {
                expectOrder(*below->type, each);
            }
        }
    }
}

TEST(EvidenceWriter, RecordsWithEveryFieldTogether)
{
    std::set<std::pair<const ObjectType*, std::string>> stated;
    for (const TableJson& full : fullRecords()) {
        const auto record = readTable(full);
        ASSERT_TRUE(record);
        EXPECT_EQ(reread(*record), *record);
        const std::string text = writeEvidence(*record);
        const TableJson written = TableJson::parse(text);
        EXPECT_EQ(text, written.dump() + '\n') << "not as a general-purpose library writes it";
        expectOrder(recordType, written);
        for (const Leaf& leaf : allLeaves()) {
            // Lists of objects may state it in another element than the first.
            TableJson found = TableJson::array({written});
            for (const Leaf::Step& step : leaf.steps) {
                TableJson below = TableJson::array();
                for (const TableJson& each : found) {
                    const auto field = each.find(std::string(step.field->name));
                    if (field == each.end()) {
                        continue;
                    }
                    if (field->is_array()) {
                        below.insert(below.end(), field->begin(), field->end());
                    } else {
                        below.push_back(*field);
                    }
                }
                found = std::move(below);
            }
            if (!found.empty()) {
                stated.emplace(leaf.steps.back().type, leaf.steps.back().field->name);
            }
        }
    }
    for (const Leaf& leaf : allLeaves()) {
        if (!std::holds_alternative<TextOrObjectRule>(leaf.rule())) {
            EXPECT_TRUE(stated.contains(
                {leaf.steps.back().type, std::string(leaf.steps.back().field->name)}))
                << leaf.name();
        }
    }
}

TEST(EvidenceWriter, ANamedSpecificationIsWrittenOut)
{
    TableJson json = TableJson::parse(withLoad(""));
    json["specification"] = "steam-prevacuum-132-wrapped@1";
    const auto record = readTable(json);
    ASSERT_TRUE(record);
    EXPECT_THAT(writeEvidence(*record),
                HasSubstr(R"("specification":{"id":"steam-prevacuum-132-wrapped","revision":1,)"));
    EXPECT_EQ(reread(*record), *record);
}

TEST(EvidenceWriter, AFieldWithoutAWayBackIsNoneOfTheTables)
{
    constexpr Field oneWay{"x", FlagRule{.store = [](void*, bool) {}, .fetch = nullptr}};
    static constexpr Field oneWayElement{"",
                                         FlagRule{.store = [](void*, bool) {}, .fetch = nullptr}};
    constexpr Field listOfOneWay{
        "x", ListRule{.least = 0,
                      .open = [](void* owner) { return owner; },
                      .element = &oneWayElement,
                      .at = [](const void*, std::size_t) -> const void* { return nullptr; }}};
    static_assert(!canBeFetched(oneWay) && !canBeFetched(listOfOneWay));
    for (const Leaf& leaf : allLeaves()) {
        EXPECT_TRUE(canBeFetched(*leaf.steps.back().field)) << leaf.name();
    }
}

// What no record has that was read.

std::string whyRefused(const EvidenceRecord& record)
{
    try {
        return "written as " + writeEvidence(record);
    } catch (const std::out_of_range& refusal) {
        return refusal.what();
    }
}

TEST(EvidenceWriter, WhatTheFormatCannotStateIsRefusedByName)
{
    const EvidenceRecord full = readTable(fullRecords().front()).value();
    using Change = std::function<void(EvidenceRecord&)>;
    const std::pair<Change, const char*> rows[] = {
        {[](auto& record) { record.comment = "a\b"; }, "/comment: character 2 is U+0008"},
        {[](auto& record) { record.comment.assign(2'001, 'a'); }, "/comment: must have"},
        {[](auto& record) { record.load.lot = "a\n"; }, "/load/lot: character 2 is"},
        {[](auto& record) { record.load.items[0].label.clear(); }, "/load/items/0/label: "},
        {[](auto& record) {
             record.load.items[0].alsoInLots = {"a", ""};
         },
         "/load/items/0/alsoInLots/1: "},
        {[](auto& record) { record.decideAt = firstMoment - Duration::milliseconds(1); },
         "/decideAt: the years are 2000 to 2099, not 1999-12-31T23:59:59.999Z"},
        {[](auto& record) { record.decideAt = lastMoment + Duration::milliseconds(1); },
         "/decideAt: the years are 2000 to 2099, not 2100-01-01T00:00:00.000Z"},
        {[](auto& record) { record.lots[0].expires = Date{10'956}; },
         "/lots/0/expires: the years are 2000 to 2099, not 1999-12-31"},
        {[](auto& record) { record.load.counter = -1; }, "/load/counter: must be"},
        {[](auto& record) {
             record.load.readings[0].value = {Unit::celsius, 131'901};
         },
         "/load/readings/0/celsius: lies between two numbers with at most 2 decimals"},
        {[](auto& record) { record.specification->settings.exposureMs = 200'000; },
         "/specification/settings/exposureMinutes: lies between two numbers"},
        {[](auto& record) {
             record.atmosphere = AbsolutePressure::fromMicropascals(100'000'000'001);
         },
         "/facility/atmosphereKPa: lies between two numbers"},
        {[](auto& record) { record.sterilizer->clockOffsets[0].offset = Duration{1}; },
         "/sterilizer/clockOffsets/0/seconds: lies between two numbers"},
        {[](auto& record) { record.load.reviews[0].newestSeen = lastMoment + Duration{1}; },
         "/load/reviews/0/newestSeen: the years"},
        {[](auto& record) {
             record.specification->limits[0].most = {{Unit::seconds, 240'000}};
         },
         "/specification/limits/0: it has a value for which there is no field"},
        {[](auto& record) { record.packagings[0].methods.add(Method::unknown); },
         "/packagings/0/methods/"},
        {[](auto& record) { record.load.readings[0].parameter = static_cast<Parameter>(99); },
         "/load/readings/0/parameter: it is needed"},
    };
    EXPECT_THAT(whyRefused(full), HasSubstr("written as {"));
    for (const auto& [change, why] : rows) {
        EvidenceRecord record = full;
        change(record);
        EXPECT_THAT(whyRefused(record), HasSubstr("evidence cannot state " + std::string(why)));
    }
}

TEST(EvidenceWriter, AReviewThatSawNothingSawWhatWasBeforeEverything)
{
    EvidenceRecord record = mustRead(withLoad(
        R"("reviews":[{"finding":"f","answer":"isolated","newestSeen":"2031-03-04T06:00Z",)"
        R"("happenedAt":"2031-03-04T06:00Z"}])"));
    record.load.reviews.front().newestSeen = Instant{};
    const std::string text = writeEvidence(record);
    EXPECT_THAT(text, HasSubstr(R"("newestSeen":"2000-01-01T00:00:00.000Z")"));
    EXPECT_EQ(writeEvidence(mustRead(text)), text);
}

// Size.

EvidenceRecord withItems(std::size_t count)
{
    EvidenceRecord record = readTable(fullRecords().front()).value();
    const Item item = record.load.items.front();
    record.load.items.clear();
    for (std::size_t i = 0; i < count; ++i) {
        record.load.items.push_back(item);
        record.load.items.back().label += std::to_string(i);
    }
    return record;
}

/// The least of a few, so that other work of the computer matters little.
std::chrono::nanoseconds timeToWrite(const EvidenceRecord& record)
{
    auto least = std::chrono::nanoseconds::max();
    for (int i = 0; i < 5; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        EXPECT_FALSE(writeEvidence(record).empty());
        least = std::min<std::chrono::nanoseconds>(least, std::chrono::steady_clock::now() - begin);
    }
    return least;
}

TEST(EvidenceWriter, LargeRecordsCostInProportion)
{
    const EvidenceRecord some = withItems(60);
    const EvidenceRecord many = withItems(960);
    EXPECT_EQ(mustRead(writeEvidence(some)), some);
    // Sixteen times as many, or 256 times where each looked at all others.
    EXPECT_LT(timeToWrite(many), timeToWrite(some) * 64);
}

/// Just as much as is read is written, and not one object more.
TEST(EvidenceWriter, WhatNothingReadsIsNotWritten)
{
    EvidenceRecord record = mustRead(withLoad(R"("lot":"L1")"));
    const auto with = [&record](std::size_t count) {
        record.load.items.clear();
        for (std::size_t i = 0; i < count; ++i) {
            record.load.items.push_back({.label = std::to_string(i)});
        }
        return readText(writeEvidence(record));
    };
    std::size_t most = mostObjects;
    const auto isTooMany = [&] {
        try {
            return !std::holds_alternative<EvidenceRecord>(with(most));
        } catch (const std::length_error&) {
            return true;
        }
    };
    while (isTooMany()) {
        --most;
    }
    EXPECT_GT(most, mostObjects - 10);
    EXPECT_THROW((void)with(most + 1), std::length_error);
    record.comment.assign(2'000, 'a');
    record.load.items.assign(9'000, {.label = std::string(64, 'a')});
    for (Item& each : record.load.items) {
        each.alsoInLots.assign(40, std::string(64, 'a'));
    }
    EXPECT_THROW((void)writeEvidence(record), std::length_error) << "more than 16 MiB";
}

} // namespace

} // namespace loadwarden::tests
