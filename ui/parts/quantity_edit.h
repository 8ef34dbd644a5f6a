#pragma once

#include "core/acts/kinds/values.h"

#include <QWidget>

#include <optional>

class QLineEdit;

namespace loadwarden::ui {

/// A number in one of the house's units, which stands beside it. What was typed is kept as it was.
class QuantityEdit : public QWidget {
    Q_OBJECT

public:
    explicit QuantityEdit(Unit unit, QWidget* parent = nullptr);

    [[nodiscard]] bool isEmpty() const;
    /// nullopt: it is empty or no number with at most three decimals; whatIsWrong() says which.
    [[nodiscard]] std::optional<TypedQuantity> value() const;
    /// Empty where nothing is wrong.
    [[nodiscard]] QString whatIsWrong() const;
    [[nodiscard]] QLineEdit* line() const { return m_line; }

signals:
    void edited();

private:
    [[nodiscard]] std::string typed() const;

    Unit m_unit;
    QLineEdit* m_line;
};

} // namespace loadwarden::ui
