#pragma once

#include <QWidget>

class QLineEdit;

namespace loadwarden::ui {

class Field;
class FloorDesk;

/// From where something came, and from whom; begins with what was typed last.
class FloorFrom : public QWidget {
    Q_OBJECT

public:
    /// The labels have mnemonics.
    FloorFrom(const FloorDesk& desk, const QString& placeLabel, const QString& byLabel,
              QWidget* parent = nullptr);

    [[nodiscard]] QString place() const;
    [[nodiscard]] QString by() const;
    /// Says `error` at the place; empty: nothing is wrong with it.
    void setPlaceError(const QString& error);
    void focusPlace();

signals:
    void entered();

private:
    QLineEdit* m_place;
    Field* m_placeField;
    QLineEdit* m_by;
};

} // namespace loadwarden::ui
