#include "ui/load/sheet_section.h"

#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {

SheetSection::SheetSection(CycleDesk& desk, const QString& heading, QWidget* parent)
    : QFrame(parent), m_desk(desk), m_column(new QVBoxLayout(this)), m_state(makeMuted({}, true))
{
    setObjectName(QStringLiteral("panel"));
    m_column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    m_column->setSpacing(space::small);
    auto* const head = new QHBoxLayout;
    head->setSpacing(space::medium);
    head->addWidget(makeLabel(heading, Type::heading, false));
    head->addWidget(m_state, 1, Qt::AlignBottom);
    m_column->addLayout(head);
}

void SheetSection::setState(const QString& says, const char* tone)
{
    m_state->setText(says);
    setStyleProperty(m_state, "tone", tone);
}

void SheetSection::goTo(const QString& /*subject*/)
{
    // The first thing in it that can have the keyboard.
    for (QWidget* const widget : findChildren<QWidget*>()) {
        if (widget->isVisibleTo(this) && widget->isEnabled()
            && (widget->focusPolicy() & Qt::TabFocus) == Qt::TabFocus) {
            widget->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
}

Facts::Facts(QWidget* parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(space::large);
    m_grid->setVerticalSpacing(space::hair);
    m_grid->setColumnMinimumWidth(0, 110);
    m_grid->setColumnStretch(1, 3);
    m_grid->setColumnStretch(2, 2);
}

void Facts::clear()
{
    clearLayout(m_grid);
    m_rows = 0;
}

void Facts::add(const QString& what, const QString& value, const QString& who)
{
    const int row = m_rows++;
    m_grid->addWidget(makeMuted(what, false), row, 0, Qt::AlignTop);
    m_grid->addWidget(makeLabel(value), row, 1, Qt::AlignTop);
    if (!who.isEmpty()) {
        m_grid->addWidget(makeMuted(who), row, 2, Qt::AlignTop);
    }
}

ChoiceRow::ChoiceRow(const QString& of, const QStringList& words, int chosen, QWidget* parent)
    : QWidget(parent)
{
    auto* const row = new FlowLayout; // also in a narrow column
    setLayout(row);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::hair);
    for (int i = 0; i < words.size(); ++i) {
        auto* const button = makeButton(words[i], ButtonKind::choice);
        QString plain = words[i];
        button->setAccessibleName(tr("%1: %2", "what is chosen, an answer").arg(of, plain.remove(u'&')));
        connect(button, &QPushButton::clicked, this, [this, i] {
            choose(i);
            emit changed(i);
        });
        m_buttons.push_back(button);
        row->addWidget(button);
    }
    if (!m_buttons.empty()) {
        setFocusProxy(m_buttons.front());
    }
    choose(chosen);
}

void ChoiceRow::choose(int index)
{
    m_chosen = index;
    for (std::size_t i = 0; i < m_buttons.size(); ++i) {
        m_buttons[i]->setChecked(static_cast<int>(i) == index);
    }
}

} // namespace loadwarden::ui
