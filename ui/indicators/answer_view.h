#pragma once

#include "core/words/say_indicator_answer.h"
#include "ui/look/look.h"

#include <QFrame>

class QPushButton;

namespace loadwarden::ui {

/// What the rules say of one indicator: the answer as a shape and words, why, and what to do.
class AnswerView : public QFrame {
    Q_OBJECT

public:
    AnswerView(Look& look, const QString& product, ChemicalState state, const IndicatorSaid& said,
               QWidget* parent = nullptr);

    void focusFirst();

signals:
    void wantsAnother(); ///< of the same lot
    void left();

private:
    QPushButton* m_another;
};

} // namespace loadwarden::ui
