#pragma once

#include "ui/load/cycle_desk.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/glyph_view.h"

#include <QFrame>

class QGridLayout;
class QHBoxLayout;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace loadwarden::ui {

/// A part of a cycle's record: what stands in it, and below that what can be recorded now. What is
/// half-typed stays when the record is shown anew.
class SheetSection : public QFrame {
    Q_OBJECT

public:
    SheetSection(CycleDesk& desk, const QString& heading, QWidget* parent = nullptr);

    /// Shows the cycle as it is known now.
    virtual void show(const LoadSheet& sheet) = 0;

    /// Puts the keyboard where what a finding asks for is recorded; `subject` is its item, indicator
    /// or parameter, may be empty.
    virtual void goTo(const QString& subject);

protected:
    [[nodiscard]] CycleDesk& desk() { return m_desk; }
    [[nodiscard]] QVBoxLayout* column() { return m_column; }
    /// A word about where this part stands, beside its heading.
    void setState(const QString& says, const char* tone = "muted");

private:
    CycleDesk& m_desk;
    QVBoxLayout* m_column;
    QLabel* m_state;
};

/// Two columns: what, and what was said of it.
class Facts : public QWidget {
    Q_OBJECT

public:
    explicit Facts(QWidget* parent = nullptr);

    void clear();
    void add(const QString& what, const QString& value, const QString& who = {});

private:
    QGridLayout* m_grid;
    int m_rows = 0;
};

/// Buttons of which one is chosen.
class ChoiceRow : public QWidget {
    Q_OBJECT

public:
    /// `of` says what they choose, for a screen reader.
    ChoiceRow(const QString& of, const QStringList& words, int chosen, QWidget* parent = nullptr);

    /// -1: none
    [[nodiscard]] int chosen() const { return m_chosen; }
    void choose(int index);

signals:
    void changed(int index);

private:
    std::vector<QPushButton*> m_buttons;
    int m_chosen = -1;
};

} // namespace loadwarden::ui
