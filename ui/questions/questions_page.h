#pragma once

#include "ui/questions/guide.h"
#include "ui/shell/area.h"

#include <functional>

class QLineEdit;
class QScrollArea;

namespace loadwarden::ui {

class AnswerColumn;
class Field;
class HouseFaults;
class TopicPaper;

/// What is asked from the floor: a label is answered with whether its tray may be used, words with
/// the topic that answers them, of the program or of the facility.
class QuestionsPage : public Page {
    Q_OBJECT

public:
    explicit QuestionsPage(Workstation& workstation);

    void shown() override;
    /// A topic by its id.
    void goTo(const QString& topic) override { openTopic(topic); }
    void lookAtClock() override { lookAtTrayAgain(); }
    bool takeScan(const QString& text, const LookedUp& found) override;

    [[nodiscard]] bool isUpToDate() const { return !m_isAsking && !m_isReading; }

private:
    enum class From : std::uint8_t { person, scanner };

    [[nodiscard]] QWidget* makeHead();
    /// Reads the facility's own topics, which may have been changed.
    void readHouse();
    void ask(From from);
    void openTopic(const QString& id);
    /// What is said of a tray is said of now: where it would be said otherwise, it is said anew.
    void lookAtTrayAgain();

    /// For the desk's thread: the guide as the facility's folder stands then.
    [[nodiscard]] std::function<std::shared_ptr<const Guide>()> guideNow() const;
    void take(std::shared_ptr<const Guide> guide);
    /// Something else is shown: what was asked about paper was of what was there before.
    void beginAnswer();

    Workstation m_workstation;
    QLineEdit* m_line;
    Field* m_field;
    HouseFaults* m_faults;
    TopicPaper* m_paper;
    QScrollArea* m_scroll;
    AnswerColumn* m_column;
    std::shared_ptr<const Guide> m_guide; ///< made when somebody first asks
    std::optional<FloorAnswer> m_tray;    ///< what is shown of one
    std::optional<TopicAnswer> m_topic;   ///< what is shown of it
    std::optional<From> m_asksAgain;      ///< what was asked while an answer was awaited
    bool m_isAsking = false;
    bool m_isReading = false;
    bool m_isAtStart = true; ///< nothing has been asked yet
};

} // namespace loadwarden::ui
