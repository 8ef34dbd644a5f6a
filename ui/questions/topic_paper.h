#pragma once

#include "ui/questions/guide.h"
#include "ui/records/paper_ask.h"

#include <memory>

class QComboBox;

namespace loadwarden::ui {

/// What is put on paper of a topic.
enum class TopicSheet : std::uint8_t { answerCard, inService };

/// Asks where a sheet about a topic goes, and prints it or saves it as a PDF.
class TopicPaper : public PaperAsk {
    Q_OBJECT

public:
    explicit TopicPaper(Workstation& workstation, QWidget* parent = nullptr);

    /// Asks about a topic as it was answered by that guide.
    void ask(TopicSheet sheet, std::shared_ptr<const Guide> guide, const TopicAnswer& answer);

private:
    [[nodiscard]] Making making() const override;

    QComboBox* m_what;
    std::shared_ptr<const Guide> m_guide; ///< holds what the answer points to
    TopicAnswer m_answer;
};

} // namespace loadwarden::ui
