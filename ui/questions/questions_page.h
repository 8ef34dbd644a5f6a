#pragma once

#include "ui/questions/guide.h"
#include "ui/shell/area.h"

class QLabel;
class QLineEdit;
class QScrollArea;
class QVBoxLayout;

namespace loadwarden::ui {

class Field;
class TopicPaper;

/// What is asked from the floor: a label is answered with whether its tray may be used, words with
/// the topic that answers them.
class QuestionsPage : public Page {
    Q_OBJECT

public:
    explicit QuestionsPage(Workstation& workstation);

    void shown() override;
    /// A topic by its id.
    void goTo(const QString& topic) override { openTopic(topic); }
    bool takeScan(const QString& text, const LookedUp& found) override;

    [[nodiscard]] bool isUpToDate() const { return !m_isAsking; }

private:
    enum class From : std::uint8_t { person, scanner };

    [[nodiscard]] QWidget* makeHead();
    void ask(From from);
    /// `topic`: the first of the topics, answered; nullopt: none answers what was asked.
    void show(const FloorAnswer& answer, const std::optional<TopicAnswer>& topic);
    void openTopic(const QString& id);
    void showTopic(const TopicAnswer& answer);
    void clear();
    /// Adds something that is no wider than what is read in one line.
    void addNarrow(QWidget* widget);
    void addNearest(const std::vector<const Topic*>& topics, const QString& heading);

    Workstation m_workstation;
    QLineEdit* m_line;
    Field* m_field;
    TopicPaper* m_paper;
    QScrollArea* m_scroll;
    QVBoxLayout* m_column;
    std::shared_ptr<const Guide> m_guide; ///< made when somebody first asks
    bool m_isAsking = false;
};

} // namespace loadwarden::ui
