#include "ui/shell/shortcut_sheet.h"

#include "ui/look/text.h"
#include "ui/shell/shortcuts.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {

ShortcutSheet::ShortcutSheet(QWidget* window) : QDialog(window)
{
    setWindowTitle(tr("Keys"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::page, space::large, space::page, space::large);
    column->setSpacing(space::medium);
    column->addWidget(makeLabel(tr("Keys on this page"), Type::heading));
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::page);
    grid->setVerticalSpacing(space::small);
    int row = 0;
    for (const ShortcutLine& line : shortcutsOf(window)) {
        grid->addWidget(makeLabel(line.keys, Type::strong, false), row, 0);
        grid->addWidget(makeLabel(line.does, Type::body, false), row, 1);
        ++row;
    }
    grid->setColumnStretch(1, 1);
    column->addLayout(grid);
    column->addWidget(makeMuted(tr("Tab goes from field to field, Alt with an underlined letter "
                                   "goes to it. A scanner works anywhere.")));
    auto* const close = makeButton(tr("Close"), ButtonKind::main);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    column->addWidget(close, 0, Qt::AlignLeft);
    close->setFocus();
}

} // namespace loadwarden::ui
