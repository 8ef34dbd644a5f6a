#include "ui/questions/questions_page.h"

#include "core/words/say_tray.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/rows_scroll.h"
#include "ui/questions/answer_column.h"
#include "ui/questions/house_faults.h"
#include "ui/questions/topic_paper.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/local_settings.h"

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
constexpr Duration askedBack = Duration::hours(92 * 24); ///< three months are counted

} // namespace

QuestionsPage::QuestionsPage(Workstation& workstation)
    : m_workstation(workstation),
      m_line(new QLineEdit),
      m_field(new Field(tr("Questio&n, or label of a tray"), m_line,
                        tr("in your own words, or scanned"))),
      m_faults(new HouseFaults),
      m_paper(new TopicPaper(m_workstation)),
      m_scroll(makeRowsScroll(this)),
      m_column(new AnswerColumn(m_workstation, m_scroll->widget()))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    column->addWidget(m_paper);
    column->addWidget(m_scroll, 1);
    connect(m_paper, &TopicPaper::says, this, &Page::says);
    connect(m_column, &AnswerColumn::wantsTopic, this, &QuestionsPage::openTopic);
    connect(m_column, &AnswerColumn::wantsCycle, this, &Page::wantsCycle);
    connect(m_column, &AnswerColumn::wantsPaper, this,
            [this](TopicSheet sheet) { m_paper->ask(sheet, m_guide, *m_topic); });
    connect(&m_workstation.desk, &DeskLink::recorded, this, &QuestionsPage::lookAtTrayAgain);
    connect(m_column, &AnswerColumn::says, this, &Page::says);
    connect(m_column, &AnswerColumn::logged, m_line, qOverload<>(&QWidget::setFocus));
    connect(m_column, &AnswerColumn::wantsTray, this, [this](const QString& label) {
        m_line->setText(label);
        ask(From::scanner);
    });
    m_column->showStart(nullptr);
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
    column->addWidget(m_faults);
    connect(button, &QPushButton::clicked, this, [this] { ask(From::person); });
    connect(m_line, &QLineEdit::returnPressed, this, [this] { ask(From::person); });
    return head;
}

void QuestionsPage::shown()
{
    m_line->setFocus();
    readHouse();
    lookAtTrayAgain();
}

void QuestionsPage::lookAtTrayAgain()
{
    if (!m_tray || m_isAsking || m_column->isReporting()) {
        return;
    }
    m_workstation.desk.ask(
        this,
        [label = m_tray->tray->label](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return trayOf(snapshot, office.entries(), label, office.now());
        },
        [this](const std::optional<TraySheet>& now) {
            if (!m_tray || m_isAsking || m_column->isReporting() || !now
                || now->label != m_tray->tray->label) {
                return;
            }
            const HouseStyle style = m_workstation.desk.style();
            const TraySaid said = say(*now, style);
            const TraySaid before = say(*m_tray->tray, style);
            if (said.answer != before.answer || said.why != before.why
                || now->cycle != m_tray->tray->cycle) {
                m_tray->tray = now;
                m_column->show(m_guide, *m_tray, std::nullopt);
            }
        });
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

std::function<std::shared_ptr<const Guide>()> QuestionsPage::guideNow() const
{
    return [known = m_guide, language = QLocale().bcp47Name().left(2).toStdString(),
            folder = std::filesystem::path(m_workstation.settings.topicsFolder().toStdString())] {
        return Guide::upToDate(known, language, folder);
    };
}

void QuestionsPage::take(std::shared_ptr<const Guide> guide)
{
    m_guide = std::move(guide);
    m_faults->show(m_guide->faults());
}

void QuestionsPage::beginAnswer()
{
    m_tray.reset();
    m_isAtStart = false;
    m_topic.reset();
    m_paper->hide();
}

void QuestionsPage::readHouse()
{
    if (std::exchange(m_isReading, true)) {
        return;
    }
    struct Start {
        std::shared_ptr<const Guide> guide;
        std::vector<AskedOften> asked;
    };
    m_workstation.desk.ask(
        this,
        [guide = guideNow()](Office& office) {
            ReadSnapshot snapshot(office.connection());
            const Date from = office.zone().dateOf(office.now() - askedBack);
            return Start{guide(), countQuestions(fromFloorSince(snapshot, from), office.zone())};
        },
        [this](Start start) {
            m_isReading = false;
            if (m_isAtStart) {
                take(std::move(start.guide));
                m_column->showStart(m_guide, start.asked);
            } else {
                m_faults->show(start.guide->faults());
            }
        },
        [this] { m_isReading = false; });
}

void QuestionsPage::ask(From from)
{
    const QString asked = m_line->text().trimmed();
    if (asked.isEmpty()) {
        m_field->setError(tr("Type a question, or the label of a tray."));
        m_line->setFocus();
        return;
    }
    // What stands below is the answer to what stands in the line, or nothing.
    m_column->clear();
    m_tray.reset();
    if (std::exchange(m_isAsking, true)) {
        m_asksAgain = from;
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
        [guide = guideNow(), words = asked.toStdString()](Office& office) {
            Asked asked{guide(), {}, {}};
            asked.answer = asked.guide->ask(office, words);
            if (!asked.answer.tray && asked.answer.isSure) {
                asked.topic = asked.guide->answer(office, *asked.answer.topics.front());
            }
            return asked;
        },
        [this, from](Asked asked) {
            m_isAsking = false;
            if (const auto again = std::exchange(m_asksAgain, std::nullopt)) {
                ask(*again);
                return;
            }
            asked.answer.mayBeLabel |= from == From::scanner;
            beginAnswer();
            take(std::move(asked.guide));
            m_topic = std::move(asked.topic);
            m_column->show(m_guide, asked.answer, m_topic);
            if (asked.answer.tray) {
                m_tray = std::move(asked.answer);
            }
            m_scroll->verticalScrollBar()->setValue(0);
            m_line->setFocus();
            m_line->selectAll(); // the next question replaces this one
        },
        [this] {
            m_isAsking = false;
            m_asksAgain.reset();
        });
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
        [guide = guideNow(), id = id.toStdString()](Office& office) {
            Opened opened{guide(), {}};
            const Topic* const topic = opened.guide->library().find(id, opened.guide->language());
            if (topic != nullptr) {
                opened.topic = opened.guide->answer(office, *topic);
            }
            return opened;
        },
        [this](Opened opened) {
            m_isAsking = false;
            if (!opened.topic) {
                m_faults->show(opened.guide->faults());
                emit says(tr("This topic is not there any more."),
                          tr("Ask for it in words, or ask its owner."));
                return;
            }
            beginAnswer();
            take(std::move(opened.guide));
            m_topic = std::move(opened.topic);
            m_column->show(m_guide, *m_topic);
            m_scroll->verticalScrollBar()->setValue(0);
            m_line->setFocus();
        },
        [this] { m_isAsking = false; });
}

} // namespace loadwarden::ui
