#include "ui/parts/quantity_edit.h"

#include "core/quantities/decimal.h"
#include "core/words/say.h"
#include "ui/look/text.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

/// The unit alone, as it stands behind a number.
QString unitText(Unit unit)
{
    QString said = text(sayQuantity({unit, 0}));
    return said.remove(0, 1).trimmed();
}

} // namespace

QuantityEdit::QuantityEdit(Unit unit, QWidget* parent)
    : QWidget(parent), m_unit(unit), m_line(new QLineEdit)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    m_line->setAlignment(Qt::AlignRight);
    m_line->setMaximumWidth(140);
    row->addWidget(m_line);
    row->addWidget(makeLabel(unitText(unit), Type::body, false));
    row->addStretch();
    setFocusProxy(m_line);
    connect(m_line, &QLineEdit::textEdited, this, &QuantityEdit::edited);
}

bool QuantityEdit::isEmpty() const
{
    return m_line->text().trimmed().isEmpty();
}

std::string QuantityEdit::typed() const
{
    return m_line->text().trimmed().replace(u',', u'.').toStdString();
}

std::optional<TypedQuantity> QuantityEdit::value() const
{
    const std::string number = typed();
    const auto thousandths = parseDecimal(number, 3);
    if (!thousandths) {
        return std::nullopt;
    }
    return TypedQuantity{number, {m_unit, *thousandths}};
}

QString QuantityEdit::whatIsWrong() const
{
    if (isEmpty()) {
        return tr("Type the value as it stands on the printout.");
    }
    return value() ? QString() : tr("Type a number with at most three decimals, as 132.4.");
}

} // namespace loadwarden::ui
