#include "ui/questions/topic_view.h"

#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"
#include "ui/questions/topic_button.h"
#include "ui/questions/topic_drawing.h"

#include <QLocale>
#include <QVBoxLayout>

#include <utility>
#include <variant>

namespace loadwarden::ui {
namespace {

/// As few digits as tell it: 0.95, 1e-06.
QString number(double value)
{
    return QLocale::c().toString(value, 'g', 3);
}

} // namespace

TopicView::TopicView(Look& look, const TopicAnswer& answer, const TopicLibrary& library,
                     QWidget* parent)
    : QFrame(parent), m_column(new QVBoxLayout(this))
{
    setObjectName(QStringLiteral("panel"));
    m_column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    m_column->setSpacing(space::small);
    const Topic& topic = *answer.topic;
    m_column->addWidget(makeLabel(text(topic.question), Type::heading));
    if (topic.isOfFacility) {
        m_column->addWidget(makeMuted(tr("This facility's own topic")));
    }
    m_column->addWidget(makeLabel(text(topic.shortAnswer), Type::strong));
    m_column->addSpacing(space::small);
    m_column->addWidget(makeLabel(tr("What to do now"), Type::strong));
    for (std::size_t i = 0; i < topic.doNow.size(); ++i) {
        m_column->addWidget(makeLabel(tr("%1. %2", "a step's number, the step")
                                          .arg(static_cast<int>(i + 1))
                                          .arg(text(topic.doNow[i]))));
    }
    if (topic.picture != TopicPicture::none) {
        m_column->addSpacing(space::small);
        m_column->addWidget(new TopicDrawing(look, topic.picture));
    }
    m_column->addWidget(makeLabel(tr("Why"), Type::strong));
    m_column->addWidget(makeLabel(text(topic.why)));
    addCases(answer);
    addCalculations(answer);
    if (answer.note != nullptr) {
        m_column->addWidget(makeLabel(tr("This house adds"), Type::strong));
        m_column->addWidget(makeLabel(text(answer.note->note)));
    }
    m_column->addWidget(makeLabel(tr("Caution"), Type::strong));
    m_column->addWidget(makeLabel(text(topic.caution)));
    addGrounds(answer);
    addPaper();
    addRelated(topic, library);
}

void TopicView::addCases(const TopicAnswer& answer)
{
    if (answer.cases.empty()) {
        return;
    }
    m_column->addWidget(makeLabel(tr("What the rules decide, on small examples"), Type::strong));
    for (const CaseAnswer& each : answer.cases) {
        m_column->addWidget(makeLabel(
            tr("%1 Decided: %2.", "what is told, the verdict")
                .arg(text(each.topicCase->tells),
                     text(std::visit([](auto result) { return say(result); }, decidedOn(each))))));
        for (const Finding& finding : each.findings) {
            const Said said = say(finding, HouseStyle{.zone = each.zone});
            m_column->addWidget(makeMuted(text(said.says)));
        }
    }
    if (answer.policyDiffers) {
        QLabel* const differs =
            makeLabel(tr("This facility's policy decides otherwise than this answer says. Follow "
                         "the decision, and ask your lead."));
        differs->setProperty("tone", "bad");
        m_column->addWidget(differs);
    }
}

void TopicView::addCalculations(const TopicAnswer& answer)
{
    if (answer.calculations.empty()) {
        return;
    }
    m_column->addWidget(makeLabel(tr("Computed"), Type::strong));
    for (const CalculationAnswer& row : answer.calculations) {
        const Assurance& made = row.assurance;
        m_column->addWidget(
            makeLabel(tr("%1: %2 organisms, D %3 min, %4 min at that temperature. Log reduction "
                         "%5, expected survivors %6, chance of at least one %7.")
                          .arg(text(row.tells), number(made.population), number(made.dMinutes),
                               number(made.minutes), number(made.logReduction),
                               number(made.survivors), number(made.chanceOfAny))));
    }
    m_column->addWidget(makeMuted(tr("By the log-linear model, which releases nothing; temperature "
                                     "in the chamber is not temperature inside the pack.")));
}

void TopicView::addGrounds(const TopicAnswer& answer)
{
    const Topic& topic = *answer.topic;
    for (const TopicSource& source : topic.sources) {
        const bool isPractice = source.trust == SourceTrust::commonPractice;
        m_column->addWidget(makeMuted(
            isPractice ? tr("Source: %1").arg(text(source.text))
                       : tr("Source: %1 (%2)", "a document, how sure it is")
                             .arg(text(source.text), text(std::string(textOf(source.trust))))));
    }
    const std::string& owner = answer.note != nullptr ? answer.note->owner : topic.owner;
    const Date review = answer.note != nullptr ? answer.note->reviewBy : topic.reviewBy;
    const QString due = text(formatDate(review));
    m_column->addWidget(
        makeMuted(answer.isOverdue
                      ? tr("Owner: %1. Its review was due on %2: ask the owner whether this still "
                           "holds.")
                            .arg(text(owner), due)
                      : tr("Owner: %1. Review by %2.").arg(text(owner), due)));
}

void TopicView::addPaper()
{
    auto* const row = new FlowLayout;
    auto* const card = makeButton(tr("Answer card…"));
    auto* const lesson = makeButton(tr("In-service sheet…"));
    connect(card, &QPushButton::clicked, this, [this] { emit wantsPaper(TopicSheet::answerCard); });
    connect(lesson, &QPushButton::clicked, this,
            [this] { emit wantsPaper(TopicSheet::inService); });
    row->addWidget(card);
    row->addWidget(lesson);
    m_column->addLayout(row);
}

void TopicView::addRelated(const Topic& topic, const TopicLibrary& library)
{
    bool isFirst = true;
    for (const std::string& id : topic.related) {
        const Topic* const other = library.find(id, topic.language);
        if (other == nullptr) {
            continue;
        }
        if (std::exchange(isFirst, false)) {
            m_column->addWidget(makeLabel(tr("Related"), Type::strong));
        }
        auto* const go = new TopicButton(*other);
        connect(go, &TopicButton::clicked, this, [this, id = text(id)] { emit wantsTopic(id); });
        m_column->addWidget(go);
    }
}

} // namespace loadwarden::ui
