#include "ui/questions/floor_from.h"

#include "ui/look/look.h"
#include "ui/parts/field.h"
#include "ui/questions/floor_desk.h"

#include <QCompleter>
#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

constexpr int mostOfName = 64; ///< characters of a name in an act

} // namespace

FloorFrom::FloorFrom(const FloorDesk& desk, const QString& placeLabel, const QString& byLabel,
                     QWidget* parent)
    : QWidget(parent),
      m_place(new QLineEdit(desk.place())),
      m_placeField(new Field(placeLabel, m_place, tr("a room or a ward; no patient"))),
      m_by(new QLineEdit(desk.by()))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::medium);
    m_place->setMaxLength(mostOfName);
    m_by->setMaxLength(mostOfName);
    auto* const known = new QCompleter(desk.places(), m_place);
    known->setCaseSensitivity(Qt::CaseInsensitive);
    m_place->setCompleter(known);
    row->addWidget(m_placeField, 1);
    row->addWidget(new Field(byLabel, m_by, tr("by what they do there; no name")), 1);
    connect(m_place, &QLineEdit::returnPressed, this, &FloorFrom::entered);
    connect(m_by, &QLineEdit::returnPressed, this, &FloorFrom::entered);
}

QString FloorFrom::place() const
{
    return m_place->text().trimmed();
}

QString FloorFrom::by() const
{
    return m_by->text().trimmed();
}

void FloorFrom::setPlaceError(const QString& error)
{
    m_placeField->setError(error);
}

void FloorFrom::focusPlace()
{
    m_place->setFocus(Qt::OtherFocusReason);
}

} // namespace loadwarden::ui
