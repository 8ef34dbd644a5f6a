#include "tests/core/exchange/evidence_support.h"

#include <gmock/gmock.h>

#include <streambuf>

// Records one after the other in a stream.

namespace loadwarden::tests {

namespace {

using testing::HasSubstr;

struct Outcome {
    std::vector<std::string> lots; ///< of records that were read; "!" and the number for errors
    std::vector<ReadError> errors;
};

Outcome readAll(std::istream& in)
{
    Outcome outcome;
    EvidenceReader reader(in, "stream", nullptr);
    while (auto next = reader.next()) {
        if (auto* error = std::get_if<ReadError>(&*next)) {
            outcome.lots.push_back('!' + std::to_string(error->record));
            outcome.errors.push_back(std::move(*error));
        } else {
            outcome.lots.push_back(std::get<EvidenceRecord>(*next).load.lot);
        }
    }
    EXPECT_FALSE(reader.next()) << "the end stays the end";
    return outcome;
}

Outcome readAll(const std::string& text)
{
    std::istringstream in(text);
    return readAll(in);
}

std::string lot(const std::string& name)
{
    return withLoad(R"("lot":")" + name + '"');
}

using Lots = std::vector<std::string>;

TEST(EvidenceStream, RecordsWithWhiteSpaceBetween)
{
    EXPECT_EQ(readAll(lot("A") + "\n" + lot("B") + "\r\n\r\n" + lot("C") + lot("D") + " \t ").lots,
              (Lots{"A", "B", "C", "D"}));
    EXPECT_EQ(readAll(lot("A")).lots, (Lots{"A"}));
    const std::string pretty = nlohmann::json::parse(lot("A")).dump(4);
    EXPECT_EQ(readAll(pretty + "\n\n" + pretty).lots, (Lots{"A", "A"}));
}

TEST(EvidenceStream, BracketsAndQuotationMarksInTexts)
{
    const Lots names{"}", "]{[", R"(\")", R"(\\)", R"({\"a\":[)"};
    std::string text;
    for (const std::string& name : names) {
        text += lot(name) + '\n';
    }
    EXPECT_EQ(readAll(text).lots, (Lots{"}", "]{[", "\"", "\\", "{\"a\":["}));
}

TEST(EvidenceStream, GoesOnAfterARecordThatIsWrongInside)
{
    const Outcome outcome = readAll(lot("A") + "\n{\"evidenceVersion\":2}\n" + lot("B")
                                    + "{not json}" + lot("") + lot("C"));
    EXPECT_EQ(outcome.lots, (Lots{"A", "!2", "B", "!4", "!5", "C"}));
    EXPECT_EQ(outcome.errors[0].source, "stream");
    EXPECT_EQ(outcome.errors[0].record, 2);
    EXPECT_EQ(outcome.errors[0].problems.back().pointer, "/evidenceVersion");
    EXPECT_EQ(outcome.errors[0].problems.back().place, (TextPlace{2, 20}));
    EXPECT_EQ(outcome.errors[2].problems[0].pointer, "/load/lot");
}

struct Spoilt {
    std::string text;
    Lots lots;
    TextPlace place; ///< of the last problem
    std::string says;
};

void expectSpoilt(const std::vector<Spoilt>& cases)
{
    for (const Spoilt& c : cases) {
        const Outcome outcome = readAll(c.text);
        EXPECT_EQ(outcome.lots, c.lots) << c.text;
        ASSERT_FALSE(outcome.errors.empty()) << c.text;
        const ReadProblem& problem = outcome.errors.back().problems.back();
        EXPECT_EQ(problem.place, c.place) << c.text << '\n' << described(outcome.errors.back());
        EXPECT_THAT(problem.message, HasSubstr(c.says)) << c.text;
    }
}

TEST(EvidenceStream, WhatIsNoRecordSpoilsNoOther)
{
    const std::string a = lot("A");
    const auto after = static_cast<std::int64_t>(a.size()) + 1;
    expectSpoilt({
        {"", {"!1"}, {1, 1}, "the file is empty"},
        {" \n ", {"!1"}, {2, 2}, "the file is empty"},
        {a + "," + lot("B"), {"A", "!2", "B"}, {1, after}, "a comma"},
        {a + ",\n" + lot("B"), {"A", "!2", "B"}, {1, after}, "a comma"},
        {"[" + a + "]", {"!1", "A"}, {1, 1}, "without a list around them"},
        {"[\n" + a + ",\n" + lot("B") + "\n]\n", {"!1", "A", "B"}, {1, 1}, "without a list"},
        {"x" + a, {"!1"}, {1, 1}, "must begin with {"},
        {"x\n" + a, {"!1", "A"}, {1, 1}, "must begin with {"},
        {a + "}" + lot("B") + "\n" + lot("C"), {"A", "!2", "C"}, {1, after}, "must begin with {"},
        {a + "]\n" + lot("B"), {"A", "!2", "B"}, {1, after}, "must begin with {"},
        {"\xEF\xBB\xBF" + a, {"!1"}, {1, 1}, "byte order mark"},
        {std::string("{\0\"\0", 4), {"!1"}, {1, 1}, "UTF-16"},
    });
}

TEST(EvidenceStream, WhatIsMissingSpoilsItsOwnRecordOnly)
{
    const std::string a = lot("A") + "\n";
    const std::string b = "\n" + lot("B");
    const auto cut = [](const std::string& what) {
        return R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"load":{)" + what;
    };
    const auto column = [&](const std::string& what) {
        return static_cast<std::int64_t>(cut(what).size()) + 1;
    };
    expectSpoilt({
        {a + cut("\"lot\":\"X\"}") + b,
         {"A", "!2", "B"},
         {2, column("\"lot\":\"X\"}")},
         "} is missing"},
        {a + cut("\"lot\":\"X\""), {"A", "!2"}, {2, column("\"lot\":\"X\"")}, "} is missing"},
        {a + cut("\"lot\":\"X}}") + b,
         {"A", "!2", "B"},
         {2, column("\"lot\":")},
         "not closed on its line"},
        {a + cut("\"lot\":\"X}}"), {"A", "!2"}, {2, column("\"lot\":")}, "not closed on its line"},
        {a + cut("\"lot\":\"X,\"clock\":\"facility\"}}") + b,
         {"A", "!2", "B"},
         {2, column("\"lot\":\"X,\"")},
         "or a quotation mark before it"},
        {a + cut("\"lot\":") + b, {"A", "!2", "B"}, {2, column("\"lot\":")}, "a value is missing"},
        {a + cut("\"items\":[") + b,
         {"A", "!2", "B"},
         {2, column("\"items\":[")},
         "a value is missing"},
        {a + cut("\"items\":[}}") + b,
         {"A", "!2", "B"},
         {2, column("\"items\":[")},
         "a value is missing"},
        {a + cut("\"items\":[{\"label\":\"I\"}}}") + b,
         {"A", "!2", "B"},
         {2, column("\"items\":[{\"label\":\"I\"}")},
         "} stands here where ] is missing: the [ of line 2, column "},
        {"{]" + lot("B") + b, {"!1", "B"}, {1, 2}, "before this bracket"},
        {a + cut("\"lot\":\"\\") + b, {"A", "!2", "B"}, {2, column("\"lot\":\"")}, "backslash"},
    });
}

TEST(EvidenceStream, LinesOfARecordMayBeginWithABrace)
{
    const std::string text =
        "{\"evidenceVersion\":1,\"facility\":\n{\"timeZone\":\"UTC\"},\"load\":\n"
        "{\"lot\":\"A\",\"items\":[\n{\"label\":\"I1\"},\n{\"label\":\"I2\"}]}}\n";
    EXPECT_EQ(readAll(text + text).lots, (Lots{"A", "A"}));
}

TEST(EvidenceStream, PlacesAreThoseOfTheFile)
{
    const Outcome outcome = readAll("\n" + nlohmann::json::parse(lot("A")).dump(1) + "\n\n  "
                                    + lot("") + "  {\"a\":1}\n");
    ASSERT_EQ(outcome.errors.size(), 2U);
    EXPECT_EQ(outcome.errors[0].problems[0].place,
              (TextPlace{12, static_cast<std::int64_t>(lot("").find("\"\"")) + 3}));
    EXPECT_EQ(outcome.errors[1].problems[0].place,
              (TextPlace{12, static_cast<std::int64_t>(lot("").size()) + 5}));
}

TEST(EvidenceStream, NulBytesAndWrongBytesSpoilTheirRecordOnly)
{
    std::string nul = lot("x");
    nul[nul.find('x')] = '\0';
    const Outcome outcome = readAll(lot("A") + nul + lot("\xE9") + lot("B"));
    EXPECT_EQ(outcome.lots, (Lots{"A", "!2", "!3", "B"}));
    EXPECT_THAT(outcome.errors[0].problems[0].message, HasSubstr("byte of value 0"));
    EXPECT_THAT(outcome.errors[1].problems[0].message, HasSubstr("not UTF-8"));
}

TEST(EvidenceStream, DeepNestingIsRefusedAndPassedOver)
{
    const auto nested = [](std::size_t depth) {
        return "{\"load\":" + std::string(depth - 1, '[') + std::string(depth - 1, ']') + "}";
    };
    const Outcome outcome = readAll(nested(64) + nested(65) + nested(100'000) + lot("A"));
    EXPECT_EQ(outcome.lots, (Lots{"!1", "!2", "!3", "A"}));
    for (const ReadError& error : outcome.errors) {
        EXPECT_EQ(error.problems.back().pointer, "/load");
    }
    EXPECT_THAT(outcome.errors[2].problems.back().message, HasSubstr("more than 64"));
}

/// A bracket that is missing near the top leaves all that follows it one level too deep.
TEST(EvidenceStream, WhatIsMissingBeforeManyBracketsIsSaidWhereItIsMissing)
{
    std::string text = "{\"evidenceVersion\": 1,\n\"facility\": {\"timeZone\": \"UTC\"},\n";
    text += "\"load\": {\"items\": [\n{\"label\": \"I0\", \"devices\": [{\"name\": \"D\"]}\n";
    for (int i = 1; i <= 100; ++i) {
        text += ", {\"label\": \"I" + std::to_string(i) + "\", \"devices\": [{\"name\": \"D\"}]}\n";
    }
    const Outcome outcome = readAll(text + "]}}\n\n" + lot("A"));
    EXPECT_EQ(outcome.lots, (Lots{"!1", "A"}));
    const ReadProblem& last = outcome.errors.at(0).problems.back();
    EXPECT_EQ(last.place.line, 4) << described(outcome.errors[0]);
}

TEST(EvidenceStream, ARecordOfMoreThan16MiBIsRefusedAndPassedOver)
{
    const std::string head = lot("A");
    const std::size_t most = std::size_t{16} << 20U;
    const auto padded = [&](std::size_t bytes) {
        std::string text = head;
        text.insert(1, bytes - head.size(), ' ');
        return text;
    };
    const Outcome outcome = readAll(padded(most) + padded(most + 1) + lot("B"));
    EXPECT_EQ(outcome.lots, (Lots{"A", "!2", "B"}));
    EXPECT_THAT(outcome.errors[0].problems[0].message, HasSubstr("16 MiB"));
}

/// Gives a few bytes at a time, as a pipe may, and fails at the end if told to.
class Drip : public std::streambuf {
public:
    Drip(std::string text, std::size_t step, bool breaks)
        : m_text(std::move(text)), m_step(step), m_breaks(breaks)
    {
    }

protected:
    int_type underflow() override
    {
        if (m_at == m_text.size()) {
            if (m_breaks) {
                throw std::runtime_error("the disk broke");
            }
            return traits_type::eof();
        }
        const std::size_t count = std::min(m_step, m_text.size() - m_at);
        char* const begin = m_text.data() + m_at;
        setg(begin, begin, begin + count);
        m_at += count;
        return traits_type::to_int_type(*begin);
    }

private:
    std::string m_text;
    std::size_t m_step;
    std::size_t m_at = 0;
    bool m_breaks;
};

TEST(EvidenceStream, PiecesOfAnySizeMakeTheSameRecords)
{
    const std::string text = lot("A") + "\n" + lot(R"(\"}{)") + lot("") + lot("B");
    for (std::size_t step = 1; step < 40; ++step) {
        Drip drip(text, step, false);
        std::istream in(&drip);
        EXPECT_EQ(readAll(in).lots, (Lots{"A", "\"}{", "!3", "B"})) << step;
    }
}

TEST(EvidenceStream, AStreamThatBreaksIsNotAnEnd)
{
    for (const std::string& text : {lot("A"), lot("A") + "{\"load\":", lot("A") + "\n"}) {
        Drip drip(text, 1000, true);
        std::istream in(&drip);
        const Outcome outcome = readAll(in);
        EXPECT_EQ(outcome.lots, (Lots{"A", "!2"})) << text;
        EXPECT_THAT(outcome.errors.back().problems[0].message, HasSubstr("could not be read"))
            << text;
    }
}

TEST(EvidenceStream, AnsweredWhileItComesIn)
{
    // The second record is never sent; the first must not wait for it.
    class Refuses : public Drip {
    public:
        using Drip::Drip;

    protected:
        int_type underflow() override
        {
            if (m_given) {
                ADD_FAILURE() << "asked for more than the first record";
                return traits_type::eof();
            }
            m_given = true;
            return Drip::underflow();
        }

    private:
        bool m_given = false;
    };
    Refuses source(lot("A"), 1000, false);
    std::istream in(&source);
    EvidenceReader reader(in, "stream", nullptr);
    const auto first = reader.next();
    ASSERT_TRUE(first && std::holds_alternative<EvidenceRecord>(*first));
}

TEST(EvidenceStream, TheSplitterAloneHandsOverTexts)
{
    std::istringstream in(lot("A") + "\n " + lot("B") + "\n{");
    EvidenceSplitter splitter(in);
    const auto first = splitter.next();
    ASSERT_TRUE(first);
    EXPECT_EQ(first->record, 1);
    EXPECT_EQ(first->text, lot("A"));
    EXPECT_EQ(first->problem, "");
    EXPECT_EQ(splitter.next()->text, lot("B"));
    const auto last = splitter.next();
    ASSERT_TRUE(last);
    EXPECT_EQ(last->record, 3);
    EXPECT_EQ(last->text, "{");
    EXPECT_EQ(last->place, (TextPlace{3, 1}));
    EXPECT_FALSE(splitter.next());
}

} // namespace

} // namespace loadwarden::tests
