#include "ui/paper/sheets/topic_parts.h"

#include "ui/paper/kit/indicator_drawing.h"
#include "ui/paper/kit/verdict_mark.h"

#include <QPainter>

#include <algorithm>
#include <variant>

namespace loadwarden::paper {
namespace {

constexpr double pictureShare = 0.72; ///< of the width
constexpr std::size_t mostBeside = 3; ///< decisions in a row

Statement statementOf(const CaseAnswer& decided, Reasoned reasoned)
{
    const auto result = decidedOn(decided);
    Statement statement{
        .mark =
            [result](QPainter& painter, const QRectF& in) {
                std::visit([&](auto each) { paintMark(painter, each, in); }, result);
            },
        .word = capital(std::visit([](auto each) { return text(say(each)); }, result)),
        .says = plain(text(decided.topicCase->tells))};
    if (reasoned == Reasoned::yes) {
        for (const Finding& finding : decided.findings) {
            const Said said = say(finding, HouseStyle{.zone = decided.zone});
            statement.says.push_back({u'\n' + text(said.says), Face::plain});
        }
        statement.says.push_back(
            {u'\n' + tr("Rule: %1").arg(text(decided.topicCase->rule)), Face::plain});
    }
    return statement;
}

Runs sourceText(const Topic& topic)
{
    Runs runs;
    for (const TopicSource& source : topic.sources) {
        const bool isPractice = source.trust == SourceTrust::commonPractice;
        const QString says = isPractice
                                 ? text(source.text)
                                 : tr("%1 (%2)").arg(text(source.text), text(textOf(source.trust)));
        runs.push_back({(runs.empty() ? QString() : QStringLiteral("\n")) + says, Face::plain});
    }
    return runs;
}

} // namespace

Frame topicFrame(const House& house, const QString& title, const Topic& topic, Date printed)
{
    const QString from = topic.isOfFacility ? tr("Loadwarden %1, from the facility's own topic %2")
                                            : tr("Loadwarden %1, from its topic %2");
    return {.title = title,
            .subject = text(topic.question),
            .facility = text(house.facility),
            .made = tr("Printed %1").arg(text(formatDate(printed))),
            .journal = from.arg(QStringLiteral(LOADWARDEN_VERSION), text(topic.id))};
}

void appendPolicyWarning(Sheet& sheet, const TopicAnswer& answer)
{
    if (answer.policyDiffers) {
        sheet.statements(
            {{nullptr, tr("The policy decides otherwise than this answer says"),
              plain(tr("Do not use this sheet. Follow the decision, and ask your lead."))}},
            Type::section, Type::section);
        sheet.space(points(6));
    }
}

void appendSteps(Sheet& sheet, const Topic& topic, Type type)
{
    Table table{.columns = {{{}, 5}, {{}, 95}}, .rows = {}, .type = type};
    for (std::size_t i = 0; i < topic.doNow.size(); ++i) {
        table.rows.push_back(
            {.cells = {strong(QString::number(i + 1)), plain(text(topic.doNow[i]))},
             .beginsGroup = i > 0});
    }
    sheet.table(table);
}

void appendPicture(Sheet& sheet, const Topic& topic)
{
    if (topic.picture == TopicPicture::none) {
        return;
    }
    const DrawnWith with{.font = fontOf(Type::field)};
    sheet.space(points(9));
    sheet.picture(indicatorHeight(topic.picture, with), [with, picture = topic.picture](
                                                            QPainter& painter, const QRectF& in) {
        paintIndicator(painter, picture, in.topLeft(), in.width() * pictureShare, with);
    });
}

void appendNote(Sheet& sheet, const TopicAnswer& answer, Type type)
{
    if (answer.note != nullptr) {
        sheet.section(tr("This house adds"), std::max(type, Type::section));
        sheet.paragraph(plain(text(answer.note->note)), type);
    }
}

void appendDecisions(Sheet& sheet, const TopicAnswer& answer, Reasoned reasoned, Type type)
{
    if (answer.cases.empty()) {
        return;
    }
    sheet.section(tr("Decided by the program's rule on a small evidence"),
                  std::max(type, Type::section));
    std::vector<Statement> row;
    for (const CaseAnswer& decided : answer.cases) {
        row.push_back(statementOf(decided, reasoned));
        if (row.size() == mostBeside || &decided == &answer.cases.back()) {
            sheet.space(points(2));
            sheet.statements(row, std::max(type, Type::section), type);
            row.clear();
        }
    }
}

void appendCaution(Sheet& sheet, const Topic& topic, Type type)
{
    sheet.space(points(6));
    sheet.statements({{nullptr, tr("Caution"), plain(text(topic.caution))}},
                     std::max(type, Type::section), type);
}

void appendGrounds(Sheet& sheet, const TopicAnswer& answer)
{
    const Topic& topic = *answer.topic;
    const std::string& owner = answer.note != nullptr ? answer.note->owner : topic.owner;
    const Date review = answer.note != nullptr ? answer.note->reviewBy : topic.reviewBy;
    const QString due = text(formatDate(review));
    sheet.paragraph({{tr("Source"), Face::strong}});
    sheet.paragraph(sourceText(topic));
    sheet.space(points(3));
    sheet.grid(
        {{tr("Owner"), plain(text(owner))},
         {tr("Review by"),
          plain(answer.isOverdue
                    ? tr("%1, which is over: ask the owner whether this still holds").arg(due)
                    : due)}},
        2);
}

} // namespace loadwarden::paper
