#include "ui/indicators/reading_panel.h"

#include "core/indicators/chemical.h"
#include "core/indicators/reading_result.h"
#include "core/words/say_terms.h"
#include "ui/indicators/indicator_reader.h"
#include "ui/indicators/reading_keys.h"
#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"

#include <QAccessible>
#include <QCoreApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widthOfAnswer = 220;

struct AnswerWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::AnswerWords)
};

/// What must be known to read it.
QString directionsOf(std::optional<Response> response)
{
    if (!response) {
        return AnswerWords::tr("Its product is in no register, so nobody knows how it answers. "
                               "Register the product and its lot under Settings, then read it.");
    }
    switch (*response) {
    case Response::movingFront:
        return AnswerWords::tr("The front need only have entered the accept zone: it need not fill "
                               "it. On the boundary, or short of it, is no pass.");
    case Response::colour:
        return AnswerWords::tr(
            "Compare with the end colour that the product's own directions show. "
            "A colour reached only in part is no pass.");
    case Response::sheet:
        return AnswerWords::tr("Only a change that is uniform and complete passes. Look at centre "
                               "and edges in good light.");
    case Response::growth: break;
    }
    return {};
}

} // namespace

std::vector<ReadingAnswer> answersOf(std::optional<Response> response)
{
    if (!response) {
        return {{Seen::unclear, reading_keys::unclear,
                 AnswerWords::tr("Unclear\nits product is not registered"), true},
                {Seen::unchanged, Qt::Key_N, AnswerWords::tr("Reject: no change"), false},
                {Seen::absent, Qt::Key_M, AnswerWords::tr("Reject: it is missing"), false}};
    }
    switch (*response) {
    case Response::movingFront:
        return {
            {Seen::frontInAcceptZone, reading_keys::accept,
             AnswerWords::tr("Accept\nfront in the accept zone"), true},
            {Seen::frontShortOfBoundary, reading_keys::reject,
             AnswerWords::tr("Reject\nfront short of the boundary"), true},
            {Seen::unclear, reading_keys::unclear,
             AnswerWords::tr("Unclear\na second person reads it"), true},
            {Seen::frontOnBoundary, Qt::Key_B, AnswerWords::tr("Reject: on the boundary"), false},
            {Seen::absent, Qt::Key_M, AnswerWords::tr("Reject: it is missing"), false}};
    case Response::sheet:
        return {
            {Seen::uniformComplete, reading_keys::accept,
             AnswerWords::tr("Accept\nuniform and complete"), true},
            {Seen::notUniform, reading_keys::reject, AnswerWords::tr("Reject\nnot uniform"), true},
            {Seen::unclear, reading_keys::unclear,
             AnswerWords::tr("Unclear\na second person reads it"), true},
            {Seen::uniformIncomplete, Qt::Key_I,
             AnswerWords::tr("Reject: uniform, but not complete"), false},
            {Seen::unchanged, Qt::Key_N, AnswerWords::tr("Reject: no change"), false},
            {Seen::absent, Qt::Key_M, AnswerWords::tr("Reject: it is missing"), false}};
    case Response::colour:
    case Response::growth: break;
    }
    return {{Seen::endColourReached, reading_keys::accept,
             AnswerWords::tr("Accept\nend colour reached"), true},
            {Seen::endColourPartly, reading_keys::reject,
             AnswerWords::tr("Reject\nend colour only in part"), true},
            {Seen::unclear, reading_keys::unclear,
             AnswerWords::tr("Unclear\na second person reads it"), true},
            {Seen::unchanged, Qt::Key_N, AnswerWords::tr("Reject: no change"), false},
            {Seen::absent, Qt::Key_M, AnswerWords::tr("Reject: it is missing"), false}};
}

ReadingPanel::ReadingPanel(Look& look, const QString& where, const QString& product,
                           std::optional<Response> response, const ReadingGuide& guide,
                           QWidget* parent)
    : QFrame(parent), m_answers(answersOf(response))
{
    setObjectName(QStringLiteral("reading"));
    setFocusPolicy(Qt::ClickFocus);
    setAccessibleName(tr("%1: what do you see?").arg(where));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("%1: what do you see?").arg(where), Type::heading));
    column->addWidget(makeMuted(product));
    if (response) {
        m_reader = makeReader(look, *response, guide, AnswersBy::surroundings);
    }
    if (response == Response::sheet) {
        column->addWidget(m_reader); // a sheet and its patterns need the whole width
    }
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::large);
    auto* const reading = new QVBoxLayout;
    reading->setSpacing(space::small);
    row->addLayout(reading, 3);
    if (m_reader != nullptr) {
        row->addWidget(new DirectionsView(guide), 2);
    }
    column->addLayout(row);
    addDrawing(reading, response);
    addAnswers(reading, where);
    reading->addStretch();
}

void ReadingPanel::addDrawing(QVBoxLayout* column, std::optional<Response> response)
{
    if (m_reader != nullptr && response != Response::sheet) {
        column->addWidget(m_reader);
    }
    column->addWidget(makeLabel(directionsOf(response)));
    if (m_reader != nullptr) {
        column->addWidget(makeMuted(tr("A neutral drawing, not this product: its maker's own "
                                       "directions decide how it is read.")));
    }
}

void ReadingPanel::addAnswers(QVBoxLayout* column, const QString& where)
{
    auto* const large = new QGridLayout;
    large->setHorizontalSpacing(space::medium);
    large->setVerticalSpacing(space::small);
    large->setColumnMinimumWidth(0, widthOfAnswer);
    large->setColumnStretch(1, 1);
    auto* const small = new FlowLayout;
    small->setSpacing(space::small);
    for (std::size_t i = 0; i < m_answers.size(); ++i) {
        const ReadingAnswer& answer = m_answers[i];
        const QString key = QKeySequence(answer.key).toString();
        const QString word = answer.words.section(u'\n', 0, 0);
        auto* const button = makeButton(tr("%1  (%2)", "an answer, its key").arg(word, key),
                                        answer.isLarge ? ButtonKind::key : ButtonKind::plain);
        button->setAccessibleName(tr("%1: %2", "an answer, of what")
                                      .arg(QString(answer.words).replace(u'\n', u' '), where));
        if (answer.isLarge) {
            button->setMinimumHeight(space::target + space::medium);
        }
        connect(button, &QPushButton::clicked, this, [this, i] { give(i); });
        m_buttons.push_back(button);
        if (answer.isLarge) {
            // Each with what it means beside it, so that no words are cut at any size of text.
            const int line = large->rowCount();
            large->addWidget(button, line, 0);
            large->addWidget(makeLabel(answer.words.section(u'\n', 1), Type::strong), line, 1);
        } else {
            small->addWidget(button);
        }
    }
    column->addLayout(large);
    if (m_reader != nullptr) {
        // Below the answers that it is about, so that they stay under the pointer.
        m_refusal = makeLabel({}, Type::strong);
        m_refusal->setProperty("tone", "bad");
        m_refusal->hide();
        column->addWidget(m_refusal);
        connect(m_reader, &IndicatorReader::changed, m_refusal, &QLabel::hide);
    }
    column->addLayout(small);
    auto* const leave = makeButton(tr("Not now"), ButtonKind::quiet);
    leave->setAccessibleName(tr("Not now: %1").arg(where));
    connect(leave, &QPushButton::clicked, this, &ReadingPanel::left);
    column->addWidget(leave, 0, Qt::AlignLeft);
}

std::size_t ReadingPanel::asMarked(std::size_t answer) const
{
    const std::optional<Seen> marked = m_reader != nullptr ? m_reader->seen() : std::nullopt;
    // A rarer rejection is what it says.
    if (!marked || !m_answers[answer].isLarge
        || readAsOf(*marked) != readAsOf(m_answers[answer].seen)) {
        return answer;
    }
    const auto exact = std::ranges::find(m_answers, *marked, &ReadingAnswer::seen);
    return exact == m_answers.end() ? answer : static_cast<std::size_t>(exact - m_answers.begin());
}

void ReadingPanel::give(std::size_t answer)
{
    const std::optional<Seen> marked = m_reader != nullptr ? m_reader->seen() : std::nullopt;
    if (marked && isGoodAnswer(m_answers[answer].seen) && !isGoodAnswer(*marked)) {
        m_refusal->setText(
            tr("You marked: %1. That is no pass. If you see it otherwise, change the "
               "drawing first.")
                .arg(text(say(*marked))));
        m_refusal->show();
        QAccessibleEvent event(m_refusal, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
        return;
    }
    if (std::exchange(m_isAnswered, true)) {
        return; // a key that is held, or a second press
    }
    const ReadingAnswer& given = m_answers[asMarked(answer)];
    emit answered(given.seen, QString(given.words).replace(u'\n', QStringLiteral(", ")));
}

void ReadingPanel::focusFirst()
{
    // On no answer: a key that is pressed too soon gives none.
    setFocus(Qt::OtherFocusReason);
}

void ReadingPanel::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        emit left();
        return;
    }
    for (std::size_t i = 0; i < m_answers.size(); ++i) {
        if (event->key() == m_answers[i].key && event->modifiers() == Qt::NoModifier
            && !event->isAutoRepeat()) {
            m_buttons[i]->click();
            return;
        }
    }
    QFrame::keyPressEvent(event);
}

} // namespace loadwarden::ui
