#include "ui/questions/topic_button.h"

#include "ui/look/text.h"

#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {

TopicButton::TopicButton(const QString& question, QWidget* parent)
    : QPushButton(parent), m_says(makeLabel(question))
{
    setProperty("kind", "choice");
    setAutoDefault(false);
    setAccessibleName(question);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    m_says->setAttribute(Qt::WA_TransparentForMouseEvents);
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::small, space::medium, space::small);
    column->addWidget(m_says);
}

QSize TopicButton::sizeHint() const
{
    const QSize inside = layout()->sizeHint();
    return {inside.width(), std::max(inside.height(), space::target)};
}

QSize TopicButton::minimumSizeHint() const
{
    return {layout()->minimumSize().width(), space::target};
}

int TopicButton::heightForWidth(int width) const
{
    return std::max(layout()->heightForWidth(width), space::target);
}

} // namespace loadwarden::ui
