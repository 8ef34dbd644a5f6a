#pragma once

#include "core/desk/load_sheet.h"
#include "ui/look/look.h"

#include <QFrame>

#include <vector>

class QPushButton;

namespace loadwarden::ui {

/// An answer that can be given of an indicator.
struct ReadingAnswer {
    Seen seen;
    Qt::Key key;
    QString words;
    bool isLarge = false;
};

/// What can be seen on a product that answers so: accept, reject and unclear first, then the rarer
/// rejections.
[[nodiscard]] std::vector<ReadingAnswer> answersOf(Response response);

/// One indicator read: how its kind answers, and three large answers by one key each.
class ReadingPanel : public QFrame {
    Q_OBJECT

public:
    ReadingPanel(Look& look, const QString& where, const QString& product, Response response,
                 QWidget* parent = nullptr);

    void focusFirst();

signals:
    void answered(loadwarden::Seen seen, const QString& words);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    std::vector<ReadingAnswer> m_answers;
    std::vector<QPushButton*> m_buttons;
};

} // namespace loadwarden::ui
