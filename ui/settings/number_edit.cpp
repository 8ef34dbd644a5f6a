#include "ui/settings/number_edit.h"

#include "core/quantities/decimal.h"
#include "core/quantities/thousandths.h"
#include "ui/look/text.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

constexpr int widthOfNumber = 120;
constexpr std::int64_t msOfThousandthMinute = 60;

} // namespace

NumberEdit::NumberEdit(const QString& unit, int decimals, QWidget* parent)
    : QWidget(parent), m_decimals(decimals), m_line(new QLineEdit)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    m_line->setAlignment(Qt::AlignRight);
    m_line->setMaximumWidth(widthOfNumber);
    row->addWidget(m_line);
    if (!unit.isEmpty()) {
        row->addWidget(makeLabel(unit, Type::body, false));
    }
    row->addStretch();
    setFocusProxy(m_line);
}

void NumberEdit::set(std::optional<std::int64_t> thousandths)
{
    std::string typed;
    if (thousandths) {
        appendThousandths(typed, *thousandths);
    }
    m_line->setText(text(typed));
}

void NumberEdit::setWhole(std::optional<std::int64_t> number)
{
    set(number ? std::optional(*number * 1000) : std::nullopt);
}

void NumberEdit::setMs(std::optional<std::int64_t> ms)
{
    set(ms ? std::optional(*ms / msOfThousandthMinute) : std::nullopt);
}

std::optional<std::int64_t> NumberEdit::ms() const
{
    const auto number = thousandths();
    return number ? std::optional(*number * msOfThousandthMinute) : std::nullopt;
}

bool NumberEdit::isEmpty() const
{
    return m_line->text().trimmed().isEmpty();
}

bool NumberEdit::isGood() const
{
    return isEmpty() || thousandths();
}

std::optional<std::int64_t> NumberEdit::thousandths() const
{
    const std::string typed = m_line->text().trimmed().replace(u',', u'.').toStdString();
    // Parsed as thousandths in any case, so that the scale is one.
    return parseDecimal(typed, m_decimals) ? parseDecimal(typed, 3) : std::nullopt;
}

std::optional<std::int64_t> NumberEdit::whole() const
{
    const auto number = thousandths();
    return number ? std::optional(*number / 1000) : std::nullopt;
}

} // namespace loadwarden::ui
