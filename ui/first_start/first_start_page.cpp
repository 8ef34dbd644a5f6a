#include "ui/first_start/first_start_page.h"

#include "core/words/say.h"
#include "ui/first_start/facility_step.h"
#include "ui/first_start/sterilizers_step.h"
#include "ui/first_start/supervisor_step.h"
#include "ui/look/text.h"
#include "ui/parts/banner.h"
#include "ui/parts/glyph_view.h"

#include <QFileDialog>
#include <QFutureWatcher>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr int widthOfText = 760;

} // namespace

FirstStartPage::FirstStartPage(Look& look, const Workplace& place, const QString& file,
                               QWidget* parent)
    : QWidget(parent),
      m_place(place),
      m_stack(new QStackedWidget),
      m_where(makeMuted({}, false)),
      m_banner(new Banner),
      m_forward(makeButton({}, ButtonKind::main)),
      m_back(makeButton(tr("&Back"))),
      m_other(makeButton(tr("&Open a journal that is there"), ButtonKind::quiet))
{
    setObjectName(QStringLiteral("page"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, space::medium);
    column->setSpacing(0);
    auto* const head = new QWidget;
    head->setObjectName(QStringLiteral("bezel"));
    head->setAttribute(Qt::WA_StyledBackground);
    auto* const name = new QHBoxLayout(head);
    name->setContentsMargins(space::large, space::medium, space::large, space::medium);
    name->setSpacing(space::medium);
    name->addWidget(new GlyphView(look, Glyph::loadwarden, ToneOf::bezel, 28));
    name->addWidget(makeLabel(tr("Loadwarden"), Type::strong, false));
    name->addStretch();
    name->addWidget(m_where);
    column->addWidget(head);
    column->addWidget(m_banner);

    addStep(new FacilityStep(file));
    addStep(new SupervisorStep);
    addStep(new SterilizersStep);
    column->addWidget(m_stack, 1);

    auto* const foot = new QHBoxLayout;
    foot->setContentsMargins(space::page, space::small, space::page, space::small);
    foot->setSpacing(space::small);
    foot->addStretch(1);
    auto* const buttons = new QWidget;
    buttons->setMaximumWidth(widthOfText);
    auto* const row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_forward);
    row->addWidget(m_back);
    row->addStretch();
    row->addWidget(m_other);
    foot->addWidget(buttons, 8);
    foot->addStretch(1);
    column->addLayout(foot);
    auto* const words = new QHBoxLayout;
    words->setContentsMargins(space::page, 0, space::page, 0);
    words->addStretch(1);
    auto* const care = makeMuted(text(caution()));
    care->setMaximumWidth(widthOfText);
    words->addWidget(care, 8);
    words->addStretch(1);
    column->addLayout(words);

    connect(m_forward, &QPushButton::clicked, this, &FirstStartPage::forward);
    connect(m_back, &QPushButton::clicked, this, &FirstStartPage::back);
    connect(m_other, &QPushButton::clicked, this, &FirstStartPage::openOther);
    showStep(0);
}

void FirstStartPage::addStep(Step* step)
{
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* const middle = new QWidget;
    auto* const row = new QHBoxLayout(middle);
    row->setContentsMargins(space::page, space::large, space::page, space::small);
    row->addStretch(1);
    step->setMaximumWidth(widthOfText);
    row->addWidget(step, 8, Qt::AlignTop);
    row->addStretch(1);
    scroll->setWidget(middle);
    m_stack->addWidget(scroll);
    m_steps.push_back(step);
}

void FirstStartPage::showStep(int index)
{
    const int count = static_cast<int>(m_steps.size());
    m_stack->setCurrentIndex(index);
    m_where->setText(tr("Step %1 of %2").arg(index + 1).arg(count));
    m_back->setVisible(index > 0);
    m_other->setVisible(index == 0);
    m_forward->setText(index + 1 == count ? tr("&Begin the journal") : tr("&Next"));
    m_steps[static_cast<std::size_t>(index)]->setFocus();
}

void FirstStartPage::forward()
{
    const int index = m_stack->currentIndex();
    Step* const step = m_steps[static_cast<std::size_t>(index)];
    if (!step->check()) {
        return;
    }
    step->fill(m_day);
    if (index + 1 < static_cast<int>(m_steps.size())) {
        showStep(index + 1);
        return;
    }
    begin();
}

void FirstStartPage::back()
{
    showStep(m_stack->currentIndex() - 1);
}

void FirstStartPage::begin()
{
    m_forward->setEnabled(false);
    m_back->setEnabled(false);
    m_day.founding.supervisorId = m_place.ids.next("st");
    auto* const watcher = new QFutureWatcher<Founded>(this);
    connect(watcher, &QFutureWatcherBase::finished, this, [this, watcher] {
        watcher->deleteLater();
        answered(watcher->result());
    });
    watcher->setFuture(found(m_day, m_place));
}

void FirstStartPage::answered(const Founded& trouble)
{
    m_forward->setEnabled(true);
    m_back->setEnabled(true);
    if (trouble) {
        m_banner->say(Banner::Tone::bad, trouble->says, trouble->next);
        return;
    }
    emit chosen(QString::fromStdString(m_day.file.string()));
}

void FirstStartPage::openOther()
{
    const QString file = QFileDialog::getOpenFileName(
        this, tr("Open a journal"), {}, tr("Journals (*.journal *.lwj);;All files (*)"));
    if (!file.isEmpty()) {
        emit chosen(file);
    }
}

} // namespace loadwarden::ui
