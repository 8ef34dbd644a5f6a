#include "ui/trace/slide_field.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>

#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int steps = 400;
constexpr int lineWidth = 130;

} // namespace

SlideField::SlideField(const QString& label, const QString& unit, Range range, double value,
                       QWidget* parent)
    : QWidget(parent),
      m_range(range),
      m_value(value),
      m_slider(new QSlider(Qt::Horizontal)),
      m_line(new QLineEdit)
{
    auto* const editor = new QWidget;
    auto* const row = new QHBoxLayout(editor);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    m_slider->setRange(0, steps);
    m_slider->setPageStep(steps / 10);
    m_slider->setMinimumHeight(space::target);
    m_line->setFixedWidth(lineWidth);
    m_line->setAlignment(Qt::AlignRight);
    row->addWidget(m_slider, 1);
    row->addWidget(m_line);
    if (!unit.isEmpty()) {
        row->addWidget(makeLabel(unit, Type::body, false));
    }
    editor->setFocusProxy(m_line);
    m_field = new Field(label, editor, tr("%1 to %2").arg(textOf(range.least), textOf(range.most)));
    m_slider->setAccessibleName(tr("%1, slider").arg(QString(label).remove(u'&')));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_field);

    m_line->setText(textOf(value));
    m_slider->setValue(stepOf(value));
    connect(m_line, &QLineEdit::textEdited, this, &SlideField::typed);
    connect(m_slider, &QSlider::valueChanged, this, &SlideField::slid);
}

QString SlideField::textOf(double value) const
{
    return QString::number(value, 'f', m_range.decimals);
}

int SlideField::stepOf(double value) const
{
    const double part =
        m_range.isLogarithmic
            ? std::log(value / m_range.least) / std::log(m_range.most / m_range.least)
            : (value - m_range.least) / (m_range.most - m_range.least);
    return static_cast<int>(std::lround(part * steps));
}

void SlideField::slid(int step)
{
    const double part = static_cast<double>(step) / steps;
    const double raw = m_range.isLogarithmic
                           ? m_range.least * std::pow(m_range.most / m_range.least, part)
                           : m_range.least + part * (m_range.most - m_range.least);
    m_line->setText(textOf(raw));
    m_value = m_line->text().toDouble();
    m_field->setError({});
    emit edited();
}

void SlideField::typed()
{
    bool isNumber = false;
    const double value = m_line->text().trimmed().replace(u',', u'.').toDouble(&isNumber);
    const bool isGood = isNumber && value >= m_range.least && value <= m_range.most;
    m_field->setError(
        isGood
            ? QString()
            : tr("Type a number from %1 to %2.").arg(textOf(m_range.least), textOf(m_range.most)));
    if (!isGood) {
        return;
    }
    m_value = value;
    const QSignalBlocker quiet(m_slider);
    m_slider->setValue(stepOf(value));
    emit edited();
}

} // namespace loadwarden::ui
