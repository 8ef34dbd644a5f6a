#include "ui/settings/register_section.h"

#include "ui/parts/empty_state.h"
#include "ui/settings/register_form.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widthOfList = 300;
constexpr int widthOfForm = 860;

} // namespace

EntryView::EntryView() : m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(space::large, 0, space::page, space::medium);
    m_column->setSpacing(space::medium);
}

void EntryView::add(RegisterForm* form)
{
    add(static_cast<QWidget*>(form));
    keep(form);
}

void EntryView::keep(RegisterForm* form)
{
    m_forms.push_back(form);
    connect(form, &RegisterForm::touched, this, &EntryView::touched);
    connect(form, &RegisterForm::says, this, &EntryView::says);
    connect(form, &RegisterForm::regrouped, this, &EntryView::orderTabs);
}

void EntryView::add(QWidget* widget)
{
    m_column->addWidget(widget);
}

void EntryView::addRule()
{
    m_column->addWidget(makeRule());
}

bool EntryView::isTouched() const
{
    return std::ranges::any_of(m_forms, &RegisterForm::isTouched);
}

void EntryView::lookAtRights()
{
    for (RegisterForm* const form : m_forms) {
        form->lookAtRights();
    }
}

void EntryView::orderTabs()
{
    QWidget* before = nullptr;
    for (QWidget* const each : findChildren<QWidget*>()) {
        const bool takesTab =
            (each->focusPolicy() & Qt::TabFocus) != 0 && each->focusProxy() == nullptr;
        if (!takesTab || each->window() != window()) {
            continue;
        }
        if (before != nullptr) {
            setTabOrder(before, each);
        }
        before = each;
    }
}

RegisterSection::RegisterSection(const Workstation& workstation, const Words& words, Task adding)
    : Section(workstation),
      m_words(words),
      m_adding(adding),
      m_add(makeButton(words.add)),
      m_list(new RegisterList(workstation.look, words.title)),
      m_stack(new QStackedWidget),
      m_left(new QWidget),
      m_reading(new EmptyState(tr("Being read"), tr("What this register holds is being read."))),
      m_unread(new EmptyState(tr("Not read"),
                              tr("What this register holds could not be read. Go to another page "
                                 "and come back to try it again."))),
      m_empty(new EmptyState(words.empty, words.teaches, words.add))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, space::medium, 0, 0);
    column->setSpacing(space::small);
    auto* const head = new QVBoxLayout;
    head->setContentsMargins(space::large, 0, space::page, space::small);
    head->setSpacing(2);
    head->addWidget(makeLabel(words.title, Type::title));
    head->addWidget(makeMuted(words.belongs));
    column->addLayout(head);
    auto* const row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    column->addLayout(row, 1);
    m_left->setFixedWidth(widthOfList);
    auto* const left = new QVBoxLayout(m_left);
    left->setContentsMargins(space::large, 0, 0, space::medium);
    left->setSpacing(space::small);
    left->addWidget(m_add);
    left->addWidget(m_list, 1);
    row->addWidget(m_left);
    row->addWidget(m_stack, 1);
    for (QWidget* const page : {m_reading, m_unread, m_empty}) {
        m_stack->addWidget(page);
    }
    connect(m_add, &QPushButton::clicked, this, &RegisterSection::addNew);
    connect(m_empty, &EmptyState::acted, this, &RegisterSection::addNew);
    connect(m_list, &RegisterList::chosen, this, &RegisterSection::choose);
    m_left->hide();
    lookAtRights();
}

void RegisterSection::show(const RegistersNow& registers)
{
    m_registers = registers;
    for (const auto& [id, kept] : m_views) {
        kept.view->show(*registers);
        kept.view->orderTabs();
    }
    showLines();
}

void RegisterSection::notRead()
{
    if (m_registers == nullptr) {
        m_stack->setCurrentWidget(m_unread);
    }
}

void RegisterSection::showLines()
{
    if (m_registers == nullptr) {
        return;
    }
    std::vector<RegisterLine> all = lines(*m_registers);
    for (RegisterLine& line : all) {
        const auto kept = m_views.find(line.id);
        if (kept != m_views.end() && kept->second.view->isTouched()) {
            line.says = tr("typed, not recorded yet");
        }
    }
    if (m_hasNew) {
        all.insert(all.begin(), {QStringLiteral(""), m_words.fresh, tr("not recorded yet"), false});
    }
    m_left->setVisible(!all.empty());
    m_list->show(all);
    if (!m_chooseNext.isNull()
        && std::ranges::find(all, m_chooseNext, &RegisterLine::id) != all.end()) {
        m_list->choose(std::exchange(m_chooseNext, QString()));
    }
    if (m_list->chosenId().isNull() && !all.empty()) {
        m_list->choose(all.front().id);
    }
    if (all.empty()) {
        m_stack->setCurrentWidget(m_empty);
    }
}

void RegisterSection::choose(const QString& id)
{
    if (id.isNull()) {
        m_stack->setCurrentWidget(m_empty);
        return;
    }
    (void)viewOf(id);
    m_stack->setCurrentWidget(m_views.at(id).scroll);
}

void RegisterSection::addNew()
{
    m_hasNew = true;
    EntryView* const view = viewOf(QStringLiteral(""));
    showLines();
    m_list->choose(QStringLiteral(""));
    m_stack->setCurrentWidget(m_views.at(QStringLiteral("")).scroll);
    view->setFocus();
}

EntryView* RegisterSection::viewOf(const QString& id)
{
    const auto found = m_views.find(id);
    if (found != m_views.end()) {
        return found->second.view;
    }
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const middle = new QWidget;
    middle->setObjectName(QStringLiteral("rows"));
    auto* const row = new QHBoxLayout(middle);
    row->setContentsMargins(0, 0, 0, 0);
    EntryView* const view = makeView(id);
    view->setMaximumWidth(widthOfForm);
    row->addWidget(view, 8, Qt::AlignTop);
    row->addStretch(1);
    scroll->setWidget(middle);
    m_stack->addWidget(scroll);
    m_views.emplace(id, Kept{view, scroll});
    connect(view, &EntryView::says, this, &Section::says);
    connect(view, &EntryView::touched, this, &RegisterSection::showLines);
    connect(view, &EntryView::recorded, this, [this, id](const QString& recordedId) {
        if (id.isEmpty()) {
            // What is added next begins anew.
            m_hasNew = false;
            m_chooseNext = recordedId;
            const auto kept = m_views.find(id);
            kept->second.scroll->deleteLater();
            m_views.erase(kept);
            m_list->setFocus();
        }
        showLines();
    });
    view->show(*m_registers);
    view->orderTabs();
    return view;
}

void RegisterSection::lookAtRights()
{
    const bool may = mayDo(workstation().session.person().role, m_adding);
    m_add->setVisible(may && !m_words.add.isEmpty());
    if (auto* const action = m_empty->findChild<QPushButton*>()) {
        action->setVisible(may);
    }
    for (const auto& [id, kept] : m_views) {
        kept.view->lookAtRights();
    }
}

} // namespace loadwarden::ui
