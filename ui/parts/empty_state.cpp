#include "ui/parts/empty_state.h"

#include "ui/look/text.h"

#include <QVBoxLayout>

namespace loadwarden::ui {

EmptyState::EmptyState(const QString& heading, const QString& says, const QString& action,
                       QWidget* parent)
    : QWidget(parent)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::page, space::page, space::page, space::page);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(heading, Type::heading));
    QLabel* const words = makeMuted(says);
    words->setMaximumWidth(720);
    column->addWidget(words);
    if (!action.isEmpty()) {
        column->addSpacing(space::small);
        auto* const button = makeButton(action, ButtonKind::main);
        connect(button, &QPushButton::clicked, this, &EmptyState::acted);
        column->addWidget(button, 0, Qt::AlignLeft);
    }
    column->addStretch();
}

} // namespace loadwarden::ui
