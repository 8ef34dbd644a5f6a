#pragma once

#include "core/journal/envelope.h"
#include "core/quantities/zone.h"

#include <QWidget>

#include <optional>

class QLineEdit;

namespace loadwarden::ui {

/// A moment by the facility's clocks: a date, and a time as 07:14. A time that the clocks skip or
/// show twice is said to be so, not guessed.
class TimeEdit : public QWidget {
    Q_OBJECT

public:
    TimeEdit(Zone zone, Instant shown, QWidget* parent = nullptr);

    void set(Instant moment);
    /// Leaves the time open, for what may be left out.
    void clearTime();
    /// Whether no time is typed.
    [[nodiscard]] bool isEmpty() const;
    /// nullopt: something is wrong.
    [[nodiscard]] std::optional<JournalTime> value() const;
    /// Empty where nothing is.
    [[nodiscard]] QString whatIsWrong() const;

    [[nodiscard]] QLineEdit* dateLine() const { return m_date; }
    [[nodiscard]] QLineEdit* timeLine() const { return m_time; }

signals:
    void edited();

private:
    [[nodiscard]] std::optional<int> minuteOfDay() const;

    Zone m_zone;
    std::optional<Instant> m_untouched; ///< what was set, as long as nobody typed
    QLineEdit* m_date;
    QLineEdit* m_time;
};

} // namespace loadwarden::ui
