#include "ui/questions/answer_column.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/empty_state.h"
#include "ui/questions/asked_view.h"
#include "ui/questions/floor_desk.h"
#include "ui/questions/log_form.h"
#include "ui/questions/report_form.h"
#include "ui/questions/topic_button.h"
#include "ui/questions/topic_view.h"
#include "ui/questions/tray_view.h"
#include "ui/shell/desk_link.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widest = 860; ///< what is read in one line

} // namespace

AnswerColumn::AnswerColumn(const Workstation& workstation, QWidget* rows)
    : QObject(rows),
      m_workstation(workstation),
      m_rows(rows),
      m_column(new QVBoxLayout(rows)),
      m_floor(new FloorDesk(workstation, this))
{
    connect(m_floor, &FloorDesk::says, this, &AnswerColumn::says);
    m_column->setContentsMargins(space::page, 0, space::page, space::page);
    m_column->setSpacing(space::medium);
}

void AnswerColumn::begin(std::shared_ptr<const Guide> guide)
{
    m_guide = std::move(guide);
    clearLayout(m_column);
}

void AnswerColumn::end()
{
    m_column->addStretch();
    settleLayouts(m_rows);
}

void AnswerColumn::showStart(std::shared_ptr<const Guide> guide,
                             const std::vector<AskedOften>& asked)
{
    begin(std::move(guide));
    m_column->addWidget(new EmptyState(
        tr("Ask what the floor asks"),
        tr("Scan or type the label of a tray: may it be used? Or ask in plain words: may I release "
           "before the biological indicator is read, what about a wet pack, the front has only "
           "just entered the zone.")));
    if (m_guide) {
        addNearest(m_guide->houseTopics(), tr("This facility's own topics"));
        if (!asked.empty()) {
            auto* const view = new AskedView(asked, [this](const std::string& id) {
                const Topic* const topic = m_guide->library().find(id, m_guide->language());
                return topic;
            });
            connect(view, &AskedView::wantsTopic, this, &AnswerColumn::wantsTopic);
            addNarrow(view);
        }
    }
    end();
}

bool AnswerColumn::isReporting() const
{
    const auto forms = m_rows->findChildren<ReportForm*>();
    return std::ranges::any_of(forms, [](const ReportForm* form) { return !form->isHidden(); });
}

void AnswerColumn::clear()
{
    begin(m_guide);
    end();
}

void AnswerColumn::show(std::shared_ptr<const Guide> guide, const FloorAnswer& answer,
                        const std::optional<TopicAnswer>& topic)
{
    begin(std::move(guide));
    addAnswer(answer, topic);
    end();
}

void AnswerColumn::show(std::shared_ptr<const Guide> guide, const TopicAnswer& topic)
{
    begin(std::move(guide));
    addTopic(topic);
    end();
}

void AnswerColumn::addAnswer(const FloorAnswer& answer, const std::optional<TopicAnswer>& topic)
{
    if (answer.tray) {
        addTray(*answer.tray);
        addLog({.asked = answer.asked,
                .place = {},
                .by = {},
                .topic = {},
                .label = answer.tray->label,
                .lot = answer.tray->lot,
                .answer = say(*answer.tray, m_workstation.desk.style()).answer});
        return;
    }
    const auto logWithout = [&](const QString& said) {
        addLog({.asked = answer.asked,
                .place = {},
                .by = {},
                .topic = {},
                .label = {},
                .lot = {},
                .answer = said.toStdString()});
    };
    if (answer.mayBeLabel) {
        addNarrow(new TrayView(m_workstation.look, text(answer.asked)));
        logWithout(text(sayUnknownTray().answer));
    }
    if (topic) {
        addTopic(*topic);
        addLog({.asked = answer.asked,
                .place = {},
                .by = {},
                .topic = topic->topic->id,
                .label = {},
                .lot = {},
                .answer = topic->topic->shortAnswer});
        addNearest({answer.topics.begin() + 1, answer.topics.end()}, tr("Or did you mean"));
        return;
    }
    if (answer.topics.empty()) {
        m_column->addWidget(new EmptyState(tr("No topic has these words"),
                                           tr("Ask in other words, or ask your lead.")));
    }
    addNearest(answer.topics, tr("No topic answers this well. The nearest are"));
    if (!answer.mayBeLabel) {
        logWithout(tr("No topic answers it."));
    }
}

void AnswerColumn::addTray(const TraySheet& tray)
{
    auto* const view = new TrayView(m_workstation.look, tray, m_workstation.desk.style());
    connect(
        view, &TrayView::wantsLoad, this,
        [this, cycle = text(tray.cycle), item = text(tray.item)] { emit wantsCycle(cycle, item); });
    connect(view, &TrayView::wantsReport, this, [this, tray] { showReport(tray); });
    addNarrow(view);
}

void AnswerColumn::showReport(const TraySheet& tray)
{
    begin(m_guide);
    auto* const form = new ReportForm(*m_floor, tray);
    const auto again = [this, label = text(tray.label)] { emit wantsTray(label); };
    connect(form, &ReportForm::reported, this, again);
    connect(form, &ReportForm::left, this, again);
    addNarrow(form);
    end();
    form->focusFirst();
}

void AnswerColumn::addLog(QuestionLogged question)
{
    auto* const form = new LogForm(*m_floor, std::move(question));
    connect(form, &LogForm::logged, form, [this, form] {
        form->hide();
        emit logged();
    });
    addNarrow(form);
}

void AnswerColumn::addTopic(const TopicAnswer& answer)
{
    auto* const topic = new TopicView(m_workstation.look, answer, m_guide->library());
    connect(topic, &TopicView::wantsTopic, this, &AnswerColumn::wantsTopic);
    connect(topic, &TopicView::wantsPaper, this, &AnswerColumn::wantsPaper);
    addNarrow(topic);
}

void AnswerColumn::addNearest(const std::vector<const Topic*>& topics, const QString& heading)
{
    if (topics.empty()) {
        return;
    }
    m_column->addWidget(makeLabel(heading, Type::heading));
    for (const Topic* const topic : topics) {
        auto* const go = new TopicButton(*topic);
        connect(go, &TopicButton::clicked, this,
                [this, id = text(topic->id)] { emit wantsTopic(id); });
        addNarrow(go);
    }
}

void AnswerColumn::addNarrow(QWidget* widget)
{
    // In a row of its own: a column asks what is in it how high it is at the column's width.
    widget->setMaximumWidth(widest);
    auto* const row = new QHBoxLayout;
    row->addWidget(widget, 1);
    row->addStretch(0);
    m_column->addLayout(row);
}

} // namespace loadwarden::ui
