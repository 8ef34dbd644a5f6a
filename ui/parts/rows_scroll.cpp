#include "ui/parts/rows_scroll.h"

#include <QScrollArea>

namespace loadwarden::ui {

QScrollArea* makeRowsScroll(QWidget* parent)
{
    auto* const scroll = new QScrollArea(parent);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const inside = new QWidget(scroll->viewport());
    inside->setObjectName(QStringLiteral("rows"));
    scroll->setWidget(inside);
    return scroll;
}

} // namespace loadwarden::ui
