#include "ui/biologicals/biologicals_page.h"

#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "ui/biologicals/bi_text.h"
#include "ui/biologicals/positive_view.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/clock_text.h"
#include "ui/parts/empty_state.h"
#include "ui/parts/rows_scroll.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <QAction>
#include <QApplication>
#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <map>
#include <utility>

namespace loadwarden::ui {
BiologicalsPage::BiologicalsPage(Workstation& workstation)
    : m_workstation(workstation),
      m_timer(workstation.desk.clock()),
      m_count(makeMuted({})),
      m_asOf(makeMuted({}, false)),
      m_scroll(makeRowsScroll(this)),
      m_column(nullptr)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    m_column = new QVBoxLayout(m_scroll->widget());
    m_column->setContentsMargins(0, 0, 0, space::medium);
    m_column->setSpacing(0);
    column->addWidget(m_scroll, 1);

    const auto key = [this](const QString& name, Qt::Key keyOf, BiSaying saying) {
        auto* const action = new QAction(name, this);
        action->setShortcut(QKeySequence(keyOf));
        action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        connect(action, &QAction::triggered, this, [this, saying] { sayOfFocused(saying); });
        addAction(action);
    };
    key(tr("Read the chosen indicator: growth"), Qt::Key_G, BiSaying::growth);
    key(tr("Read the chosen indicator: no growth"), Qt::Key_N, BiSaying::noGrowth);
    key(tr("Read the chosen indicator: unclear"), Qt::Key_U, BiSaying::unclear);
    connect(&m_timer, &MomentTimer::came, this, [this] {
        const Instant now = m_workstation.desk.now();
        if (m_made && m_made->nextChangeAt && *m_made->nextChangeAt <= now) {
            ask();
        } else {
            tellTime();
        }
    });
    connect(&workstation.desk, &DeskLink::recorded, this, &BiologicalsPage::ask);
    // It rings also while another page is seen; what that page needs is asked for before.
    QTimer::singleShot(0, this, &BiologicalsPage::ask);
}

QWidget* BiologicalsPage::makeHead()
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(space::page, space::medium, space::page, space::small);
    row->setSpacing(space::large);
    for (QLabel* const label : {m_count, m_asOf}) {
        label->setContentsMargins(0, 0, 0, space::hair); // on the line of the title
    }
    row->addWidget(makeLabel(tr("Biological indicators"), Type::title, false));
    row->addWidget(m_count, 1, Qt::AlignBottom); // wraps: it counts up to five kinds of vials
    row->addWidget(m_asOf, 0, Qt::AlignBottom);
    return head;
}

void BiologicalsPage::ask()
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
            return biologicalsOf(snapshot, office.entries(), office.now());
        },
        [this](Biologicals made) {
            m_isAsking = false;
            show(std::move(made));
            if (std::exchange(m_asksAgain, false)) {
                ask();
            }
        },
        [this] { m_isAsking = false; });
}

void BiologicalsPage::show(Biologicals made)
{
    m_made = std::move(made);
    ringForDue();
    if (isSomebodySaying()) {
        m_showsLater = true; // nothing moves under somebody's hand
        tellTime();
        return;
    }
    showNow();
}

bool BiologicalsPage::isSomebodySaying() const
{
    return std::ranges::any_of(m_rows, &BiRow::isAsking);
}

void BiologicalsPage::showNow()
{
    m_showsLater = false;
    const int scrolled = m_scroll->verticalScrollBar()->value();
    QString hadFocus;
    for (const auto* const button : m_scroll->findChildren<QPushButton*>()) {
        hadFocus = button->hasFocus() ? button->accessibleName() : hadFocus;
    }
    clearLayout(m_column);
    m_rows.clear();
    for (const BiPositive& positive : m_made->positives) {
        auto* const view =
            new PositiveView(m_workstation.look, positive, m_workstation.desk.style());
        connect(view, &PositiveView::wantsCycle, this,
                [this](const QString& cycle) { emit wantsCycle(cycle, {}); });
        m_column->addWidget(view);
        m_column->addSpacing(space::small);
    }
    for (const BiGroup& group : m_made->groups) {
        addGroup(group);
    }
    if (m_made->groups.empty()) {
        m_column->addWidget(
            new EmptyState(
                m_made->positives.empty() ? tr("No biological indicator waits for anybody")
                                          : tr("No other biological indicator waits for anybody"),
                tr("Here stand the vials of loads and tests that have ended, beside the unexposed "
                   "control of the same lot: activate them, put both into the incubator, and read "
                   "them "
                   "when they are due. A vial comes here with the process challenge device (PCD) "
                   "that "
                   "is placed in a load.")),
            1);
    } else {
        m_column->addStretch();
    }
    tellTime();
    settleLayouts(m_scroll->widget());
    m_scroll->verticalScrollBar()->setValue(scrolled);
    if (const QString wanted = std::exchange(m_goTo, {}); !wanted.isEmpty()) {
        const auto row = std::ranges::find(m_rows, wanted,
                                           [](const BiRow* each) { return text(each->test().id); });
        if (row != m_rows.end()) {
            m_scroll->ensureWidgetVisible(*row);
            (*row)->focusFirst();
            m_focusRow = -1;
            return;
        }
    }
    if (const int row = std::exchange(m_focusRow, -1); row >= 0 && !m_rows.empty()) {
        m_rows[std::min(static_cast<std::size_t>(row), m_rows.size() - 1)]->focusFirst();
        return;
    }
    for (auto* const button : m_scroll->findChildren<QPushButton*>()) {
        if (!hadFocus.isEmpty() && button->isVisible() && button->accessibleName() == hadFocus) {
            button->setFocus();
        }
    }
}

void BiologicalsPage::addGroup(const BiGroup& group)
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(space::page, space::medium, space::page, space::small);
    row->setSpacing(space::large);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(
        makeLabel(group.lotNumber.empty()
                      ? text(group.productName)
                      : tr("%1, lot %2").arg(text(group.productName), text(group.lotNumber)),
                  Type::heading));
    auto* const where = makeMuted(
        group.incubator.empty() ? tr("Not in an incubator yet")
        : group.isControlDead   ? tr("%1. The control did not grow: find out why before more vials "
                                       "of this lot are used, and have a lead judge the loads.")
                                    .arg(text(group.incubatorName))
        : group.isWithoutControl
            ? tr("%1. No control is beside them: prepare one of the same lot, or they are void.")
                  .arg(text(group.incubatorName))
            : text(group.incubatorName));
    if (group.isControlDead || group.isWithoutControl) {
        where->setProperty("tone", group.isControlDead ? "bad" : "waiting");
    }
    words->addWidget(where);
    row->addLayout(words, 1);
    if (group.controls.empty() && !group.product.empty()) {
        auto* const prepare = makeButton(tr("Prepare a control"));
        prepare->setAccessibleName(tr("Prepare a control of lot %1").arg(text(group.lotNumber)));
        connect(prepare, &QPushButton::clicked, this, [this, group] { prepareControl(group); });
        row->addWidget(prepare);
    }
    m_column->addWidget(head);
    int number = 0;
    for (const BiTest& test : group.controls) {
        ++number;
        addRow(group, test,
               group.controls.size() == 1 ? tr("Control") : tr("Control %1").arg(number));
    }
    std::map<std::string, int> seen;
    for (const BiTest& test : group.vials) {
        const auto ofLoad = std::ranges::count(group.vials, test.cycle, &BiTest::cycle);
        const int count = ++seen[test.cycle];
        addRow(group, test,
               ofLoad == 1 ? tr("Vial of %1").arg(text(test.lot))
                           : tr("Vial %1 of %2").arg(count).arg(text(test.lot)));
    }
}

void BiologicalsPage::addRow(const BiGroup& group, const BiTest& test, const QString& name)
{
    const QString full = test.isControl && !group.lotNumber.empty()
                             ? tr("%1, lot %2").arg(name, text(group.lotNumber))
                             : name;
    auto* const row =
        new BiRow(m_workstation.look, test, full, m_made->incubators, m_workstation.desk.style());
    connect(row, &BiRow::said, this, [this, row](BiSaying saying, const QString& incubator) {
        keepPlace(static_cast<int>(std::ranges::find(m_rows, row) - m_rows.begin()));
        said(row->test(), row->name(), saying, incubator);
    });
    connect(row, &BiRow::asked, this, [this, row] { seeQuestion(row); });
    connect(row, &BiRow::left, this, [this] {
        if (m_showsLater) {
            ask();
        }
    });
    connect(row, &BiRow::wantsCycle, this,
            [this, cycle = text(test.cycle)] { emit wantsCycle(cycle, {}); });
    m_rows.push_back(row);
    m_column->addWidget(row);
}

void BiologicalsPage::goTo(const QString& test)
{
    m_goTo = test;
    if (!m_isAsking) {
        ask();
    }
}

void BiologicalsPage::seeQuestion(BiRow* row)
{
    settleLayouts(m_scroll->widget());
    m_scroll->ensureWidgetVisible(row->question(), 0, space::medium);
}

void BiologicalsPage::keepPlace(int row)
{
    m_focusRow = row;
}

void BiologicalsPage::tellTime()
{
    const Instant now = m_workstation.desk.now();
    std::optional<Instant> next = m_made->nextChangeAt;
    int due = 0;
    int waiting = 0;
    int other = 0;
    for (BiRow* const row : m_rows) {
        row->tell(now);
        const BiTest& test = row->test();
        due += test.isDue(now) ? 1 : 0;
        waiting += test.step == BiStep::read && !test.isDue(now) ? 1 : 0;
        other += test.step != BiStep::read && test.step != BiStep::none ? 1 : 0;
        if (test.step == BiStep::read && test.dueAt) {
            const auto changes = countdownChangesAt(*test.dueAt, now);
            next = changes && (!next || *changes < *next) ? changes : next;
        }
    }
    // Every row that waits for anybody is counted once, controls too.
    QStringList counts{tr("to be read now: %1").arg(due), tr("incubating: %1").arg(waiting)};
    if (other > 0) {
        counts.insert(1, tr("to be prepared or looked at: %1").arg(other));
    }
    m_count->setText(
        tr("Vials and controls %1", "how many of which").arg(counts.join(QStringLiteral(", "))));
    m_asOf->setText(tr("as of %1").arg(clockText(now, m_workstation.desk.about().zone)));
    m_timer.wait(next);
}

void BiologicalsPage::ringForDue()
{
    bool isNew = false;
    for (const BiGroup& group : m_made->groups) {
        for (const auto* const tests : {&group.controls, &group.vials}) {
            for (const BiTest& test : *tests) {
                isNew = (test.isDue(m_made->now) && m_rung.insert(test.id).second) || isNew;
            }
        }
    }
    if (isNew) {
        m_chime.ring();
    }
}

void BiologicalsPage::sayOfFocused(BiSaying saying)
{
    for (BiRow* const row : m_rows) {
        if (row->isAncestorOf(QApplication::focusWidget())) {
            row->ask(saying);
            return;
        }
    }
}

void BiologicalsPage::said(const BiTest& test, const QString& name, BiSaying saying,
                           const QString& incubator)
{
    std::vector<std::string> subjects{test.id};
    if (!test.cycle.empty()) {
        subjects.push_back(test.cycle);
    }
    switch (saying) {
    case BiSaying::activated:
        record(BiologicalActivated{}, std::move(subjects), tr("%1: activated.").arg(name));
        break;
    case BiSaying::incubated:
        subjects.push_back(incubator.toStdString());
        record(BiologicalIncubated{}, std::move(subjects), tr("%1: in the incubator.").arg(name));
        break;
    case BiSaying::changed:
    case BiSaying::unchanged:
        record(ProcessIndicatorRead{saying == BiSaying::changed ? ProcessIndicator::changed
                                                                : ProcessIndicator::unchanged},
               std::move(subjects), tr("%1: recorded.").arg(name));
        break;
    case BiSaying::growth: read(test, name, Seen::growth); break;
    case BiSaying::noGrowth: read(test, name, Seen::noGrowth); break;
    case BiSaying::unclear: read(test, name, Seen::unclear); break;
    }
}

void BiologicalsPage::read(const BiTest& test, const QString& name, Seen seen)
{
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), id = test.id, cycle = test.cycle,
         seen](Office& office) { return readBiological(office, who, id, cycle, seen); },
        [this, name, seen](const OrRefusal<BiAnswer>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refused(*refusal);
                return;
            }
            const BiAnswer& read = std::get<BiAnswer>(answer);
            const QString what = seen == Seen::growth     ? tr("growth")
                                 : seen == Seen::noGrowth ? tr("no growth")
                                                          : tr("unclear");
            const QString next =
                !read.counts && read.dueAt
                    ? tr("That does not count. Read it again from %1 on.")
                          .arg(text(sayTime(*read.dueAt, m_workstation.desk.style())))
                : !read.counts          ? tr("That does not count.")
                : read.isDeadControl    ? tr("The vials beside it are void. Tell a lead.")
                : seen == Seen::unclear ? tr("A second person reads it.")
                                        : QString();
            emit says(tr("%1: %2 is recorded.").arg(name, what), next);
        });
}

void BiologicalsPage::record(AnyAct act, std::vector<std::string> subjects, const QString& done)
{
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(),
         toRecord = ToRecord{.act = std::move(act), .subjects = std::move(subjects)}](
            Office& office) { return Recorder(office).record(who, toRecord); },
        [this, done](const OrRefusal<Appended>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refused(*refusal);
                return;
            }
            emit says(done, {});
        });
}

void BiologicalsPage::prepareControl(const BiGroup& group)
{
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), product = group.product,
         lot = group.productLot](Office& office) {
            const std::string id = office.place().ids.next("bc");
            return Recorder(office).record(
                who, {.act = ControlPrepared{product, lot, {}}, .subjects = {id}});
        },
        [this](const OrRefusal<Appended>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refused(*refusal);
                return;
            }
            emit says(tr("A control is prepared."),
                      tr("Activate it and put it into the incubator beside the vials."));
        });
}

void BiologicalsPage::refused(const Refusal& refusal)
{
    const Told told = say(refusal, m_workstation.desk.style());
    emit says(text(told.says), text(told.next));
    if (m_showsLater) {
        showNow();
    }
}

} // namespace loadwarden::ui
