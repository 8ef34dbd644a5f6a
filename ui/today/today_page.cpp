#include "ui/today/today_page.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/clock_text.h"
#include "ui/parts/empty_state.h"
#include "ui/parts/glyph_view.h"
#include "ui/shell/desk_link.h"
#include "ui/today/need_row.h"
#include "ui/today/sterilizer_row.h"

#include <QApplication>
#include <QFrame>
#include <QHBoxLayout>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostRows = 40; ///< before somebody asks for all of them

QScrollArea* makeScroll()
{
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    return scroll;
}

/// The dashed bar of a load that nobody has signed, as the lines of the day have it.
class OpenBar : public QWidget {
public:
    explicit OpenBar(Look& look) : m_look(look)
    {
        setFixedSize(26, 18);
        connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
    }

protected:
    void paintEvent(QPaintEvent* /*event*/) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const Tone& tone = m_look.colours().neutral;
        painter.setPen(QPen(tone.ink, 1.5, Qt::DashLine));
        painter.setBrush(tone.soft);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4.0, 4.0);
    }

private:
    Look& m_look;
};

} // namespace

TodayPage::TodayPage(Workstation& workstation)
    : m_workstation(workstation),
      m_timer(workstation.desk.clock()),
      m_day(makeLabel({}, Type::title, false)),
      m_count(makeMuted({}, false)),
      m_asOf(makeMuted({}, false)),
      m_scroll(makeScroll()),
      m_rows(nullptr),
      m_strip(makeScroll()),
      m_sterilizers(nullptr),
      m_pointed(makeLabel({}, Type::body, false)),
      m_legend(makeLegend())
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    auto* const rows = new QWidget;
    rows->setObjectName(QStringLiteral("rows"));
    m_rows = new QVBoxLayout(rows);
    m_rows->setContentsMargins(0, 0, 0, space::medium);
    m_rows->setSpacing(0);
    m_scroll->setWidget(rows);
    column->addWidget(m_scroll, 1);
    column->addWidget(makeStrip());
    connect(&m_timer, &MomentTimer::came, this, &TodayPage::ask);
    connect(&workstation.desk, &DeskLink::recorded, this, &TodayPage::ask);
    connect(&workstation.look, &Look::changed, this, [this] {
        if (m_today) {
            showSterilizers(); // rows are as tall as their text
        }
    });
}

QWidget* TodayPage::makeHead()
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(space::page, space::medium, space::page, space::small);
    row->setSpacing(space::large);
    for (QLabel* const label : {m_count, m_asOf}) {
        label->setContentsMargins(0, 0, 0, space::hair); // on the line of the title
    }
    row->addWidget(m_day);
    row->addWidget(m_count, 0, Qt::AlignBottom);
    row->addStretch();
    row->addWidget(m_asOf, 0, Qt::AlignBottom);
    return head;
}

QWidget* TodayPage::makeStrip()
{
    auto* const strip = new QFrame;
    strip->setObjectName(QStringLiteral("strip"));
    auto* const column = new QVBoxLayout(strip);
    column->setContentsMargins(space::page, space::small, space::page, space::small);
    column->setSpacing(0);
    auto* const head = new QHBoxLayout;
    head->setSpacing(space::large);
    head->addWidget(makeLabel(tr("Sterilizers"), Type::heading, false));
    head->addStretch();
    head->addWidget(m_pointed);
    head->addWidget(m_legend);
    column->addLayout(head);
    auto* const rows = new QWidget;
    rows->setObjectName(QStringLiteral("rows"));
    m_sterilizers = new QVBoxLayout(rows);
    m_sterilizers->setContentsMargins(0, 0, 0, 0);
    m_sterilizers->setSpacing(0);
    m_strip->setWidget(rows);
    column->addWidget(m_strip);
    return strip;
}

QWidget* TodayPage::makeLegend()
{
    auto* const legend = new QWidget;
    auto* const row = new QHBoxLayout(legend);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::hair);
    const auto add = [&](Glyph glyph, ToneOf tone, const QString& word) {
        row->addWidget(new GlyphView(m_workstation.look, glyph, tone, 18));
        row->addWidget(makeMuted(word, false));
        row->addSpacing(space::small);
    };
    for (const Verdict verdict : {Verdict::release, Verdict::quarantine, Verdict::reprocess}) {
        add(glyphOf(verdict), toneOf(verdict), text(say(verdict)));
    }
    add(Glyph::running, ToneOf::neutral, tr("Running"));
    row->addWidget(new OpenBar(m_workstation.look));
    row->addWidget(makeMuted(tr("Not signed"), false));
    row->addSpacing(space::small);
    add(Glyph::passed, ToneOf::good, tr("Test passed"));
    add(Glyph::failed, ToneOf::bad, tr("Test failed"));
    return legend;
}

void TodayPage::shown()
{
    ask();
}

void TodayPage::ask()
{
    if (m_isAsking) {
        m_asksAgain = true;
        return;
    }
    m_isAsking = true;
    m_workstation.desk.ask(
        this, [kept = m_workstation.desk.keptToday()](Office& office) { return kept->of(office); },
        [this](Today today) {
            m_isAsking = false;
            show(std::move(today));
            if (std::exchange(m_asksAgain, false)) {
                ask();
            }
        },
        [this] { m_isAsking = false; });
}

void TodayPage::show(Today today)
{
    m_today = std::move(today);
    m_timer.wait(m_today->nextChangeAt);
    m_day->setText(dayText(m_today->day));
    m_count->setText(tr("Loads started today: %1, of them signed: %2", "how many, how many of them")
                         .arg(m_today->loadsToday)
                         .arg(m_today->signedToday));
    m_asOf->setText(tr("as of %1").arg(clockText(m_today->now, m_workstation.desk.about().zone)));
    showNeeds();
    showSterilizers();
}

void TodayPage::showNeeds()
{
    QString hadFocus;
    for (const NeedRow* const row : m_needRows) {
        hadFocus = row->action()->hasFocus() ? row->about() : hadFocus;
    }
    const int scrolled = m_scroll->verticalScrollBar()->value();
    clearLayout(m_rows);
    m_needRows.clear();
    if (m_today->sterilizers.empty()) {
        m_rows->addWidget(new EmptyState(
            tr("Here stands what needs you now"),
            tr("Biological indicators that are due, loads that wait for a reading, a review or a "
               "signature, and air-removal tests not yet run. First register a sterilizer: "
               "Settings, Sterilizers.")));
    } else {
        addGroup(tr("Needs somebody now"), tr("Nothing needs anybody now."), true);
        addGroup(tr("Coming"), {}, false);
    }
    m_rows->addStretch();
    for (const NeedRow* const row : m_needRows) {
        if (!hadFocus.isEmpty() && row->about() == hadFocus) {
            row->action()->setFocus();
        }
    }
    m_scroll->verticalScrollBar()->setValue(scrolled);
}

void TodayPage::addGroup(const QString& heading, const QString& otherwise, bool isForNow)
{
    std::vector<Need> group;
    std::ranges::copy_if(m_today->needs, std::back_inserter(group), [&](const Need& need) {
        return loadwarden::isForNow(need.kind) == isForNow;
    });
    if (group.empty() && otherwise.isEmpty()) {
        return;
    }
    auto* const title = makeLabel(
        group.empty() ? otherwise
                      : tr("%1 (%2)", "a heading and how many").arg(heading).arg(group.size()),
        Type::heading);
    title->setContentsMargins(space::page, space::medium, space::page, space::small);
    m_rows->addWidget(title);
    const std::size_t most = m_showsAll ? group.size() : std::min(group.size(), mostRows);
    for (std::size_t i = 0; i < most; ++i) {
        auto* const row =
            new NeedRow(m_workstation.look, group[i], sterilizerName(group[i].sterilizer),
                        m_workstation.desk.style());
        connect(row, &NeedRow::acted, this, [this, need = group[i]] { act(need); });
        if (isForNow && i == 0) {
            row->setFirst();
        }
        m_needRows.push_back(row);
        m_rows->addWidget(row);
    }
    if (most < group.size()) {
        auto* const all = makeButton(tr("Show all %1").arg(group.size()), ButtonKind::quiet);
        connect(all, &QPushButton::clicked, this, [this] {
            m_showsAll = true;
            showNeeds();
        });
        m_rows->addWidget(all, 0, Qt::AlignLeft);
    }
}

void TodayPage::showSterilizers()
{
    const std::vector<SterilizerDay>& days = m_today->sterilizers;
    if (m_sterilizerRows.size() != days.size()) {
        clearLayout(m_sterilizers);
        m_sterilizerRows.clear();
        for (std::size_t i = 0; i < days.size(); ++i) {
            auto* const row = new SterilizerRow(m_workstation.look);
            connect(row, &SterilizerRow::chosen, this,
                    [this](const QString& cycle) { emit wantsCycle(cycle, {}); });
            connect(row, &SterilizerRow::pointedAt, this, [this](const QString& what) {
                m_pointed->setText(what);
                m_legend->setVisible(what.isEmpty());
            });
            m_sterilizerRows.push_back(row);
            m_sterilizers->addWidget(row);
        }
    }
    for (std::size_t i = 0; i < days.size(); ++i) {
        m_sterilizerRows[i]->show(days[i], *m_today, m_workstation.desk.style());
    }
    m_strip->parentWidget()->setVisible(!days.empty());
    sizeStrip();
}

void TodayPage::sizeStrip()
{
    // The strip never takes more than a good part of the page, whatever the text's size.
    int wanted = 0;
    for (const SterilizerRow* const row : m_sterilizerRows) {
        wanted +=
            std::max(row->sizeHint().height(), row->heightForWidth(m_strip->viewport()->width()));
    }
    m_strip->setFixedHeight(std::min(wanted, height() * 3 / 8));
}

void TodayPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    sizeStrip();
}

void TodayPage::act(const Need& need)
{
    switch (need.kind) {
    case NeedKind::testNotRun: emit wantsTest(text(need.sterilizer)); return;
    case NeedKind::lotExpires:
        emit wantsArea(QStringLiteral("settings"), QStringLiteral("products"));
        return;
    case NeedKind::lotRecalled: emit wantsArea(QStringLiteral("records")); return;
    case NeedKind::growth:
    case NeedKind::controlDead:
    case NeedKind::biologicalDue:
    case NeedKind::biologicalComing:
        emit wantsArea(QStringLiteral("biologicals"), text(need.subject));
        return;
    case NeedKind::signature:
    case NeedKind::failed:
    case NeedKind::evidenceWorse:
    case NeedKind::evidenceChanged:
        emit wantsCycle(text(need.cycle), QStringLiteral("sign"));
        return;
    case NeedKind::testNotRead:
        emit wantsCycle(text(need.cycle), text(std::string(textOf(Key::testNotRead))));
        return;
    case NeedKind::testFailed:
    case NeedKind::review:
    case NeedKind::printout:
    case NeedKind::reading:
    case NeedKind::otherEvidence:
    case NeedKind::aerating: break;
    }
    // To the field that settles what comes first.
    emit wantsCycle(text(need.cycle), need.findings.empty()
                                          ? text(need.subject)
                                          : text(std::string(textOf(need.findings.front().key))));
}

QString TodayPage::sterilizerName(const std::string& id) const
{
    const auto found = std::ranges::find(m_today->sterilizers, id, &SterilizerDay::id);
    return found == m_today->sterilizers.end() ? QString() : text(found->name);
}

} // namespace loadwarden::ui
