#include "ui/settings/temperature_edit.h"

#include "ui/look/text.h"
#include "ui/settings/number_edit.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

constexpr int decimalsOfDegrees = 2;

std::optional<Quantity> inUnit(std::optional<std::int64_t> thousandths, Unit unit)
{
    return thousandths ? std::optional(Quantity{unit, *thousandths}) : std::nullopt;
}

} // namespace

StatedTemperature statedTemperature(std::optional<std::int64_t> celsius,
                                    std::optional<std::int64_t> fahrenheit)
{
    const auto first = inUnit(celsius, Unit::celsius);
    const auto second = inUnit(fahrenheit, Unit::fahrenheit);
    return first ? StatedTemperature{first, second} : StatedTemperature{second, std::nullopt};
}

TemperatureEdit::TemperatureEdit(QWidget* parent)
    : QWidget(parent),
      m_celsius(new NumberEdit(tr("°C"), decimalsOfDegrees)),
      m_fahrenheit(new NumberEdit(tr("°F"), decimalsOfDegrees))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::medium);
    row->addWidget(m_celsius);
    row->addWidget(m_fahrenheit);
    row->addStretch();
    setFocusProxy(m_celsius->focusProxy());
}

void TemperatureEdit::set(const StatedTemperature& stated)
{
    for (const auto& [edit, unit] :
         {std::pair(m_celsius, Unit::celsius), std::pair(m_fahrenheit, Unit::fahrenheit)}) {
        edit->set(std::nullopt);
        for (const auto* const each : {&stated.temperature, &stated.inFahrenheit}) {
            if (*each && (*each)->unit == unit) {
                edit->set((*each)->thousandths);
            }
        }
    }
}

bool TemperatureEdit::isGood() const
{
    return m_celsius->isGood() && m_fahrenheit->isGood();
}

StatedTemperature TemperatureEdit::value() const
{
    return statedTemperature(m_celsius->thousandths(), m_fahrenheit->thousandths());
}

void TemperatureEdit::setName(const QString& name)
{
    setAccessibleName(name);
    m_celsius->focusProxy()->setAccessibleName(tr("%1, °C").arg(name));
    m_fahrenheit->focusProxy()->setAccessibleName(tr("%1, °F").arg(name));
}

} // namespace loadwarden::ui
