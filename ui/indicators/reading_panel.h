#pragma once

#include "core/desk/load_sheet.h"
#include "ui/look/look.h"

#include <QFrame>

#include <optional>
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
/// Of a product that is in no register nobody knows what a good answer is.
[[nodiscard]] std::vector<ReadingAnswer> answersOf(std::optional<Response> response);

/// One indicator read: how its kind answers, and three large answers by one key each.
class ReadingPanel : public QFrame {
    Q_OBJECT

public:
    ReadingPanel(Look& look, const QString& where, const QString& product,
                 std::optional<Response> response, QWidget* parent = nullptr);

    void focusFirst();

signals:
    void answered(loadwarden::Seen seen, const QString& words);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void give(std::size_t answer);

    bool m_isAnswered = false;
    std::vector<ReadingAnswer> m_answers;
    std::vector<QPushButton*> m_buttons;
};

} // namespace loadwarden::ui
