#pragma once

#include "core/indicators/reading_result.h"
#include "ui/indicators/stopwatch.h"
#include "ui/look/look.h"

#include <QWidget>

#include <vector>

class QLabel;
class QPushButton;
class QStackedWidget;

namespace loadwarden::ui {

class CheckCard;

/// A check of reading on the screen: one drawn indicator after the other, three answers by one key
/// each, and what was misread at its end. It knows no journal: who gives up leaves nothing behind.
class CheckView : public QWidget {
    Q_OBJECT

public:
    /// Without `ticks` by the computer's own.
    CheckView(Look& look, const std::vector<CheckProduct>& products, std::uint64_t seed,
              Ticks ticks = {}, QWidget* parent = nullptr);

    /// The keyboard, on no answer: a key that is pressed too soon gives none.
    void focusFirst();
    [[nodiscard]] const std::vector<Drawn>& drawn() const { return m_drawn; }
    /// How many are answered.
    [[nodiscard]] std::size_t answered() const { return m_answers.size(); }
    [[nodiscard]] bool isPaused() const { return m_watch.isPaused(); }

signals:
    /// Every indicator is answered; the result is shown, too.
    void finished(const loadwarden::CheckResult& result);
    void gaveUp();
    /// The result was looked at.
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] QWidget* makeReading();
    [[nodiscard]] QWidget* makeHead();
    [[nodiscard]] QWidget* makeAnswers();
    [[nodiscard]] QWidget* makePause();
    void showNext();
    void answer(ReadAs readAs);
    void pause();
    void goOn();
    void giveUp();
    void showClock();
    void finish();
    [[nodiscard]] const CheckProduct* productOf(const Drawn& drawn) const;

    Look& m_look;
    std::vector<CheckProduct> m_products;
    std::uint64_t m_seed;
    std::vector<Drawn> m_drawn;
    std::vector<CheckAnswer> m_answers;
    Stopwatch m_watch;
    bool m_isFinished = false;

    QStackedWidget* m_pages;
    QLabel* m_count = nullptr;
    QLabel* m_clock = nullptr;
    CheckCard* m_card = nullptr;
    QPushButton* m_giveUp = nullptr;
    QPushButton* m_goOn = nullptr;
};

} // namespace loadwarden::ui
