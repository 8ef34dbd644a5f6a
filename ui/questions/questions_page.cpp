#include "ui/questions/questions_page.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/empty_state.h"
#include "ui/parts/field.h"
#include "ui/parts/rows_scroll.h"
#include "ui/questions/topic_button.h"
#include "ui/questions/topic_paper.h"
#include "ui/questions/topic_view.h"
#include "ui/questions/tray_view.h"
#include "ui/shell/desk_link.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int mostCharacters = 1000;
constexpr int widest = 860; ///< what is read in one line

/// On the desk's thread: the guide that is there, or one that is made now.
std::shared_ptr<const Guide> guideOr(std::shared_ptr<const Guide> guide)
{
    return guide ? std::move(guide)
                 : std::make_shared<const Guide>(QLocale().bcp47Name().left(2).toStdString());
}

} // namespace

QuestionsPage::QuestionsPage(Workstation& workstation)
    : m_workstation(workstation),
      m_line(new QLineEdit),
      m_field(new Field(tr("Questio&n, or label of a tray"), m_line,
                        tr("in your own words, or scanned"))),
      m_paper(new TopicPaper(m_workstation)),
      m_scroll(makeRowsScroll(this)),
      m_column(nullptr)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    column->addWidget(m_paper);
    connect(m_paper, &TopicPaper::says, this, &Page::says);
    m_column = new QVBoxLayout(m_scroll->widget());
    m_column->setContentsMargins(space::page, 0, space::page, space::page);
    m_column->setSpacing(space::medium);
    column->addWidget(m_scroll, 1);
    m_column->addWidget(new EmptyState(
        tr("Ask what the floor asks"),
        tr("Scan or type the label of a tray: may it be used? Or ask in plain words: may I release "
           "before the biological indicator is read, what about a wet pack, the front has only "
           "just entered the zone.")));
    m_column->addStretch();
}

QWidget* QuestionsPage::makeHead()
{
    auto* const head = new QWidget;
    auto* const column = new QVBoxLayout(head);
    column->setContentsMargins(space::page, space::medium, space::page, space::small);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Questions from the floor"), Type::title, false));
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    m_line->setMaxLength(mostCharacters);
    row->addWidget(m_field, 1);
    auto* const button = makeButton(tr("&Ask"), ButtonKind::main);
    row->addWidget(button, 0, Qt::AlignVCenter);
    column->addLayout(row);
    connect(button, &QPushButton::clicked, this, [this] { ask(From::person); });
    connect(m_line, &QLineEdit::returnPressed, this, [this] { ask(From::person); });
    return head;
}

void QuestionsPage::shown()
{
    m_line->setFocus();
}

bool QuestionsPage::takeScan(const QString& text, const LookedUp& found)
{
    if (found.what != LookedUp::What::item && found.what != LookedUp::What::nothing) {
        return false;
    }
    m_line->setText(text);
    ask(From::scanner);
    return true;
}

void QuestionsPage::ask(From from)
{
    const QString asked = m_line->text().trimmed();
    if (asked.isEmpty()) {
        m_field->setError(tr("Type a question, or the label of a tray."));
        m_line->setFocus();
        return;
    }
    if (std::exchange(m_isAsking, true)) {
        return;
    }
    m_field->setError({});
    struct Asked {
        std::shared_ptr<const Guide> guide;
        FloorAnswer answer;
        std::optional<TopicAnswer> topic;
    };
    m_workstation.desk.ask(
        this,
        [guide = m_guide, words = asked.toStdString()](Office& office) {
            Asked asked{guideOr(guide), {}, {}};
            asked.answer = asked.guide->ask(office, words);
            if (!asked.answer.tray && asked.answer.isSure) {
                asked.topic = asked.guide->answer(office, *asked.answer.topics.front());
            }
            return asked;
        },
        [this, from](Asked asked) {
            m_isAsking = false;
            asked.answer.mayBeLabel |= from == From::scanner;
            m_guide = std::move(asked.guide);
            clear();
            show(asked.answer, asked.topic);
            m_column->addStretch();
            settleLayouts(m_scroll->widget());
            m_scroll->verticalScrollBar()->setValue(0);
            m_line->selectAll(); // the next question replaces this one
        },
        [this] { m_isAsking = false; });
}

void QuestionsPage::clear()
{
    m_paper->hide(); // it is of what was shown
    clearLayout(m_column);
}

void QuestionsPage::show(const FloorAnswer& answer, const std::optional<TopicAnswer>& topic)
{
    if (answer.tray) {
        auto* const tray =
            new TrayView(m_workstation.look, *answer.tray, m_workstation.desk.style());
        connect(tray, &TrayView::wantsLoad, this,
                [this, cycle = text(answer.tray->cycle), item = text(answer.tray->item)] {
                    emit wantsCycle(cycle, item);
                });
        addNarrow(tray);
        return;
    }
    if (answer.mayBeLabel) {
        addNarrow(new TrayView(m_workstation.look, text(answer.asked)));
    }
    if (topic) {
        showTopic(*topic);
        addNearest({answer.topics.begin() + 1, answer.topics.end()}, tr("Or did you mean"));
        return;
    }
    if (answer.topics.empty()) {
        m_column->addWidget(new EmptyState(tr("No topic has these words"),
                                           tr("Ask in other words, or ask your lead.")));
        return;
    }
    addNearest(answer.topics, tr("No topic answers this well. The nearest are"));
}

void QuestionsPage::addNearest(const std::vector<const Topic*>& topics, const QString& heading)
{
    if (topics.empty()) {
        return;
    }
    m_column->addWidget(makeLabel(heading, Type::heading));
    for (const Topic* const topic : topics) {
        auto* const go = new TopicButton(text(topic->question));
        connect(go, &TopicButton::clicked, this, [this, id = text(topic->id)] { openTopic(id); });
        addNarrow(go);
    }
}

void QuestionsPage::openTopic(const QString& id)
{
    if (std::exchange(m_isAsking, true)) {
        return;
    }
    struct Opened {
        std::shared_ptr<const Guide> guide;
        std::optional<TopicAnswer> topic;
    };
    m_workstation.desk.ask(
        this,
        [guide = m_guide, id = id.toStdString()](Office& office) {
            Opened opened{guideOr(guide), {}};
            const Topic* const topic = opened.guide->library().find(id, opened.guide->language());
            if (topic != nullptr) {
                opened.topic = opened.guide->answer(office, *topic);
            }
            return opened;
        },
        [this](Opened opened) {
            m_isAsking = false;
            m_guide = std::move(opened.guide);
            if (!opened.topic) {
                return;
            }
            clear();
            showTopic(*opened.topic);
            m_column->addStretch();
            settleLayouts(m_scroll->widget());
            m_scroll->verticalScrollBar()->setValue(0);
            m_line->setFocus();
        },
        [this] { m_isAsking = false; });
}

void QuestionsPage::showTopic(const TopicAnswer& answer)
{
    auto* const topic = new TopicView(m_workstation.look, answer, m_guide->library());
    connect(topic, &TopicView::wantsTopic, this, &QuestionsPage::openTopic);
    connect(topic, &TopicView::wantsPaper, this, [this, guide = m_guide, answer](TopicSheet sheet) {
        m_paper->ask(sheet, guide, answer);
    });
    addNarrow(topic);
}

void QuestionsPage::addNarrow(QWidget* widget)
{
    // In a row of its own: a column asks what is in it how high it is at the column's width.
    widget->setMaximumWidth(widest);
    auto* const row = new QHBoxLayout;
    row->addWidget(widget, 1);
    row->addStretch(0);
    m_column->addLayout(row);
}

} // namespace loadwarden::ui
