#include "ui/trace/power_text.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"

#include <QCoreApplication>

#include <cmath>

namespace loadwarden::ui {
namespace {

struct PowerText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::PowerText)
};

QString raised(int exponent)
{
    static const QString digits = QStringLiteral("⁰¹²³⁴⁵⁶⁷⁸⁹");
    QString said;
    for (const QChar each : QString::number(std::abs(exponent))) {
        said += digits[each.digitValue()];
    }
    return exponent < 0 ? QStringLiteral("⁻") + said : said;
}

} // namespace

QString powerText(double value)
{
    constexpr double least = 0.01;
    constexpr double most = 1e4;
    if (std::isnan(value)) {
        return text(sayNumber(value, 0));
    }
    if (value == 0) {
        return QStringLiteral("0");
    }
    if (value >= least && value < most) {
        return text(sayNumber(value, value < 1 ? 3 : value < 100 ? 2 : 0));
    }
    auto exponent = static_cast<int>(std::floor(std::log10(value)));
    double digits = std::round(value / std::pow(10.0, exponent) * 10) / 10;
    if (digits >= 10) {
        digits /= 10;
        ++exponent;
    }
    return QStringLiteral("%1 × 10%2").arg(text(sayNumber(digits, 1)), raised(exponent));
}

QString chanceText(double chance)
{
    constexpr double asPercent = 0.001;
    constexpr double nearlySure = 0.9999;
    if (chance > nearlySure) {
        return PowerText::tr("more than 99.99 %");
    }
    if (chance >= asPercent) {
        const double percent = chance * 100;
        return PowerText::tr("%1 %").arg(text(sayNumber(percent, percent < 10 ? 2 : 1)));
    }
    return powerText(chance);
}

} // namespace loadwarden::ui
