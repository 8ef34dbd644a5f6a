#pragma once

#include "core/guidance/topic.h"
#include "ui/look/look.h"

#include <QWidget>

namespace loadwarden::ui {

/// How a kind of indicator answers, as paper draws it (ui/paper/kit/indicator_drawing.h).
class TopicDrawing : public QWidget {
    Q_OBJECT

public:
    TopicDrawing(Look& look, TopicPicture picture, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Look& m_look;
    TopicPicture m_picture;
};

} // namespace loadwarden::ui
