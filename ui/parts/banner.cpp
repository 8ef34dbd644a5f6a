#include "ui/parts/banner.h"

#include "ui/look/text.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {

Banner::Banner(QWidget* parent)
    : QFrame(parent),
      m_says(makeLabel({}, Type::strong)),
      m_next(makeLabel({})),
      m_close(makeButton(tr("Put away"), ButtonKind::quiet))
{
    setObjectName(QStringLiteral("banner"));
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(space::large, space::small, space::medium, space::small);
    row->setSpacing(space::medium);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::hair);
    words->addStretch();
    words->addWidget(m_says);
    words->addWidget(m_next);
    words->addStretch();
    row->addLayout(words, 1);
    row->addWidget(m_close, 0, Qt::AlignVCenter);
    connect(m_close, &QPushButton::clicked, this, &Banner::putAway);
    hide();
}

void Banner::say(Tone tone, const QString& says, const QString& next)
{
    const char* const tones[] = {"neutral", "good", "waiting", "bad"};
    setStyleProperty(this, "tone", tones[static_cast<int>(tone)]);
    m_says->setText(says);
    m_next->setText(next);
    m_next->setVisible(!next.isEmpty());
    setAccessibleName(next.isEmpty() ? says : says + u' ' + next);
    show();
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

QString Banner::said() const
{
    return isHidden() ? QString() : accessibleName();
}

void Banner::putAway()
{
    hide();
}

} // namespace loadwarden::ui
