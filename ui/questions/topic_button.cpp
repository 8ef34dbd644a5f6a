#include "ui/questions/topic_button.h"

#include "ui/look/text.h"

#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {

TopicButton::TopicButton(const Topic& topic, QWidget* parent) : QPushButton(parent)
{
    const QString question = ui::text(topic.question);
    const QString own = topic.isOfFacility
                            ? tr("This facility's own topic, owner %1, review by %2")
                                  .arg(ui::text(topic.owner), ui::text(formatDate(topic.reviewBy)))
                            : QString();
    setProperty("kind", "choice");
    setAutoDefault(false);
    setAccessibleName(own.isEmpty() ? question : tr("%1 %2").arg(question, own));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::small, space::medium, space::small);
    column->setSpacing(0);
    for (QLabel* const label : {makeLabel(question), own.isEmpty() ? nullptr : makeMuted(own)}) {
        if (label != nullptr) {
            label->setAttribute(Qt::WA_TransparentForMouseEvents);
            column->addWidget(label);
        }
    }
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
