#include "ui/shell/work_view.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/glyph_view.h"
#include "ui/shell/role_text.h"
#include "ui/shell/session.h"

#include <QAction>
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace loadwarden::ui {

WorkView::WorkView(Workstation workstation, QWidget* parent)
    : QWidget(parent),
      m_workstation(workstation),
      m_stack(new QStackedWidget),
      m_facility(makeMuted({}, false)),
      m_person(makeButton({}))
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
    for (const Area& area : areas()) {
        addArea(area);
        row->addWidget(m_tabs.back());
    }
    row->addStretch();
    m_facility->setText(text(m_workstation.desk.about().facility));
    row->addWidget(m_facility);
    row->addSpacing(space::large);
    m_person->setObjectName(QStringLiteral("person"));
    connect(m_person, &QPushButton::clicked, this, &WorkView::wantsChangeOfPerson);
    row->addWidget(m_person);
    return bezel;
}

void WorkView::addArea(const Area& area)
{
    const int index = areaCount();
    auto* const tab = makeButton(area.name());
    tab->setObjectName(QStringLiteral("area"));
    tab->setCheckable(true);
    connect(tab, &QPushButton::clicked, this, [this, index] { showArea(index); });
    QString name = area.name();
    auto* const action = new QAction(tr("Go to the page %1").arg(name.remove(u'&')), this);
    action->setShortcut(area.shortcut);
    connect(action, &QAction::triggered, this, [this, index] { showArea(index); });
    addAction(action);
    m_tabs.push_back(tab);
    Page* const page = area.make(m_workstation);
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
    m_pages.push_back(page);
    m_stack->addWidget(page);
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
    m_stack->setCurrentIndex(index);
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
            area.beginTest(*m_pages[static_cast<std::size_t>(i)], sterilizer);
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
    return m_stack->currentIndex();
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
        page->lookAtClock();
    }
}

bool WorkView::openCycle(const QString& cycle, const QString& item)
{
    for (int i = 0; i < areaCount(); ++i) {
        const Area& area = areas()[static_cast<std::size_t>(i)];
        if (area.open != nullptr) {
            showArea(i);
            area.open(*m_pages[static_cast<std::size_t>(i)], cycle, item);
            return true;
        }
    }
    return false;
}

} // namespace loadwarden::ui
