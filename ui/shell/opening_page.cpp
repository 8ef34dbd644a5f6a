#include "ui/shell/opening_page.h"

#include "ui/look/text.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {

OpeningPage::OpeningPage(QWidget* parent)
    : QWidget(parent),
      m_heading(makeLabel({}, Type::title)),
      m_says(makeLabel({})),
      m_again(makeButton(tr("&Try again"), ButtonKind::main)),
      m_other(makeButton(tr("Choose &another journal")))
{
    setObjectName(QStringLiteral("page"));
    auto* const panel = new QWidget;
    panel->setMaximumWidth(720);
    auto* const column = new QVBoxLayout(panel);
    column->setSpacing(space::medium);
    column->addWidget(m_heading);
    column->addWidget(m_says);
    auto* const buttons = new QHBoxLayout;
    buttons->addWidget(m_again);
    buttons->addWidget(m_other);
    buttons->addStretch();
    column->addLayout(buttons);
    auto* const middle = new QVBoxLayout(this);
    middle->addStretch(1);
    auto* const row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(panel, 8);
    row->addStretch(1);
    middle->addLayout(row);
    middle->addStretch(2);
    connect(m_again, &QPushButton::clicked, this, &OpeningPage::again);
    connect(m_other, &QPushButton::clicked, this, &OpeningPage::other);
}

void OpeningPage::opening(const QString& file)
{
    m_heading->setText(tr("Opening the journal"));
    m_says->setText(file);
    m_again->hide();
    m_other->hide();
}

void OpeningPage::failed(const QString& says, const QString& next)
{
    m_heading->setText(tr("The journal is not open"));
    m_says->setText(says + u' ' + next);
    m_again->show();
    m_other->show();
    m_again->setFocus();
}

} // namespace loadwarden::ui
