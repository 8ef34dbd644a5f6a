#pragma once

#include <QPushButton>

class QLabel;

namespace loadwarden::ui {

/// A button that a whole question stands on, in as many lines as it needs.
class TopicButton : public QPushButton {
    Q_OBJECT

public:
    explicit TopicButton(const QString& question, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

private:
    QLabel* m_says;
};

} // namespace loadwarden::ui
