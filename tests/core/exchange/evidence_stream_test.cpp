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
    EXPECT_EQ(outcome.errors[0].pointer, "/evidenceVersion");
    EXPECT_EQ(outcome.errors[2].pointer, "/load/lot");
}

TEST(EvidenceStream, EndsWhereTheNextRecordIsNotKnown)
{
    struct Case {
        std::string text;
        Lots lots;
        std::string says;
    };
    const Case cases[] = {
        {"", {"!1"}, "the file is empty"},
        {" \n ", {"!1"}, "the file is empty"},
        {lot("A") + "\n{\"load\":{", {"A", "!2"}, "ends before the record's closing }"},
        {lot("A") + "\n{\"load\":\"}", {"A", "!2"}, "ends before the record's closing }"},
        {lot("A") + "," + lot("B"), {"A", "!2"}, "a comma"},
        {"[" + lot("A") + "]", {"!1"}, "without a list around them"},
        {"x" + lot("A"), {"!1"}, "must begin with {"},
        {lot("A") + "}" + lot("B"), {"A", "!2"}, "must begin with {"},
        {"{\"load\":[}" + lot("B"), {"!1"}, "does not fit"},
        {"{]" + lot("B"), {"!1"}, "does not fit"},
        {"\xEF\xBB\xBF" + lot("A"), {"!1"}, "byte order mark"},
        {std::string("{\0\"\0", 4), {"!1"}, "UTF-16"},
    };
    for (const Case& c : cases) {
        const Outcome outcome = readAll(c.text);
        EXPECT_EQ(outcome.lots, c.lots) << c.text;
        ASSERT_FALSE(outcome.errors.empty()) << c.text;
        EXPECT_THAT(outcome.errors.back().message, HasSubstr(c.says)) << c.text;
        EXPECT_EQ(outcome.errors.back().pointer, "") << c.text;
    }
}

TEST(EvidenceStream, NulBytesAndWrongBytesSpoilTheirRecordOnly)
{
    std::string nul = lot("x");
    nul[nul.find('x')] = '\0';
    const Outcome outcome = readAll(lot("A") + nul + lot("\xE9") + lot("B"));
    EXPECT_EQ(outcome.lots, (Lots{"A", "!2", "!3", "B"}));
    EXPECT_THAT(outcome.errors[0].message, HasSubstr("byte of value 0"));
    EXPECT_THAT(outcome.errors[1].message, HasSubstr("not UTF-8"));
}

TEST(EvidenceStream, DeepNestingIsRefusedAndPassedOver)
{
    const auto nested = [](std::size_t depth) {
        return "{\"load\":" + std::string(depth - 1, '[') + std::string(depth - 1, ']') + "}";
    };
    const Outcome outcome = readAll(nested(64) + nested(65) + nested(100'000) + lot("A"));
    EXPECT_EQ(outcome.lots, (Lots{"!1", "!2", "!3", "A"}));
    EXPECT_EQ(outcome.errors[0].pointer, "/load");
    EXPECT_THAT(outcome.errors[1].message, HasSubstr("more than 64"));
    EXPECT_THAT(outcome.errors[2].message, HasSubstr("more than 64"));
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
    EXPECT_THAT(outcome.errors[0].message, HasSubstr("16 MiB"));
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
        EXPECT_THAT(outcome.errors.back().message, HasSubstr("could not be read")) << text;
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
    EXPECT_EQ(last->text, "");
    EXPECT_NE(last->problem, "");
    EXPECT_FALSE(splitter.next());
}

} // namespace

} // namespace loadwarden::tests
