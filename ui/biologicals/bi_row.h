#pragma once

#include "core/desk/biologicals.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QFrame>

#include <vector>

class QCheckBox;
class QComboBox;
class QHBoxLayout;
class QLabel;
class QPushButton;

namespace loadwarden::ui {

class Field;
class GlyphView;

/// What somebody is about to say of a vial or a control.
enum class BiSaying : std::uint8_t {
    activated,
    incubated,
    changed,
    unchanged,
    growth,
    noGrowth,
    unclear
};

/// A vial or a control with what can be done next. Everything is said with two keys: what, and
/// that it is so.
class BiRow : public QFrame {
    Q_OBJECT

public:
    BiRow(Look& look, const BiTest& test, const QString& name,
          const std::vector<NamedId>& incubators, const HouseStyle& style,
          QWidget* parent = nullptr);

    [[nodiscard]] const BiTest& test() const { return m_test; }
    [[nodiscard]] const QString& name() const { return m_name; }
    /// Whether somebody is in the middle of saying something.
    [[nodiscard]] bool isAsking() const;
    /// Its words for this moment.
    void tell(Instant now);
    void focusFirst();
    /// Asks whether it is so, where that can be said of it now.
    void ask(BiSaying saying);

    /// What is asked, with its answers; hidden where nothing is.
    [[nodiscard]] QWidget* question() const { return m_question; }

signals:
    /// A question has come that must be in sight.
    void asked();
    /// It is so; of incubated with the incubator.
    void said(BiSaying saying, const QString& incubator);
    /// The question was left.
    void left();
    void wantsCycle();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void addButtons(QHBoxLayout* row);
    [[nodiscard]] QPushButton* addButton(QHBoxLayout* row, const QString& says, BiSaying saying);
    [[nodiscard]] QWidget* makeQuestion();
    [[nodiscard]] QString questionFor(BiSaying saying) const;
    /// Whether an answer of no growth does not count yet.
    [[nodiscard]] bool isEarly() const;
    [[nodiscard]] QString loadText() const;
    void confirm();
    void leave();

    BiTest m_test;
    QString m_name;
    std::vector<NamedId> m_incubators;
    HouseStyle m_style;
    Instant m_now{};
    GlyphView* m_glyph;
    QLabel* m_standing;
    std::vector<QPushButton*> m_buttons;
    std::vector<BiSaying> m_sayings; ///< beside the buttons
    QWidget* m_question;
    QLabel* m_asks;
    QCheckBox* m_cooled;
    QCheckBox* m_broken;
    QComboBox* m_incubator;
    Field* m_incubatorField;
    QLabel* m_error;
    QPushButton* m_record;
    QPushButton* m_leave;
    BiSaying m_saying{};
};

} // namespace loadwarden::ui
