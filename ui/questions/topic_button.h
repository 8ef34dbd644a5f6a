#pragma once

#include "core/guidance/topic.h"

#include <QPushButton>

namespace loadwarden::ui {

/// A button that a topic's whole question stands on, in as many lines as it needs, and whether it
/// is the facility's own.
class TopicButton : public QPushButton {
    Q_OBJECT

public:
    explicit TopicButton(const Topic& topic, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
};

} // namespace loadwarden::ui
