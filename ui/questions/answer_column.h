#pragma once

#include "core/desk/floor.h"
#include "ui/questions/guide.h"
#include "ui/questions/topic_paper.h"
#include "ui/shell/area.h"

#include <QObject>

class QVBoxLayout;
class QWidget;

namespace loadwarden::ui {

class FloorDesk;

/// What is answered to a question, from top to bottom: a tray, a topic, the topics nearest to it.
class AnswerColumn : public QObject {
    Q_OBJECT

public:
    /// Fills `rows`, which is empty, and lives as long.
    AnswerColumn(const Workstation& workstation, QWidget* rows);

    /// What may be asked, while nothing has been; with what was asked most and the facility's own
    /// topics. `guide` may be null.
    void showStart(std::shared_ptr<const Guide> guide, const std::vector<AskedOften>& asked = {});
    /// Whether a report is being filled in in the place of an answer.
    [[nodiscard]] bool isReporting() const;
    /// Nothing is answered now.
    void clear();
    /// `topic`: the first of the topics, answered; nullopt: none answers what was asked.
    void show(std::shared_ptr<const Guide> guide, const FloorAnswer& answer,
              const std::optional<TopicAnswer>& topic);
    void show(std::shared_ptr<const Guide> guide, const TopicAnswer& topic);

signals:
    void wantsTopic(const QString& id);
    void wantsPaper(TopicSheet sheet);
    void wantsCycle(const QString& cycle, const QString& item);
    void says(const QString& what, const QString& next);
    /// A tray was reported, or it was left: its answer is asked for anew.
    void wantsTray(const QString& label);
    /// The question is logged.
    void logged();

private:
    void begin(std::shared_ptr<const Guide> guide);
    void end();
    void addAnswer(const FloorAnswer& answer, const std::optional<TopicAnswer>& topic);
    void addTopic(const TopicAnswer& answer);
    void addTray(const TraySheet& tray);
    void showReport(const TraySheet& tray);
    /// Below an answer: from where it was asked. `question` says what was answered.
    void addLog(QuestionLogged question);
    void addNearest(const std::vector<const Topic*>& topics, const QString& heading);
    /// Adds something that is no wider than what is read in one line.
    void addNarrow(QWidget* widget);

    Workstation m_workstation;
    QWidget* m_rows;
    QVBoxLayout* m_column;
    std::shared_ptr<const Guide> m_guide; ///< whose topics are shown
    FloorDesk* m_floor;
};

} // namespace loadwarden::ui
