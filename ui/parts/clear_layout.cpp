#include "ui/parts/clear_layout.h"

#include <QLayout>
#include <QWidget>

namespace loadwarden::ui {

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

} // namespace loadwarden::ui
