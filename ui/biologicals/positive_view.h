#pragma once

#include "core/desk/biologicals.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QFrame>

namespace loadwarden::ui {

/// A positive across the whole page: who must be told, what is held, what comes next.
class PositiveView : public QFrame {
    Q_OBJECT

public:
    PositiveView(Look& look, const BiPositive& positive, const HouseStyle& style,
                 QWidget* parent = nullptr);

signals:
    void wantsCycle(const QString& cycle);
};

} // namespace loadwarden::ui
