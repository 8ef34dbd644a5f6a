#include "ui/load/load_view.h"

#include "core/desk/planned_program.h"
#include "core/desk/sheet_part.h"
#include "ui/load/aeration_section.h"
#include "ui/load/contents_section.h"
#include "ui/load/cycle_section.h"
#include "ui/load/emergency_form.h"
#include "ui/load/further_section.h"
#include "ui/load/history_section.h"
#include "ui/load/immediate_section.h"
#include "ui/load/indicator_section.h"
#include "ui/load/later_strip.h"
#include "ui/load/load_text.h"
#include "ui/load/package_section.h"
#include "ui/load/printout_section.h"
#include "ui/load/review_form.h"
#include "ui/load/test_section.h"
#include "ui/load/trace_section.h"
#include "ui/load/verdict_band.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/reasons_list.h"
#include "ui/parts/rows_scroll.h"
#include "ui/parts/time_edit.h"

#include <QApplication>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QMimeData>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>
#include <QUrl>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int widthOfReasons = 380;

QString lowered(QString words)
{
    words[0] = words[0].toLower();
    return words;
}

} // namespace

LoadView::LoadView(Workstation& workstation, QWidget* parent)
    : QWidget(parent),
      m_desk(new CycleDesk(workstation, this)),
      m_band(new VerdictBand(*m_desk)),
      m_later(new LaterStrip(*m_desk)),
      m_reasons(new ReasonsList(workstation.look)),
      m_reasonsHead(makeLabel({}, Type::heading)),
      m_reasonsNote(makeMuted(tr("Its packages are looked at once aeration has ended: nothing is "
                                 "taken out before."))),
      m_review(new ReviewForm(*m_desk)),
      m_emergency(new EmergencyForm(*m_desk)),
      m_scroll(nullptr)
{
    setAcceptDrops(true);
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_band);
    column->addWidget(m_later);
    auto* const row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeReasons());
    row->addWidget(makeRecord(), 1);
    column->addLayout(row, 1);
    connect(m_desk, &CycleDesk::changed, this, &LoadView::show);
    connect(m_desk, &CycleDesk::says, this, &LoadView::says);
    connect(m_reasons, &ReasonsList::chosen, this, &LoadView::settle);
    connect(m_reasons, &ReasonsList::reviewAsked, this,
            [this](int index) { m_review->ask(m_findings[static_cast<std::size_t>(index)]); });
    connect(m_band, &VerdictBand::wantsEmergency, this, [this] {
        m_emergency->ask();
        m_scroll->ensureWidgetVisible(m_emergency);
    });
    connect(m_band, &VerdictBand::wantsNewLoad, this, &LoadView::wantNewLoad);
    connect(m_band, &VerdictBand::wantsPaper, this, &LoadView::wantsPaper);
}

QWidget* LoadView::makeReasons()
{
    auto* const scroll = makeRowsScroll(this);
    auto* const column = new QVBoxLayout(scroll->widget());
    column->setContentsMargins(space::large, space::medium, space::medium, space::medium);
    column->setSpacing(space::medium);
    column->addWidget(m_reasonsHead);
    column->addWidget(m_review);
    column->addWidget(m_reasons);
    column->addWidget(m_reasonsNote);
    column->addStretch();
    m_reasonsScroll = scroll;
    m_reasonsScroll->setFixedWidth(widthOfReasons);
    return m_reasonsScroll;
}

template <class Made>
Made* LoadView::add(QLayout* column)
{
    auto* const section = new Made(*m_desk);
    column->addWidget(section);
    m_sections.push_back(section);
    return section;
}

QWidget* LoadView::makeRecord()
{
    m_scroll = makeRowsScroll(this);
    auto* const column = new QVBoxLayout(m_scroll->widget());
    column->setContentsMargins(space::small, space::medium, space::large, space::large);
    column->setSpacing(space::medium);
    column->addWidget(m_emergency);
    auto* const later = makeButton(tr("Done earlier, or on paper"), ButtonKind::quiet);
    connect(later, &QPushButton::clicked, m_later, &LaterStrip::toggle);
    column->addWidget(later, 0, Qt::AlignRight);
    // In the order in which they come up at the sterilizer.
    add<CycleSection>(column);
    m_contents = add<ContentsSection>(column);
    add<ImmediateSection>(column);
    add<PrintoutSection>(column);
    m_trace = add<TraceSection>(column);
    add<TestSection>(column);
    auto* const indicators = add<IndicatorSection>(column);
    m_packages = add<PackageSection>(column);
    add<AerationSection>(column);
    add<FurtherSection>(column);
    add<HistorySection>(column);
    column->addStretch();
    connect(indicators, &IndicatorSection::wantsBiologicals, this, &LoadView::wantsBiologicals);
    // What has the keyboard is in sight.
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        // What is pressed by the pointer is in sight, and must not move away under it.
        if (now == nullptr || !m_scroll->isAncestorOf(now)
            || QApplication::mouseButtons() != Qt::NoButton) {
            return;
        }
        // Once what was made anew has its place.
        QTimer::singleShot(0, now,
                           [this, now] { m_scroll->ensureWidgetVisible(now, 0, space::page); });
    });
    return m_scroll;
}

QString LoadView::itemName(const Finding& finding) const
{
    const auto& items = m_desk->sheet()->items;
    const auto index = static_cast<std::size_t>(finding.item);
    return finding.item < 0 || index >= items.size() ? QString() : text(items[index].label);
}

void LoadView::show()
{
    const LoadSheet& sheet = *m_desk->sheet();
    const int scrolled = m_scroll->verticalScrollBar()->value();
    const int scrolledReasons = m_reasonsScroll->verticalScrollBar()->value();
    m_band->show(sheet);
    for (SheetSection* const section : m_sections) {
        section->show(sheet);
    }
    showReasons(sheet);
    m_contents->setVisible(!sheet.view().isTest() && !sheet.view().isImported());
    // What somebody looks at stays where it is.
    settleLayouts(this);
    m_scroll->verticalScrollBar()->setValue(scrolled);
    m_reasonsScroll->verticalScrollBar()->setValue(scrolledReasons);
    m_reasons->focusAsBefore();
    if (!m_goTo.isEmpty()) {
        const QString thing = std::exchange(m_goTo, {});
        goTo(thing);
    }
}

void LoadView::showReasons(const LoadSheet& sheet)
{
    const CycleView& view = sheet.view();
    m_findings.clear();
    const std::vector<Finding>& all =
        view.isTest() ? view.judgement.findings : view.decision.findings;
    const bool isDecidable = VerdictBand::isDecidable(sheet);
    const bool isUnaerated = isBeforeAerationsEnd(all);
    if (!view.isImported()) {
        std::ranges::copy_if(all, std::back_inserter(m_findings), [&](const Finding& finding) {
            return (isDecidable || isKnownBeforeTheEnd(finding))
                   && !(isUnaerated && isForUnloading(finding));
        });
    }
    m_reasonsNote->setVisible(isUnaerated && std::ranges::any_of(all, isForUnloading));
    // What decides stands first.
    std::ranges::stable_sort(
        m_findings, [](const Finding& a, const Finding& b) { return a.outcome > b.outcome; });
    m_reasons->show(
        m_findings, m_desk->style(), [this](const Finding& finding) { return itemName(finding); },
        [this](const Finding& finding) {
            if (ruleOf(finding.key) == RuleId::trace) {
                return m_trace->nameOf(finding.subject);
            }
            const auto& placed = m_desk->sheet()->indicators;
            const auto named = std::ranges::find_if(placed, [&](const SheetIndicator& each) {
                return each.id == finding.subject
                       || (each.where == IndicatorPlace::pcd && each.holder == finding.subject);
            });
            if (finding.subject.empty() || named == placed.end()) {
                return std::string();
            }
            if (named->id != finding.subject) {
                return named->holderName.empty() ? tr("without a mark").toStdString()
                                                 : named->holderName;
            }
            const QString where = lowered(placeText(*named));
            return (named->isVial ? tr("vial %1", "where it is").arg(where)
                                  : tr("indicator %1", "where it is").arg(where))
                .toStdString();
        });
    m_reasonsHead->setText(view.isImported() ? tr("Nothing is decided about it")
                           : !isDecidable && m_findings.empty()
                               ? tr("Nothing speaks against it so far")
                           : !isDecidable       ? tr("Already known")
                           : m_findings.empty() ? tr("Every rule holds")
                                                : tr("Why"));
}

void LoadView::settle(int index)
{
    const Finding& finding = m_findings[static_cast<std::size_t>(index)];
    const LoadSheet& sheet = *m_desk->sheet();
    QString subject = text(finding.subject);
    const auto item = static_cast<std::size_t>(finding.item);
    if (finding.item >= 0 && item < sheet.items.size()) {
        subject = text(sheet.items[item].id);
    }
    const auto goToA = [&]<class Wanted>(Wanted*) {
        for (SheetSection* const section : m_sections) {
            if (auto* const found = qobject_cast<Wanted*>(section)) {
                m_scroll->ensureWidgetVisible(found);
                found->goTo(subject);
            }
        }
    };
    switch (partOf(finding)) {
    case SheetPart::cycle: goToA(static_cast<CycleSection*>(nullptr)); break;
    case SheetPart::contents: goToA(static_cast<ContentsSection*>(nullptr)); break;
    case SheetPart::printout: goToA(static_cast<PrintoutSection*>(nullptr)); break;
    case SheetPart::trace: goToA(static_cast<TraceSection*>(nullptr)); break;
    case SheetPart::indicators: goToA(static_cast<IndicatorSection*>(nullptr)); break;
    case SheetPart::packages: goToA(static_cast<PackageSection*>(nullptr)); break;
    case SheetPart::aeration: goToA(static_cast<AerationSection*>(nullptr)); break;
    case SheetPart::immediateUse: goToA(static_cast<ImmediateSection*>(nullptr)); break;
    case SheetPart::test:
        goToA(static_cast<TestSection*>(nullptr));
        if (finding.key == Key::testNotRead || finding.key == Key::testUnclear) {
            goToA(static_cast<IndicatorSection*>(nullptr));
        }
        break;
    case SheetPart::biologicals: emit wantsBiologicals(); break;
    case SheetPart::history: goToA(static_cast<HistorySection*>(nullptr)); break;
    case SheetPart::sterilizer:
        if (hasPrefix(finding.subject, "ld") && finding.subject != m_desk->cycle()) {
            emit wantsCycle(text(finding.subject));
            break;
        }
        emit says(text(say(finding, m_desk->style()).next),
                  tr("That is recorded of the sterilizer, not in this load: the page Today shows "
                     "its state and its tests."));
        break;
    }
}

void LoadView::goTo(const QString& thing)
{
    if (thing.isEmpty()) {
        return;
    }
    if (!m_desk->isUpToDate()) {
        m_goTo = thing; // what is asked for may be newer than what is shown
        return;
    }
    const std::string id = thing.toStdString();
    if (thing == QLatin1String("sign")) {
        m_band->focusMain();
        return;
    }
    if (goToFinding(thing) || thing.contains(u'.')) {
        return; // a reason that is no more leads nowhere
    }
    if (m_desk->sheet()->indicator(id) != nullptr) {
        for (SheetSection* const section : m_sections) {
            if (auto* const found = qobject_cast<IndicatorSection*>(section)) {
                m_scroll->ensureWidgetVisible(found);
                found->goTo(thing);
            }
        }
        return;
    }
    m_scroll->ensureWidgetVisible(m_desk->sheet()->state.ended ? static_cast<QWidget*>(m_packages)
                                                               : static_cast<QWidget*>(m_contents));
    if (m_desk->sheet()->state.ended) {
        m_packages->goTo(thing);
    } else {
        m_contents->goTo(thing);
    }
}

bool LoadView::goToFinding(const QString& key)
{
    const auto found = std::ranges::find(m_findings, key, [](const Finding& finding) {
        return text(std::string(textOf(finding.key)));
    });
    if (found == m_findings.end()) {
        return false;
    }
    if (found->outcome == Outcome::review) {
        m_review->ask(*found);
    } else {
        settle(static_cast<int>(found - m_findings.begin()));
    }
    return true;
}

void LoadView::dragEnterEvent(QDragEnterEvent* event)
{
    const QList<QUrl> urls = event->mimeData()->urls();
    if (!m_trace->isHidden() && urls.size() == 1 && urls.front().isLocalFile()) {
        event->acceptProposedAction();
    }
}

void LoadView::dropEvent(QDropEvent* event)
{
    event->acceptProposedAction();
    m_scroll->ensureWidgetVisible(m_trace);
    m_trace->open(event->mimeData()->urls().front().toLocalFile());
}

bool LoadView::isHalfTyped() const
{
    const auto lines = findChildren<QLineEdit*>();
    const auto looks = findChildren<ThreeWay*>();
    return std::ranges::any_of(
               lines,
               [](const QLineEdit* line) {
                   // Times stand in their fields by themselves.
                   const bool isTime = qobject_cast<const TimeEdit*>(line->parentWidget());
                   return !line->text().isEmpty() && (!isTime || line->isModified());
               })
           || std::ranges::any_of(looks,
                                  [](const ThreeWay* look) { return look->value().has_value(); });
}

bool LoadView::takeScan(const QString& text, const LookedUp& found)
{
    const bool isFree = found.what == LookedUp::What::nothing || found.what == LookedUp::What::item;
    const LoadSheet* const sheet = m_desk->sheet();
    if (!isFree || sheet == nullptr || sheet->view().isTest() || sheet->view().isImported()) {
        return false;
    }
    if (!sheet->state.started) {
        m_contents->addLabel(text);
        return true;
    }
    return sheet->state.ended && !sheet->unloaded && m_packages->cameOut(text);
}

void LoadView::wantNewLoad()
{
    const LoadSheet& sheet = *m_desk->sheet();
    emit wantsNewLoad(text(sheet.view().folded.sterilizer),
                      text(std::string(reservedSpecification(sheet))),
                      tr("Reprocesses items of load %1").arg(m_desk->lot()));
}

} // namespace loadwarden::ui
