#include "ui/indicators/checks_view.h"

#include "ui/look/look.h"
#include "ui/look/text.h"

#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

namespace loadwarden::ui {

ChecksView::ChecksView(const std::vector<CheckTaken>& checks,
                       const std::optional<ReadersAgree>& agreement, bool canCheck,
                       const HouseStyle& style, QWidget* parent)
    : QFrame(parent)
{
    setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("How well do we read?"), Type::heading));
    column->addWidget(makeLabel(
        tr("Twenty drawn indicators of the registered products, some of them near the boundary. "
           "Everybody who takes the check in a month reads the same ones, as long as the same "
           "products are registered. It trains, and decides nothing.")));
    for (const CheckTaken& each : checks) {
        QString line = tr("%1: %2 of %3 right on %4", "a reader, how many, of how many, when")
                           .arg(text(each.name))
                           .arg(each.right)
                           .arg(each.of)
                           .arg(text(sayTime(each.at, style)));
        if (each.acceptedWhatFails > 0) {
            line += tr("; accepted though it fails: %1").arg(each.acceptedWhatFails);
        }
        column->addWidget(makeLabel(line));
    }
    if (agreement && agreement->agreement.kappa) {
        column->addWidget(
            makeMuted(tr("Agreement of %1 readers beyond chance in check %2 (kappa): %3. All said "
                         "the same of "
                         "%4 indicators.")
                          .arg(agreement->agreement.readers)
                          .arg(agreement->number)
                          .arg(QLocale().toString(*agreement->agreement.kappa, 'f', 2))
                          .arg(agreement->agreement.alike)));
    }
    if (!canCheck) {
        column->addWidget(makeMuted(
            tr("None of the registered products can be drawn: they answer by growth, or their "
               "directions leave no room on either side of the boundary.")));
        return;
    }
    auto* const begin = makeButton(tr("Begin a reading chec&k"));
    connect(begin, &QPushButton::clicked, this, &ChecksView::wantsCheck);
    column->addWidget(begin, 0, Qt::AlignLeft);
}

} // namespace loadwarden::ui
