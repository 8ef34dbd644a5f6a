#include "ui/indicators/check_card.h"

#include "core/words/say_reading.h"
#include "ui/indicators/colour_reader.h"
#include "ui/indicators/indicator_schematic.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"

#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

void showWhereThere(QLabel* label, const QString& says)
{
    label->setText(withBreaks(says));
    label->setVisible(!says.isEmpty());
}

} // namespace

CheckCard::CheckCard(Look& look, QWidget* parent)
    : QFrame(parent),
      m_look(look),
      m_product(makeLabel({}, Type::heading)),
      m_type(makeMuted({})),
      m_picture(new IndicatorSchematic(look, IndicatorSchematic::Size::large)),
      m_samples(new QVBoxLayout),
      m_directions(makeLabel({}))
{
    setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::large);
    column->setSpacing(space::small);
    column->addWidget(m_product);
    column->addWidget(m_type);
    column->addSpacing(space::small);
    column->addWidget(m_picture);
    column->addSpacing(space::small);
    column->addLayout(m_samples);
    column->addWidget(m_directions);
}

void CheckCard::show(const Drawn& drawn, const CheckProduct* product)
{
    showWhereThere(m_product, product == nullptr ? QString() : text(product->name));
    showWhereThere(m_type, product == nullptr || product->type == 0
                               ? QString()
                               : text(sayType(product->type).name));
    showWhereThere(m_directions, product == nullptr || !product->directions
                                     ? QString()
                                     : text(product->directions->text));
    clearLayout(m_samples);
    if (drawn.response == Response::colour) {
        m_samples->addWidget(
            makeColourSamples(m_look, product == nullptr ? std::nullopt : product->directions));
    }
    m_picture->show(drawn);
}

} // namespace loadwarden::ui
