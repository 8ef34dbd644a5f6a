#include "ui/indicators/check_card.h"

#include "core/words/say_reading.h"
#include "ui/indicators/colour_reader.h"
#include "ui/indicators/indicator_schematic.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

struct CardWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::CardWords)
};

void showWhereThere(QLabel* label, const QString& says)
{
    label->setText(withBreaks(says));
    label->setVisible(!says.isEmpty());
}

/// What the drawing means, so that nobody has to guess.
QString legendOf(Response response)
{
    switch (response) {
    case Response::movingFront: return CardWords::tr("Hatched: as far as the front has come.");
    case Response::sheet:
        return CardWords::tr(
            "Hatched both ways: changed fully. One way: changed in part. Blank: not "
            "changed.");
    case Response::colour:
    case Response::growth: break;
    }
    return CardWords::tr("Hatched: it has its end colour. Blank: its start colour.");
}

} // namespace

CheckCard::CheckCard(Look& look, QWidget* parent)
    : QFrame(parent),
      m_look(look),
      m_product(makeLabel({}, Type::heading)),
      m_type(makeMuted({})),
      m_picture(new IndicatorSchematic(look, IndicatorSchematic::Size::large)),
      m_legend(makeMuted({})),
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
    column->addWidget(m_legend);
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
    m_legend->setText(legendOf(drawn.response));
    clearLayout(m_samples);
    if (drawn.response == Response::colour) {
        m_samples->addWidget(
            makeColourSamples(m_look, product == nullptr ? std::nullopt : product->directions));
    }
    m_picture->show(drawn);
}

} // namespace loadwarden::ui
