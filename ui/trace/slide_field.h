#pragma once

#include <QWidget>

class QLineEdit;
class QSlider;

namespace loadwarden::ui {

class Field;

/// A number to play with: a slider, and the number itself to be typed, with its unit.
class SlideField : public QWidget {
    Q_OBJECT

public:
    struct Range {
        double least = 0;
        double most = 1;
        int decimals = 0;
        bool isLogarithmic = false; ///< equal ways of the slider multiply
    };

    SlideField(const QString& label, const QString& unit, Range range, double value,
               QWidget* parent = nullptr);

    /// Within the range; what was typed beyond it is not taken, and said.
    [[nodiscard]] double value() const { return m_value; }
    [[nodiscard]] QLineEdit* line() const { return m_line; }
    [[nodiscard]] QSlider* slider() const { return m_slider; }

signals:
    void edited();

private:
    void typed();
    void slid(int step);
    [[nodiscard]] int stepOf(double value) const;
    [[nodiscard]] QString textOf(double value) const;

    Range m_range;
    double m_value;
    QSlider* m_slider;
    QLineEdit* m_line;
    Field* m_field;
};

} // namespace loadwarden::ui
