#include "ui/settings/methods_edit.h"

#include "core/quantities/method_words.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"

#include <QCheckBox>
#include <QGridLayout>

namespace loadwarden::ui {

MethodsEdit::MethodsEdit(QWidget* parent) : QWidget(parent)
{
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::large);
    grid->setVerticalSpacing(0);
    grid->setColumnStretch(2, 1);
    for (const Word<Method>& word : methodWords) {
        if (word.value == Method::unknown) {
            continue;
        }
        const int at = static_cast<int>(m_boxes.size());
        m_boxes.push_back({word.value, new QCheckBox(text(say(word.value)))});
        grid->addWidget(m_boxes.back().box, at / 2, at % 2);
    }
    setFocusProxy(m_boxes.front().box);
}

void MethodsEdit::set(MethodSet methods)
{
    for (const Box& each : m_boxes) {
        each.box->setChecked(methods.contains(each.method));
    }
}

MethodSet MethodsEdit::value() const
{
    MethodSet methods;
    for (const Box& each : m_boxes) {
        if (each.box->isChecked()) {
            methods.add(each.method);
        }
    }
    return methods;
}

QString MethodsEdit::whatIsWrong() const
{
    return value().empty() ? tr("Choose at least one method.") : QString();
}

} // namespace loadwarden::ui
