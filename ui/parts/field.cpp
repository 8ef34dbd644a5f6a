#include "ui/parts/field.h"

#include "ui/look/text.h"

#include <QAbstractButton>
#include <QVBoxLayout>

namespace loadwarden::ui {

Field::Field(const QString& label, QWidget* editor, const QString& hint, QWidget* parent)
    : QWidget(parent),
      m_editor(editor),
      m_name(makeLabel(label, Type::strong)),
      m_line(makeMuted(hint)),
      m_hint(hint)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::hair);
    m_name->setBuddy(editor);
    QString plain = label;
    editor->setAccessibleName(plain.remove(u'&'));
    const auto* const button = qobject_cast<QAbstractButton*>(editor->focusProxy());
    if (QWidget* const line = editor->focusProxy();
        line != nullptr && (button == nullptr || button->text().isEmpty())) {
        // What has the keyboard is what a screen reader names.
        const QString part = line->accessibleName();
        line->setAccessibleName(part.isEmpty() ? plain
                                : part.startsWith(plain)
                                    ? part
                                    : tr("%1: %2", "a field, a part of it").arg(plain, part));
    }
    editor->setAccessibleDescription(hint);
    column->addWidget(m_name);
    column->addWidget(editor);
    column->addWidget(m_line);
    column->addSpacing(space::small);
    column->addStretch();
}

void Field::setName(const QString& label)
{
    m_name->setText(label);
    QString plain = label;
    m_editor->setAccessibleName(plain.remove(u'&'));
}

void Field::setHint(const QString& hint)
{
    m_hint = hint;
    if (!m_hasError) {
        m_line->setText(hint);
        m_editor->setAccessibleDescription(hint);
    }
}

void Field::setError(const QString& says)
{
    m_hasError = !says.isEmpty();
    m_line->setText(m_hasError ? says : m_hint);
    setStyleProperty(m_line, "tone", m_hasError ? "bad" : "muted");
    for (QWidget* const marked : {m_editor, m_editor->focusProxy()}) {
        if (marked != nullptr) {
            setStyleProperty(marked, "wrong", m_hasError ? "true" : "false");
        }
    }
    m_editor->setAccessibleDescription(m_line->text());
}

} // namespace loadwarden::ui
