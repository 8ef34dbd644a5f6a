#include "ui/settings/limits_grid.h"

#include "core/quantities/decimal.h"
#include "core/quantities/thousandths.h"
#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/settings/temperature_edit.h"

#include <QGridLayout>
#include <QLineEdit>

#include <algorithm>
#include <optional>

namespace loadwarden::ui {
namespace {

constexpr int widthOfNumber = 120;
constexpr std::int64_t msOfThousandthMinute = 60;

/// Times are stated in minutes.
bool standsInTheGrid(Parameter parameter, Unit unit)
{
    return fits(parameter, unit) && unit != Unit::seconds;
}

QLineEdit* makeNumber(const QString& name)
{
    auto* const line = new QLineEdit;
    line->setAlignment(Qt::AlignRight);
    line->setMaximumWidth(widthOfNumber);
    line->setAccessibleName(name);
    return line;
}

void put(QLineEdit* line, std::optional<std::int64_t> thousandths)
{
    std::string number;
    if (thousandths) {
        appendThousandths(number, *thousandths);
    }
    line->setText(text(number));
}

std::optional<std::int64_t> typedIn(const QLineEdit* line)
{
    return parseDecimal(line->text().trimmed().replace(u',', u'.').toStdString(), 3);
}

bool isGood(const QLineEdit* line)
{
    return line == nullptr || line->text().trimmed().isEmpty() || typedIn(line);
}

std::optional<std::int64_t> valueIn(const std::vector<Quantity>& values, Unit unit)
{
    const auto found = std::ranges::find(values, unit, &Quantity::unit);
    return found == values.end() ? std::nullopt : std::optional(found->thousandths);
}

} // namespace

LimitsGrid::LimitsGrid(Unit temperature, Unit pressure, QWidget* parent)
    : QWidget(parent), m_temperature(temperature), m_pressure(pressure)
{
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(space::small);
    grid->addWidget(makeMuted(tr("Parameter")), 0, 0);
    grid->addWidget(makeMuted(tr("Set to"), false), 0, 1);
    grid->addWidget(makeMuted(tr("At least"), false), 0, 2);
    grid->addWidget(makeMuted(tr("At most"), false), 0, 3);
    grid->setColumnStretch(4, 1);
    for (std::size_t p = 0; p < parameterCount; ++p) {
        for (std::size_t u = 0; u < unitCount; ++u) {
            const auto parameter = static_cast<Parameter>(p);
            const auto unit = static_cast<Unit>(u);
            if (!standsInTheGrid(parameter, unit)) {
                continue;
            }
            QString unitName = text(sayQuantity({unit, 0}));
            unitName = unitName.remove(0, 1).trimmed();
            const QString name =
                tr("%1, %2", "a parameter, its unit").arg(text(say(parameter)), unitName);
            const bool isSet = parameter == Parameter::temperature
                               || parameter == Parameter::exposure
                               || parameter == Parameter::drying;
            Row row{.parameter = parameter,
                    .unit = unit,
                    .widgets = {},
                    .setting = isSet ? makeNumber(tr("%1, set to").arg(name)) : nullptr,
                    .least = makeNumber(tr("%1, at least").arg(name)),
                    .most = makeNumber(tr("%1, at most").arg(name))};
            row.widgets = {makeLabel(name, Type::body, false), row.setting, row.least, row.most};
            const int at = grid->rowCount();
            for (int column = 0; column < 4; ++column) {
                if (QWidget* const widget = row.widgets[static_cast<std::size_t>(column)]) {
                    grid->addWidget(widget, at, column);
                }
            }
            m_rows.push_back(row);
        }
    }
}

const LimitsGrid::Row& LimitsGrid::rowOf(Unit unit, Parameter parameter) const
{
    return *std::ranges::find_if(
        m_rows, [&](const Row& row) { return row.unit == unit && row.parameter == parameter; });
}

void LimitsGrid::set(const CycleSpecification& specification)
{
    for (const Row& row : m_rows) {
        const auto limit =
            std::ranges::find(specification.limits, row.parameter, &Limit::parameter);
        const bool hasLimit = limit != specification.limits.end();
        put(row.least, hasLimit ? valueIn(limit->least, row.unit) : std::nullopt);
        put(row.most, hasLimit ? valueIn(limit->most, row.unit) : std::nullopt);
        if (row.setting != nullptr) {
            put(row.setting, std::nullopt);
        }
    }
    const ProgramSettings& settings = specification.settings;
    for (const auto* const temperature : {&settings.temperature, &settings.inFahrenheit}) {
        if (*temperature) {
            put(rowOf((*temperature)->unit, Parameter::temperature).setting,
                (*temperature)->thousandths);
        }
    }
    if (settings.exposureMs) {
        put(rowOf(Unit::minutes, Parameter::exposure).setting,
            *settings.exposureMs / msOfThousandthMinute);
    }
    if (settings.dryingMs) {
        put(rowOf(Unit::minutes, Parameter::drying).setting,
            *settings.dryingMs / msOfThousandthMinute);
    }
    for (const Row& row : m_rows) {
        const bool isStated = !row.least->text().isEmpty() || !row.most->text().isEmpty()
                              || (row.setting != nullptr && !row.setting->text().isEmpty());
        const bool isOfHouse = row.parameter == Parameter::temperature ? row.unit == m_temperature
                               : row.parameter == Parameter::pressure  ? row.unit == m_pressure
                                                                       : true;
        for (QWidget* const widget : row.widgets) {
            if (widget != nullptr) {
                widget->setVisible(isStated || isOfHouse);
            }
        }
    }
}

void LimitsGrid::mark() const
{
    for (const Row& row : m_rows) {
        for (QLineEdit* const line : {row.setting, row.least, row.most}) {
            if (line != nullptr) {
                setStyleProperty(line, "wrong", isGood(line) ? "false" : "true");
            }
        }
    }
}

void LimitsGrid::readSettings(ProgramSettings& settings) const
{
    settings = {};
    const StatedTemperature stated =
        statedTemperature(typedIn(rowOf(Unit::celsius, Parameter::temperature).setting),
                          typedIn(rowOf(Unit::fahrenheit, Parameter::temperature).setting));
    settings.temperature = stated.temperature;
    settings.inFahrenheit = stated.inFahrenheit;
    if (const auto minutes = typedIn(rowOf(Unit::minutes, Parameter::exposure).setting)) {
        settings.exposureMs = *minutes * msOfThousandthMinute;
    }
    if (const auto minutes = typedIn(rowOf(Unit::minutes, Parameter::drying).setting)) {
        settings.dryingMs = *minutes * msOfThousandthMinute;
    }
}

bool LimitsGrid::read(CycleSpecification& specification) const
{
    const bool allGood = std::ranges::all_of(m_rows, [](const Row& row) {
        return isGood(row.setting) && isGood(row.least) && isGood(row.most);
    });
    if (!allGood) {
        return false;
    }
    readSettings(specification.settings);
    std::vector<Limit> limits;
    for (const Row& row : m_rows) {
        const auto least = typedIn(row.least);
        const auto most = typedIn(row.most);
        if (!least && !most) {
            continue;
        }
        auto limit = std::ranges::find(limits, row.parameter, &Limit::parameter);
        if (limit == limits.end()) {
            limits.push_back({.parameter = row.parameter, .least = {}, .most = {}});
            limit = limits.end() - 1;
        }
        if (least) {
            limit->least.push_back({row.unit, *least});
        }
        if (most) {
            limit->most.push_back({row.unit, *most});
        }
    }
    specification.limits = std::move(limits);
    return true;
}

} // namespace loadwarden::ui
