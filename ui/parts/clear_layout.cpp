#include "ui/parts/clear_layout.h"

#include <QCoreApplication>
#include <QLayout>
#include <QScrollArea>
#include <QWidget>

namespace loadwarden::ui {
namespace {

void showMade(QLayout* layout);

void showMade(QWidget* widget)
{
    if (widget->isHidden() && !widget->testAttribute(Qt::WA_WState_ExplicitShowHide)) {
        widget->show();
    }
    if (auto* const scroll = qobject_cast<QScrollArea*>(widget); scroll && scroll->widget()) {
        showMade(scroll->widget());
    } else if (widget->layout() != nullptr) {
        showMade(widget->layout());
    }
}

void showMade(QLayout* layout)
{
    for (int i = 0; i < layout->count(); ++i) {
        QLayoutItem* const item = layout->itemAt(i);
        if (item->widget() != nullptr) {
            showMade(item->widget());
        } else if (item->layout() != nullptr) {
            showMade(item->layout());
        }
    }
}

} // namespace

void clearLayout(QLayout* layout)
{
    while (QLayoutItem* const item = layout->takeAt(0)) {
        if (item->widget() != nullptr) {
            item->widget()->hide();
            item->widget()->deleteLater();
        } else if (item->layout() != nullptr) {
            clearLayout(item->layout());
        }
        delete item;
    }
}

void settleLayouts(QWidget* root)
{
    showMade(root);
    // A layout tells the one around it that it wants another size, from the inside outwards.
    constexpr int mostRounds = 3;
    for (int i = 0; i < mostRounds; ++i) {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    }
}

} // namespace loadwarden::ui
