#pragma once

#include "core/words/say_tray.h"
#include "ui/look/look.h"

#include <QFrame>

class QVBoxLayout;

namespace loadwarden::ui {

/// May this tray be used? The answer as a shape and words, why, what to do now, and what to look at
/// on opening it.
class TrayView : public QFrame {
    Q_OBJECT

public:
    TrayView(Look& look, const TraySheet& tray, const HouseStyle& style, QWidget* parent = nullptr);
    /// Of a label that no item bears.
    TrayView(Look& look, const QString& label, QWidget* parent = nullptr);

signals:
    void wantsLoad();
    void wantsReport();

private:
    void show(Look& look, const QString& label, TrayAnswer answer, const TraySaid& said);

    QVBoxLayout* m_column;
};

} // namespace loadwarden::ui
