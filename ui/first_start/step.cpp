#include "ui/first_start/step.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {

Step::Step(const QString& heading, const QString& says, QWidget* parent) : QWidget(parent)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(heading, Type::title));
    column->addWidget(makeMuted(says));
    column->addSpacing(space::small);
}

void Step::add(QWidget* widget)
{
    layout()->addWidget(widget);
}

bool Step::needs(Field* field, const QLineEdit* line, const QString& otherwise)
{
    const bool isThere = !line->text().trimmed().isEmpty();
    field->setError(isThere ? QString() : otherwise);
    return isThere;
}

} // namespace loadwarden::ui
