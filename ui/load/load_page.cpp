#include "ui/load/load_page.h"

#include "core/desk/loads_at_hand.h"
#include "ui/load/cycle_list.h"
#include "ui/load/load_view.h"
#include "ui/load/new_load_form.h"
#include "ui/look/text.h"
#include "ui/parts/empty_state.h"
#include "ui/records/record_paper.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <iterator>

#include <utility>

namespace loadwarden::ui {
namespace {

/// Cycles that are kept open: more than somebody goes to and fro between.
constexpr std::size_t mostViews = 12;

constexpr int widthOfList = 292;

constexpr int spareMs = 250; ///< until what was opened is painted

} // namespace

LoadPage::LoadPage(Workstation& workstation)
    : m_workstation(workstation),
      m_timer(workstation.desk.clock()),
      m_list(new CycleList(workstation.look)),
      m_paper(new RecordPaper(m_workstation)),
      m_stack(new QStackedWidget),
      m_empty(makeEmpty()),
      m_new(new NewLoadForm(workstation)),
      m_newScroll(new QScrollArea),
      m_reading(makeMuted(tr("Reading the load …")))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeSide());
    auto* const column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(m_paper);
    column->addWidget(m_stack, 1);
    row->addLayout(column, 1);
    connect(m_paper, &RecordPaper::says, this, &Page::says);
    m_stack->addWidget(m_empty);
    // A stack is as tall as the tallest in it: on a small screen the form is scrolled.
    m_newScroll->setWidgetResizable(true);
    m_newScroll->setFocusPolicy(Qt::NoFocus);
    m_newScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_new->setObjectName(QStringLiteral("rows"));
    m_newScroll->setWidget(m_new);
    m_stack->addWidget(m_newScroll);
    m_reading->setAlignment(Qt::AlignCenter);
    m_stack->addWidget(m_reading);
    auto* const action = new QAction(tr("New load or test"), this);
    action->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_N));
    connect(action, &QAction::triggered, this, [this] { wantNew(); });
    addAction(action);
    connect(m_list, &CycleList::chosen, this, [this](const QString& cycle) { open(cycle, {}); });
    connect(m_new, &NewLoadForm::left, this,
            [this] {
                m_showsNew = false;
                m_stack->setCurrentWidget(m_view == nullptr ? m_empty : m_reading);
                if (m_view != nullptr) {
                    see(m_view);
                }
            });
    connect(m_new, &NewLoadForm::reserved, this, [this](const QString& cycle, const QString& lot) {
        emit says(tr("Lot control number %1 is reserved.").arg(lot),
                  tr("Write it on what goes in, then record that here."));
        open(cycle, QStringLiteral("contents"));
    });
    connect(&m_timer, &MomentTimer::came, this, &LoadPage::renew);
    connect(&workstation.desk, &DeskLink::recorded, this, &LoadPage::renew);
    m_rest.setSingleShot(true);
    m_rest.setInterval(spareMs);
    connect(&m_rest, &QTimer::timeout, this, &LoadPage::makeSpare);
    m_rest.start();
}

QWidget* LoadPage::makeSide()
{
    auto* const side = new QWidget;
    side->setFixedWidth(widthOfList);
    auto* const column = new QVBoxLayout(side);
    column->setContentsMargins(space::large, space::medium, 0, space::medium);
    column->setSpacing(space::small);
    auto* const add = makeButton(tr("&New load or test"));
    add->setToolTip(tr("Ctrl+N"));
    connect(add, &QPushButton::clicked, this, [this] { wantNew(); });
    column->addWidget(add);
    column->addWidget(m_list, 1);
    return side;
}

QWidget* LoadPage::makeEmpty()
{
    auto* const empty = new EmptyState(
        tr("Here stands one load with its verdict"),
        tr("Choose a load at the left, scan its lot control number or the label of an item, or "
           "begin a new one: it is reserved, filled by scanning, started, ended, unloaded, read "
           "and signed here."),
        tr("New load or test"));
    connect(empty, &EmptyState::acted, this, [this] { wantNew(); });
    return empty;
}

bool LoadPage::isUpToDate() const
{
    return m_hasList && !m_isAsking && (m_view == nullptr || m_view->desk().isUpToDate());
}

void LoadPage::shown()
{
    // A load that is being opened is read before the list, and once.
    if (m_view != nullptr && !m_view->desk().isAsking()) {
        m_view->refresh();
    }
    ask();
}

void LoadPage::renew()
{
    if (m_view != nullptr) {
        m_view->refresh();
    }
    ask();
}

void LoadPage::ask()
{
    if (m_isAsking) {
        m_asksAgain = true;
        return;
    }
    m_isAsking = true;
    m_workstation.desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return cyclesAtHand(snapshot, office.entries(), office.zone(), office.now());
        },
        [this](const std::vector<CycleAtHand>& cycles) {
            m_isAsking = false;
            m_hasList = true;
            m_list->show(cycles, m_workstation.desk.now(), m_workstation.desk.style());
            if (std::exchange(m_asksAgain, false)) {
                ask();
            }
        },
        [this] { m_isAsking = false; });
}

LoadView* LoadPage::viewOf(const QString& cycle)
{
    const auto found = m_views.find(cycle);
    if (found != m_views.end()) {
        std::erase(m_order, cycle);
        m_order.push_back(cycle);
        return found->second;
    }
    LoadView* view = std::exchange(m_spare, nullptr);
    if (view == nullptr || m_spareDay != day()) {
        delete view; // its dates are of another day
        view = makeView();
    }
    view->begin(cycle);
    m_views.emplace(cycle, view);
    m_order.push_back(cycle);
    return view;
}

std::optional<Date> LoadPage::day() const
{
    const auto zone = m_workstation.desk.style().zone;
    return zone ? std::optional(zone->dateOf(m_workstation.desk.now())) : std::nullopt;
}

void LoadPage::makeSpare()
{
    letGo();
    if (m_spare == nullptr) {
        m_spareDay = day();
        m_spare = makeView();
        // What its style is takes longer than where it stands, and does not depend on the load.
        for (auto* const part : m_spare->findChildren<QWidget*>()) {
            part->ensurePolished();
        }
    }
}

LoadView* LoadPage::makeView()
{
    auto* const view = new LoadView(m_workstation, m_stack);
    connect(view, &LoadView::says, this, &Page::says);
    connect(view, &LoadView::wantsBiologicals, this,
            [this] { emit wantsArea(QStringLiteral("biologicals")); });
    connect(view, &LoadView::wantsCycle, this, [this](const QString& other) { open(other, {}); });
    connect(view, &LoadView::wantsNewLoad, this,
            [this](const QString& sterilizer, const QString& specification, const QString& note) {
                wantNew(sterilizer, specification, note);
            });
    connect(view, &LoadView::wantsPaper, this, [this, view] {
        m_paper->ask(std::make_shared<CycleRecord>(view->desk().sheet()->record));
    });
    connect(&view->desk(), &CycleDesk::changed, this, [this, view] {
        if (view == m_view) {
            see(view);
        }
    });
    m_stack->addWidget(view);
    return view;
}

void LoadPage::letGo()
{
    // The longest unseen first; not the newest, nor what something is typed in.
    for (auto each = m_order.begin();
         m_order.size() > mostViews && each != std::prev(m_order.end());) {
        LoadView* const view = m_views.at(*each);
        if (view == m_view || view->isHalfTyped()) {
            ++each;
            continue;
        }
        m_stack->removeWidget(view);
        view->deleteLater();
        m_views.erase(*each);
        each = m_order.erase(each);
    }
}

void LoadPage::open(const QString& cycle, const QString& thing)
{
    m_showsNew = false;
    m_paper->hide();
    m_view = viewOf(cycle);
    m_list->mark(cycle);
    m_stack->setCurrentWidget(m_reading); // never another load under this one's mark
    m_view->refresh();
    m_view->goTo(thing == cycle ? QString() : thing);
    see(m_view);
}

void LoadPage::see(LoadView* view)
{
    const LoadSheet* const sheet = view->desk().sheet();
    if (sheet == nullptr || m_showsNew) {
        return; // what stood there stays until it is read
    }
    m_stack->setCurrentWidget(view);
    m_rest.start();
    m_timer.wait(sheet->view().decision.nextChangeAt);
}

void LoadPage::wantNew(const QString& sterilizer, const QString& specification, const QString& note)
{
    m_showsNew = true;
    m_new->ask(sterilizer, specification, note);
    m_stack->setCurrentWidget(m_newScroll);
    m_new->focusFirst();
}

void LoadPage::beginTest(const QString& sterilizer)
{
    wantNew(sterilizer);
    m_new->wantPurpose(Purpose::bowieDick);
}

bool LoadPage::takeScan(const QString& text, const LookedUp& found)
{
    return m_view != nullptr && m_stack->currentWidget() == m_view && m_view->takeScan(text, found);
}

} // namespace loadwarden::ui
