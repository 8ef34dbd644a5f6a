#include "ui/settings/long_work.h"

#include "ui/look/text.h"

#include <QHBoxLayout>
#include <QProgressBar>
#include <QVBoxLayout>

namespace loadwarden::ui {

LongWork::LongWork(QWidget* parent)
    : QWidget(parent),
      m_says(makeLabel({}, Type::strong)),
      m_next(makeLabel({})),
      m_bar(new QProgressBar),
      m_button(makeButton(tr("Cancel")))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    m_next->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_bar->setAccessibleName(tr("Progress"));
    m_bar->setTextVisible(false);
    column->addWidget(m_says);
    column->addWidget(m_next);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    row->addWidget(m_bar, 1);
    row->addWidget(m_button);
    column->addLayout(row);
    connect(m_button, &QPushButton::clicked, this, [this] {
        m_wantsNoMore = true;
        m_button->hide();
        m_next->setText(tr("It is being cancelled …"));
        m_next->show();
        m_cancel();
    });
    hide();
}

LongWork::~LongWork()
{
    if (m_isRunning) {
        m_cancel();
        try {
            m_wait();
        } catch (...) {
            // Nobody is here any more to hear of it; nothing was made.
        }
    }
}

void LongWork::begin(const QString& says)
{
    m_isRunning = true;
    m_wantsNoMore = false;
    setStyleProperty(m_says, "tone", "");
    m_says->setText(says);
    m_next->hide();
    m_bar->setRange(0, 0); // until the first word of how far it has come
    m_bar->show();
    m_button->show();
    show();
    emit changed();
}

void LongWork::end()
{
    m_isRunning = false;
    m_bar->hide();
    m_button->hide();
    emit changed();
}

void LongWork::progressed(int value)
{
    if (value > 0) {
        m_bar->setRange(0, 1'000);
        m_bar->setValue(value);
    }
}

void LongWork::failed(const Trouble& trouble)
{
    if (m_wantsNoMore) {
        cancelled();
        return;
    }
    say(trouble.says, trouble.next, "bad");
}

void LongWork::cancelled()
{
    say(tr("Cancelled. Nothing was made."), {}, "");
}

void LongWork::say(const QString& says, const QString& next, const char* tone)
{
    setStyleProperty(m_says, "tone", tone);
    m_says->setText(says);
    m_next->setText(next);
    m_next->setVisible(!next.isEmpty());
    show();
}

} // namespace loadwarden::ui
