#include "ui/settings/file_edit.h"

#include "ui/look/text.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {

FileEdit::FileEdit(What what, const QString& asks, QWidget* parent)
    : QWidget(parent), m_what(what), m_asks(asks), m_line(new QLineEdit)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    row->addWidget(m_line, 1);
    auto* const button = makeButton(tr("Choose"));
    button->setAccessibleName(asks);
    row->addWidget(button);
    connect(button, &QPushButton::clicked, this, &FileEdit::choose);
    setFocusProxy(m_line);
}

QString FileEdit::path() const
{
    return m_line->text().trimmed();
}

void FileEdit::choose()
{
    QString chosen;
    switch (m_what) {
    case What::openFile: chosen = QFileDialog::getOpenFileName(this, m_asks, path()); break;
    case What::saveFile: chosen = QFileDialog::getSaveFileName(this, m_asks, path()); break;
    case What::folder: chosen = QFileDialog::getExistingDirectory(this, m_asks, path()); break;
    }
    if (!chosen.isEmpty()) {
        m_line->setText(chosen);
    }
}

} // namespace loadwarden::ui
