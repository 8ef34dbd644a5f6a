#include "ui/load/peroxide_form.h"

#include "ui/look/look.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"

#include <QGridLayout>

namespace loadwarden::ui {
namespace {

/// The second answer is no, the third yes.
std::optional<bool> said(const QComboBox* combo)
{
    return combo->currentIndex() == 0 ? std::nullopt : std::optional(combo->currentIndex() == 2);
}

} // namespace

PeroxideForm::PeroxideForm(QWidget* parent)
    : QWidget(parent),
      m_cellulose(makeCombo({tr("not known"), tr("no"), tr("yes")})),
      m_liquid(makeCombo({tr("not known"), tr("no"), tr("yes")})),
      m_moist(makeCombo({tr("not known"), tr("it is dry"), tr("it is moist")})),
      m_lumen(makeCombo({tr("not known"), tr("it has none"),
                         tr("as the sterilizer's maker lists it"), tr("not in that list")}))
{
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(0);
    grid->addWidget(new Field(tr("Paper or linen"), m_cellulose), 0, 0);
    grid->addWidget(new Field(tr("Liquid or powder"), m_liquid), 0, 1);
    grid->addWidget(new Field(tr("Dryness"), m_moist), 1, 0);
    grid->addWidget(new Field(tr("Lumens"), m_lumen), 1, 1);
}

PeroxideFacts PeroxideForm::value() const
{
    PeroxideFacts facts{.cellulose = said(m_cellulose),
                        .liquidOrPowder = said(m_liquid),
                        .moist = said(m_moist),
                        .lumen = {}};
    switch (m_lumen->currentIndex()) {
    case 1: facts.lumen = Lumen::none; break;
    case 2: facts.lumen = Lumen::listed; break;
    case 3: facts.lumen = Lumen::unlisted; break;
    default: break;
    }
    return facts;
}

void PeroxideForm::clear()
{
    for (QComboBox* const combo : {m_cellulose, m_liquid, m_moist, m_lumen}) {
        combo->setCurrentIndex(0);
    }
}

} // namespace loadwarden::ui
