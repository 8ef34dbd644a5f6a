#pragma once

#include <QWidget>

#include <cstdint>
#include <optional>

class QLineEdit;

namespace loadwarden::ui {

/// A number that may be left out, with its unit beside it.
class NumberEdit : public QWidget {
    Q_OBJECT

public:
    /// At most `decimals` of them, 0 to 3. `unit` may be empty.
    explicit NumberEdit(const QString& unit, int decimals = 0, QWidget* parent = nullptr);

    void set(std::optional<std::int64_t> thousandths);
    [[nodiscard]] bool isEmpty() const;
    /// The same where only whole numbers are taken.
    void setWhole(std::optional<std::int64_t> number);
    /// Of an edit in minutes.
    void setMs(std::optional<std::int64_t> ms);
    [[nodiscard]] std::optional<std::int64_t> ms() const;
    /// It is empty or a number.
    [[nodiscard]] bool isGood() const;
    /// nullopt: it is empty or no number.
    [[nodiscard]] std::optional<std::int64_t> thousandths() const;
    /// The same where only whole numbers are taken.
    [[nodiscard]] std::optional<std::int64_t> whole() const;

private:
    int m_decimals;
    QLineEdit* m_line;
};

} // namespace loadwarden::ui
