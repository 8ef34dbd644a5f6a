#pragma once

#include "core/desk/needs.h"
#include "core/words/say_need.h"
#include "ui/look/look.h"

#include <QFrame>

class QPushButton;

namespace loadwarden::ui {

/// One thing that needs somebody: what, why, about what, and the one action.
class NeedRow : public QFrame {
    Q_OBJECT

public:
    /// `sterilizer` is its name; may be empty.
    NeedRow(Look& look, const Need& need, const QString& sterilizer, const HouseStyle& style,
            QWidget* parent = nullptr);

    /// What it is about, so that the keyboard can come back to it.
    [[nodiscard]] const QString& about() const { return m_about; }
    [[nodiscard]] QPushButton* action() const { return m_action; }
    /// Marks it as the first thing to do.
    void setFirst();

signals:
    void acted();

private:
    QString m_about;
    QPushButton* m_action;
};

} // namespace loadwarden::ui
