#include "ui/settings/lot_form.h"

#include "ui/parts/field.h"

#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

LotForm::LotForm(const Workstation& workstation, std::string product)
    : RegisterForm(workstation, Task::ProductLotRecorded, tr("An operator records lots.")),
      m_product(std::move(product)),
      m_heading(makeLabel({}, Type::strong)),
      m_number(new QLineEdit),
      m_expires(new QLineEdit),
      m_numberField(nullptr),
      m_expiresField(nullptr)
{
    beginGroup();
    m_heading->setContentsMargins(0, 0, 0, space::small);
    addWide(m_heading);
    m_number->setProperty("takesScans", true);
    m_numberField = addField("number", tr("Lot n&umber"), m_number, tr("As it stands on the box."));
    m_expiresField =
        addField("expires", tr("E&xpires on"), m_expires,
                 tr("The last good day, as 2032-01-31. Of a month only: its last day."));
    addButtons(tr("Record the lot"));
    connect(this, &RegisterForm::recorded, this, [this] {
        drop();
        m_number->setFocus();
    });
    putBack();
}

void LotForm::show(const Registers& registers)
{
    m_day = registers.day;
    const auto product = std::ranges::find(registers.products, m_product, &RegisteredProduct::id);
    if (product != registers.products.end()) {
        m_productName = product->recorded.name;
    }
}

bool LotForm::revise(const RegisteredLot& lot)
{
    if (isTouched()) {
        return false;
    }
    m_lot = lot.id;
    m_recorded = lot.recorded;
    putBack();
    m_number->setFocus();
    return true;
}

void LotForm::drop()
{
    m_lot.clear();
    m_recorded = {};
    putBack();
}

void LotForm::putBack()
{
    m_heading->setText(m_lot.empty() ? tr("One more lot")
                                     : tr("Correct lot %1").arg(text(m_recorded.number)));
    m_number->setText(text(m_recorded.number));
    m_expires->setText(m_recorded.expires ? text(formatDate(*m_recorded.expires)) : QString());
    filled();
}

std::optional<Wanted> LotForm::wanted()
{
    const QString number = m_number->text().trimmed();
    const auto expires = parseDate(m_expires->text().trimmed().toStdString());
    bool isGood = needs(m_numberField, tr("Type the lot number."));
    QString wrong;
    if (m_expires->text().trimmed().isEmpty()) {
        wrong = tr("Type until when the lot is good; without it no answer of it counts.");
    } else if (!expires) {
        wrong = tr("Type the date as 2032-01-31.");
    } else if (lotState(expires, m_day) == LotState::slip) {
        wrong = tr("No shelf life is that long. Check the year on the box.");
    }
    setError(m_expiresField, wrong);
    isGood = isGood && wrong.isEmpty();
    if (!isGood) {
        return std::nullopt;
    }
    const std::string id = m_lot.empty() ? RandomIdSource().next("pl") : m_lot;
    return Wanted{.acts = {{.act = ProductLotRecorded{number.toStdString(), expires},
                            .subjects = {id, m_product}}},
                  .what = {},
                  .seen = {},
                  .done = tr("Lot %1 of %2 is recorded.").arg(number, text(m_productName))};
}

} // namespace loadwarden::ui
