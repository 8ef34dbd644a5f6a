#pragma once

#include "core/desk/load_sheet.h"
#include "ui/indicators/reading_guide.h"
#include "ui/look/look.h"

#include <QFrame>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace loadwarden::ui {

class IndicatorReader;

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

/// One indicator read: a drawing on which is placed or marked what one sees, the product's own
/// directions beside it, and three large answers by one key each. What was marked as no pass is not
/// taken as one: the drawing is changed first.
class ReadingPanel : public QFrame {
    Q_OBJECT

public:
    ReadingPanel(Look& look, const QString& where, const QString& product,
                 std::optional<Response> response, const ReadingGuide& guide = {},
                 QWidget* parent = nullptr);

    void focusFirst();
    /// Null where nobody knows how the product answers.
    [[nodiscard]] IndicatorReader* reader() const { return m_reader; }

signals:
    void answered(loadwarden::Seen seen, const QString& words);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void addDrawing(QVBoxLayout* column, std::optional<Response> response);
    void addAnswers(QVBoxLayout* column, const QString& where);
    void give(std::size_t answer);
    /// What was marked, where it says the same as an answer but more exactly; else that answer.
    [[nodiscard]] std::size_t asMarked(std::size_t answer) const;

    bool m_isAnswered = false;
    IndicatorReader* m_reader = nullptr;
    QLabel* m_refusal = nullptr;
    std::vector<ReadingAnswer> m_answers;
    std::vector<QPushButton*> m_buttons;
};

} // namespace loadwarden::ui
