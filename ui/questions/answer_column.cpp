#include "ui/questions/answer_column.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/empty_state.h"
#include "ui/questions/topic_button.h"
#include "ui/questions/topic_view.h"
#include "ui/questions/tray_view.h"
#include "ui/shell/desk_link.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widest = 860; ///< what is read in one line

} // namespace

AnswerColumn::AnswerColumn(const Workstation& workstation, QWidget* rows)
    : QObject(rows), m_workstation(workstation), m_rows(rows), m_column(new QVBoxLayout(rows))
{
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

void AnswerColumn::showStart(std::shared_ptr<const Guide> guide)
{
    begin(std::move(guide));
    m_column->addWidget(new EmptyState(
        tr("Ask what the floor asks"),
        tr("Scan or type the label of a tray: may it be used? Or ask in plain words: may I release "
           "before the biological indicator is read, what about a wet pack, the front has only "
           "just entered the zone.")));
    if (m_guide) {
        addNearest(m_guide->houseTopics(), tr("This facility's own topics"));
    }
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
        addTopic(*topic);
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
