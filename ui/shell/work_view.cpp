#include "ui/shell/work_view.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/glyph_view.h"
#include "ui/shell/role_text.h"
#include "ui/shell/session.h"

#include <QAction>
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {

WorkView::WorkView(Workstation workstation, QWidget* parent)
    : QWidget(parent),
      m_workstation(workstation),
      m_stack(new QStackedWidget),
      m_facility(makeMuted({}, false)),
      m_person(makeButton({})),
      m_pages(areas().size(), nullptr)
{
    setObjectName(QStringLiteral("page"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeBezel());
    column->addWidget(m_stack, 1);
    column->addWidget(makeFoot());
    nameWho();
    connect(&m_workstation.session, &Session::entered, this, &WorkView::nameWho);
    showArea(0);
    constexpr int restMs = 60; // until the first page is painted
    QTimer::singleShot(restMs, this, &WorkView::makeRest);
}

QWidget* WorkView::makeBezel()
{
    auto* const bezel = new QWidget;
    bezel->setObjectName(QStringLiteral("bezel"));
    bezel->setAttribute(Qt::WA_StyledBackground);
    auto* const row = new QHBoxLayout(bezel);
    row->setContentsMargins(space::large, 0, space::large, 0);
    row->setSpacing(0);
    row->addWidget(new GlyphView(m_workstation.look, Glyph::loadwarden, ToneOf::bezel, 28));
    row->addSpacing(space::large);
    for (int i = 0; i < areaCount(); ++i) {
        m_tabs.push_back(makeTab(i));
        row->addWidget(m_tabs.back());
    }
    row->addStretch();
    m_facility->setText(text(m_workstation.desk.about().facility));
    m_facility->hide(); // until it is known that there is room for it
    row->addWidget(m_facility);
    row->addSpacing(space::large);
    m_person->setObjectName(QStringLiteral("person"));
    connect(m_person, &QPushButton::clicked, this, &WorkView::wantsChangeOfPerson);
    row->addWidget(m_person);
    return bezel;
}

void WorkView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    // Where there is not room for all, the facility's name gives way.
    int needed = m_facility->sizeHint().width() + m_person->sizeHint().width() + 6 * space::large;
    for (const QPushButton* const tab : m_tabs) {
        needed += tab->sizeHint().width();
    }
    m_facility->setVisible(needed <= width());
}

QPushButton* WorkView::makeTab(int index)
{
    const Area& area = areas()[static_cast<std::size_t>(index)];
    auto* const tab = makeButton(area.name());
    tab->setObjectName(QStringLiteral("area"));
    tab->setCheckable(true);
    connect(tab, &QPushButton::clicked, this, [this, index] { showArea(index); });
    QString name = area.name();
    auto* const action = new QAction(tr("Go to the page %1").arg(name.remove(u'&')), this);
    action->setShortcut(area.shortcut);
    connect(action, &QAction::triggered, this, [this, index] { showArea(index); });
    addAction(action);
    return tab;
}

Page& WorkView::page(int index)
{
    Page*& page = m_pages[static_cast<std::size_t>(index)];
    if (page != nullptr) {
        return *page;
    }
    page = areas()[static_cast<std::size_t>(index)].make(m_workstation);
    page->setObjectName(QStringLiteral("page"));
    page->setAttribute(Qt::WA_StyledBackground);
    connect(page, &Page::says, this, &WorkView::says);
    connect(page, &Page::wantsTest, this, &WorkView::beginTest);
    connect(page, &Page::wantsArea, this,
            [this](const QString& id, const QString& thing) { showArea(id, thing); });
    connect(page, &Page::wantsCycle, this, [this](const QString& cycle, const QString& item) {
        if (!openCycle(cycle, item)) {
            emit says(tr("This version shows no loads on a page of their own."),
                      tr("On the command line: loadwarden-cli load show %1").arg(cycle));
        }
    });
    m_stack->addWidget(page);
    return *page;
}

bool WorkView::isWhole() const
{
    return std::ranges::find(m_pages, nullptr) == m_pages.end();
}

void WorkView::makeRest()
{
    // One a turn of the event loop: nobody waits for all of them.
    const auto next = std::ranges::find(m_pages, nullptr);
    if (next != m_pages.end()) {
        Page& made = page(static_cast<int>(next - m_pages.begin()));
        // It is seen sooner when it has its size and its style already.
        made.resize(m_stack->size());
        for (auto* const part : made.findChildren<QWidget*>()) {
            part->ensurePolished();
        }
        QTimer::singleShot(0, this, &WorkView::makeRest);
    }
}

QWidget* WorkView::makeFoot()
{
    auto* const foot = new QWidget;
    foot->setObjectName(QStringLiteral("foot"));
    foot->setAttribute(Qt::WA_StyledBackground);
    auto* const row = new QHBoxLayout(foot);
    row->setContentsMargins(space::page, space::hair, space::page, space::small);
    row->addWidget(makeMuted(text(caution())));
    return foot;
}

void WorkView::nameWho()
{
    const Person& person = m_workstation.session.person();
    m_person->setText(
        tr("%1, %2", "a person, then the role").arg(text(person.name), roleText(person.role)));
    m_person->setAccessibleName(tr("%1 works here. Change the person.").arg(text(person.name)));
    m_person->setToolTip(tr("Change the person (Ctrl+Shift+P, or scan a badge)"));
}

void WorkView::showArea(int index)
{
    for (int i = 0; i < areaCount(); ++i) {
        m_tabs[static_cast<std::size_t>(i)]->setChecked(i == index);
    }
    m_stack->setCurrentWidget(&page(index));
    refresh();
}

void WorkView::showArea(const QString& id, const QString& thing)
{
    for (int i = 0; i < areaCount(); ++i) {
        if (id == QLatin1String(areas()[static_cast<std::size_t>(i)].id)) {
            showArea(i);
            if (!thing.isEmpty()) {
                m_pages[static_cast<std::size_t>(i)]->goTo(thing);
            }
        }
    }
}

void WorkView::beginTest(const QString& sterilizer)
{
    for (int i = 0; i < areaCount(); ++i) {
        const Area& area = areas()[static_cast<std::size_t>(i)];
        if (area.beginTest != nullptr) {
            showArea(i);
            area.beginTest(page(i), sterilizer);
        }
    }
}

bool WorkView::takeScan(const QString& text, const LookedUp& found)
{
    auto* const page = qobject_cast<Page*>(m_stack->currentWidget());
    return page != nullptr && page->takeScan(text, found);
}

int WorkView::area() const
{
    const auto found = std::ranges::find(m_pages, m_stack->currentWidget());
    return static_cast<int>(found - m_pages.begin());
}

void WorkView::refresh()
{
    if (auto* const page = qobject_cast<Page*>(m_stack->currentWidget())) {
        page->shown();
    }
}

void WorkView::lookAtClock()
{
    for (Page* const page : m_pages) {
        if (page != nullptr) {
            page->lookAtClock();
        }
    }
}

bool WorkView::openCycle(const QString& cycle, const QString& item)
{
    for (int i = 0; i < areaCount(); ++i) {
        const Area& area = areas()[static_cast<std::size_t>(i)];
        if (area.open != nullptr) {
            // Asked for before anything else that the page asks for when it is shown.
            area.open(page(i), cycle, item);
            showArea(i);
            return true;
        }
    }
    return false;
}

} // namespace loadwarden::ui
