#include "ui/indicators/check_view.h"

#include "core/words/say_reading.h"
#include "ui/indicators/check_card.h"
#include "ui/indicators/check_result_view.h"
#include "ui/indicators/reading_keys.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/empty_state.h"
#include "ui/parts/rows_scroll.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widest = 1100;
constexpr int tickMs = 250;
/// An answer that comes sooner was meant for the indicator before: nobody sees and presses as
/// fast. Common practice, no source.
constexpr std::int64_t soonestMs = 200;

} // namespace

CheckView::CheckView(Look& look, const std::vector<CheckProduct>& products, std::uint64_t seed,
                     Ticks ticks, QWidget* parent)
    : QWidget(parent),
      m_look(look),
      m_products(products),
      m_seed(seed),
      m_drawn(drawCheck(products, seed)),
      m_watch(ticks ? std::move(ticks) : ownTicks()),
      m_pages(new QStackedWidget)
{
    setFocusPolicy(Qt::ClickFocus);
    setAccessibleName(tr("Check of reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_pages);
    if (m_drawn.empty()) {
        m_pages->addWidget(new EmptyState(
            tr("There is nothing to draw"),
            tr("A check is drawn of the chemical indicators and test sheets that are registered "
               "under Settings, Products: register one first.")));
        return;
    }
    m_pages->addWidget(makeReading());
    m_pages->addWidget(makePause());
    auto* const timer = new QTimer(this);
    connect(timer, &QTimer::timeout, this, &CheckView::showClock);
    timer->start(tickMs);
    showNext();
}

QWidget* CheckView::makeReading()
{
    QScrollArea* const scroll = makeRowsScroll(this);
    auto* const outer = new QHBoxLayout(scroll->widget());
    outer->setContentsMargins(space::page, space::medium, space::page, space::medium);
    auto* const narrow = new QWidget;
    narrow->setMaximumWidth(widest);
    outer->addWidget(narrow, 1);
    outer->addStretch(0);
    auto* const column = new QVBoxLayout(narrow);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::medium);
    column->addWidget(makeHead());
    column->addWidget(m_card = new CheckCard(m_look));
    column->addWidget(makeAnswers());
    column->addStretch();
    return scroll;
}

QWidget* CheckView::makeHead()
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::medium);
    m_count = makeLabel({}, Type::title);
    m_clock = makeMuted({}, false);
    auto* const pause =
        makeButton(tr("Pause  (%1)", "its key").arg(QKeySequence(Qt::Key_Escape).toString()));
    pause->setAccessibleName(tr("Pause"));
    m_giveUp = makeButton(tr("Really give up?"), ButtonKind::quiet);
    m_giveUp->setMinimumWidth(m_giveUp->sizeHint().width()); // nothing moves when it asks
    m_giveUp->setText(tr("Give up"));
    connect(pause, &QPushButton::clicked, this, &CheckView::pause);
    connect(m_giveUp, &QPushButton::clicked, this, &CheckView::giveUp);
    row->addWidget(m_count, 1);
    row->addWidget(m_clock);
    row->addWidget(pause);
    row->addWidget(m_giveUp);
    return head;
}

QWidget* CheckView::makeAnswers()
{
    auto* const box = new QWidget;
    auto* const column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    for (const reading_keys::AnswerKey& each : reading_keys::all) {
        QString word = text(say(each.readAs));
        word[0] = word[0].toUpper();
        auto* const button = makeButton(
            tr("%1  (%2)", "an answer, its key").arg(word, QKeySequence(each.key).toString()),
            ButtonKind::key);
        button->setAccessibleName(word);
        button->setMinimumHeight(space::target + space::large);
        connect(button, &QPushButton::clicked, this, [this, each] { answer(each.readAs); });
        row->addWidget(button, 1);
    }
    column->addLayout(row);
    column->addWidget(makeMuted(tr("A drawing to learn by, no product and no record of a load. The "
                                   "time is shown and not judged; giving up records nothing.")));
    return box;
}

QWidget* CheckView::makePause()
{
    auto* const state = new EmptyState(
        tr("Paused"), tr("The indicator is hidden and the time stands still until you go on."),
        tr("Go on"));
    connect(state, &EmptyState::acted, this, &CheckView::goOn);
    m_goOn = state->findChild<QPushButton*>();
    return state;
}

const CheckProduct* CheckView::productOf(const Drawn& drawn) const
{
    const auto found = std::ranges::find(m_products, drawn.product, &CheckProduct::id);
    return found == m_products.end() ? nullptr : &*found;
}

void CheckView::showNext()
{
    const Drawn& drawn = m_drawn[m_answers.size()];
    m_count->setText(
        tr("Indicator %1 of %2")
            .arg(QString::number(m_answers.size() + 1), QString::number(m_drawn.size())));
    m_card->show(drawn, productOf(drawn));
    settleLayouts(m_pages->widget(0));
    m_watch.next();
    showClock();
}

void CheckView::answer(ReadAs readAs)
{
    const std::int64_t took = m_watch.lap();
    if (isPaused() || m_isFinished || took < soonestMs) {
        return;
    }
    m_answers.push_back({readAs, took});
    m_giveUp->setText(tr("Give up"));
    if (m_answers.size() == m_drawn.size()) {
        finish();
        return;
    }
    showNext();
    focusFirst();
}

void CheckView::showClock()
{
    if (!m_isFinished) {
        m_clock->setText(tr("Time %1").arg(minutesText(m_watch.total())));
    }
}

void CheckView::pause()
{
    if (isPaused() || m_isFinished) {
        return;
    }
    m_watch.pause();
    m_pages->setCurrentIndex(1);
    m_goOn->setFocus(Qt::OtherFocusReason);
}

void CheckView::goOn()
{
    m_watch.goOn();
    m_pages->setCurrentIndex(0);
    focusFirst();
}

void CheckView::giveUp()
{
    const QString really = tr("Really give up?");
    if (m_giveUp->text() != really) {
        m_giveUp->setText(really); // asked once: twenty answers would be gone
        return;
    }
    m_isFinished = true;
    emit gaveUp();
}

void CheckView::finish()
{
    m_isFinished = true;
    const CheckResult result = *resultOf(m_seed, m_drawn, m_answers);
    auto* const view = new CheckResultView(m_look, result, m_products);
    connect(view, &CheckResultView::left, this, &CheckView::left);
    m_pages->addWidget(view);
    m_pages->setCurrentWidget(view);
    view->focusFirst();
    emit finished(result);
}

void CheckView::focusFirst()
{
    setFocus(Qt::OtherFocusReason);
}

void CheckView::keyPressEvent(QKeyEvent* event)
{
    if (m_isFinished || m_drawn.empty() || event->isAutoRepeat()) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (event->key() == Qt::Key_Escape) {
        isPaused() ? goOn() : pause();
        return;
    }
    if (event->modifiers() == Qt::NoModifier) {
        for (const reading_keys::AnswerKey& each : reading_keys::all) {
            if (event->key() == each.key) {
                answer(each.readAs);
                return;
            }
        }
    }
    QWidget::keyPressEvent(event);
}

} // namespace loadwarden::ui
