#include "ui/paper/sheets/in_service_sheet.h"

#include "ui/paper/sheets/topic_parts.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {
namespace {

constexpr std::size_t mostRelated = 3;
constexpr std::size_t mostPhrasings = 3;
constexpr int fewestLines = 8; ///< for those who attended
constexpr int mostLines = 20;

class Lesson {
public:
    Lesson(const TopicAnswer& answer, const TopicLibrary& library, const House& house, Date printed)
        : m_answer(answer),
          m_topic(*answer.topic),
          m_library(library),
          m_house(house),
          m_frame(topicFrame(house, tr("In-service sheet"), m_topic, printed))
    {
    }

    [[nodiscard]] Pages make(int lines, bool attendedApart) const
    {
        Sheet sheet(m_frame, m_house.size);
        appendPolicyWarning(sheet, m_answer);
        question(sheet);
        answer(sheet);
        related(sheet);
        appendCaution(sheet, m_topic, Type::field);
        sheet.space(points(6));
        appendGrounds(sheet, m_answer);
        if (attendedApart) {
            sheet.newPage();
        }
        attended(sheet, lines);
        return std::move(sheet).pages();
    }

private:
    void question(Sheet& sheet) const
    {
        QStringList asked;
        for (std::size_t i = 0; i < std::min(mostPhrasings, m_topic.alsoAsked.size()); ++i) {
            asked << tr("“%1”").arg(text(m_topic.alsoAsked[i]));
        }
        sheet.space(points(4));
        sheet.paragraph({{tr("Also asked as: "), Face::strong},
                         {asked.join(QStringLiteral("  ")), Face::plain}},
                        Type::field);
        sheet.section(tr("What is often believed? Ask before you read on, and write it down"));
        sheet.emptyLines(2, millimetres(8));
    }

    void answer(Sheet& sheet) const
    {
        sheet.space(points(6));
        sheet.statements({{nullptr, text(m_topic.shortAnswer), {}}}, Type::steps);
        sheet.section(tr("Why, and why anything else that is believed is wrong"));
        sheet.paragraph(plain(text(m_topic.why)), Type::field);
        sheet.section(tr("What to do"));
        appendSteps(sheet, m_topic, Type::field);
        appendPicture(sheet, m_topic);
        appendNote(sheet, m_answer, Type::field);
        appendDecisions(sheet, m_answer, Reasoned::yes, Type::body);
    }

    void related(Sheet& sheet) const
    {
        Table table{.columns = {{{}, 38}, {{}, 62}}, .rows = {}, .type = Type::field};
        for (const std::string& id : m_topic.related) {
            const Topic* const other = m_library.find(id, m_topic.language);
            if (other != nullptr && table.rows.size() < mostRelated) {
                table.rows.push_back(
                    {.cells = {strong(text(other->question)), plain(text(other->shortAnswer))}});
            }
        }
        if (!table.rows.empty()) {
            sheet.section(tr("Ask these as well"));
            sheet.table(table);
        }
    }

    void attended(Sheet& sheet, int lines) const
    {
        sheet.section(tr("Who attended"));
        sheet.writeLines({tr("Taught by"), tr("Date, shift")}, 2, millimetres(9));
        sheet.space(points(6));
        Table table{.columns = {{tr("Name"), 42}, {tr("Signature"), 38}, {tr("Date"), 20}},
                    .rows = {},
                    .rules = Rules::boxes};
        for (int i = 0; i < lines; ++i) {
            table.rows.push_back({.cells = {Runs{}, Runs{}, Runs{}}, .least = millimetres(9)});
        }
        sheet.table(table);
    }

    const TopicAnswer& m_answer;
    const Topic& m_topic;
    const TopicLibrary& m_library;
    const House& m_house;
    Frame m_frame;
};

} // namespace

Pages inServiceSheet(const TopicAnswer& answer, const TopicLibrary& library, const House& house,
                     Date printed)
{
    // On one page with the topic where enough lines fit, else on a page of their own, else behind
    // what is left of the topic there; each time with as many as fit.
    struct Way {
        bool attendedApart;
        int pages;
    };
    const Lesson lesson(answer, library, house, printed);
    for (const auto& [apart, pages] : {Way{false, 1}, Way{true, 2}, Way{false, 2}}) {
        for (int lines = mostLines; lines >= fewestLines; --lines) {
            Pages made = lesson.make(lines, apart);
            if (made.count() <= pages) {
                return made;
            }
            if (lines == mostLines && lesson.make(fewestLines, apart).count() > pages) {
                break;
            }
        }
    }
    return lesson.make(fewestLines, false);
}

} // namespace loadwarden::paper
