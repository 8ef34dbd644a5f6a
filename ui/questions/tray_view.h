#pragma once

#include "core/words/say_tray.h"
#include "ui/look/look.h"

#include <QFrame>

namespace loadwarden::ui {

/// May this tray be used? The answer as a shape and words, why, what to do now, and what to look at
/// on opening it.
class TrayView : public QFrame {
    Q_OBJECT

public:
    TrayView(Look& look, const TraySheet& tray, const HouseStyle& style, QWidget* parent = nullptr);

signals:
    void wantsLoad();
};

} // namespace loadwarden::ui
