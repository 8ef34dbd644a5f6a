#include "ui/indicators/indicator_desk_page.h"

#include "core/desk/policy_now.h"
#include "core/desk/recorder.h"
#include "core/words/say_indicator_answer.h"
#include "core/words/say_refusal.h"
#include "ui/indicators/answer_view.h"
#include "ui/indicators/check_view.h"
#include "ui/indicators/checks_view.h"
#include "ui/indicators/reading_panel.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/combo.h"
#include "ui/parts/empty_state.h"
#include "ui/parts/field.h"
#include "ui/parts/rows_scroll.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widest = 1000;
constexpr std::int64_t mostNumber = 1'000'000'000;

/// The check of a month: everybody who takes it then reads the same indicators, so that they can be
/// compared.
std::int64_t numberOf(Date day)
{
    const QString month = text(formatDate(day)).left(7).remove(u'-');
    return month.toLongLong() % mostNumber;
}

std::vector<CheckProduct> drawable(const std::vector<ReadableLot>& lots)
{
    std::vector<CheckProduct> products;
    for (const ReadableLot& each : lots) {
        CheckProduct product{.id = each.product.id,
                             .name = each.name,
                             .type = each.product.type,
                             .response = each.product.response,
                             .directions = each.directions};
        const bool isThere =
            std::ranges::find(products, product.id, &CheckProduct::id) != products.end();
        if (!isThere && canBeDrawn(product)) {
            products.push_back(std::move(product));
        }
    }
    return products;
}

} // namespace

IndicatorDeskPage::IndicatorDeskPage(Workstation& workstation)
    : m_workstation(workstation),
      m_lots(makeCombo()),
      m_place(makeCombo({tr("Anywhere that its type is for"), tr("In a process challenge device"),
                         tr("Inside a package"), tr("Outside on a package")})),
      m_scroll(makeRowsScroll(this)),
      m_column(nullptr)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    m_column = new QVBoxLayout(m_scroll->widget());
    m_column->setContentsMargins(space::page, 0, space::page, space::page);
    m_column->setSpacing(space::medium);
    column->addWidget(m_scroll, 1);
}

QWidget* IndicatorDeskPage::makeHead()
{
    auto* const head = new QWidget;
    auto* const column = new QVBoxLayout(head);
    column->setContentsMargins(space::page, space::medium, space::page, space::small);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Is this indicator acceptable?"), Type::title, false));
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    row->addWidget(new Field(tr("Lot of the indi&cator"), m_lots, tr("chosen or scanned")), 2);
    row->addWidget(new Field(tr("W&here it was"), m_place), 1);
    column->addLayout(row);
    connect(m_lots, &QComboBox::activated, this,
            [this] { choose(m_lots->currentData().toString().toStdString()); });
    connect(m_place, &QComboBox::activated, this, [this] { choose(m_lot); });
    return head;
}

void IndicatorDeskPage::shown()
{
    refresh();
    if (!m_isChecking) {
        m_lots->setFocus();
    }
}

bool IndicatorDeskPage::takeScan(const QString& text, const LookedUp& /*found*/)
{
    if (m_isChecking) {
        emit says(tr("A reading check is going on."), tr("Finish it, or give it up, first."));
        return true;
    }
    const auto isMeant = [number = text.toStdString()](const ReadableLot& each) {
        return isSamePerson(each.number.number, number);
    };
    const auto lot = std::ranges::find_if(m_known.lots, isMeant);
    if (lot == m_known.lots.end()) {
        return false;
    }
    if (std::ranges::count_if(m_known.lots, isMeant) > 1) {
        emit says(tr("Several products have a lot of that number."),
                  tr("Choose the product in the list."));
        m_lots->setFocus();
        return true;
    }
    choose(lot->lot);
    focusReading();
    return true;
}

void IndicatorDeskPage::refresh()
{
    if (std::exchange(m_isAsking, true)) {
        return;
    }
    m_workstation.desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            Known known{.lots = readableLots(snapshot),
                        .policy = policyNow(snapshot),
                        .today = office.zone().dateOf(office.now()),
                        .checks = newestChecks(snapshot),
                        .agreement = agreementOfReaders(snapshot)};
            std::erase_if(known.lots, [](const ReadableLot& each) {
                return each.product.kind != IndicatorKind::chemical;
            });
            return known;
        },
        [this](Known known) { take(std::move(known)); }, [this] { m_isAsking = false; });
}

void IndicatorDeskPage::take(Known known)
{
    m_isAsking = false;
    m_isRead = true;
    m_known = std::move(known);
    if (m_isChecking) {
        return; // what somebody reads now stays
    }
    const QSignalBlocker quiet(m_lots);
    m_lots->clear();
    m_lots->addItem(tr("None chosen"), QString());
    for (const ReadableLot& each : m_known.lots) {
        m_lots->addItem(
            tr("%1, lot %2", "a product, its lot").arg(text(each.name), text(each.number.number)),
            text(each.lot));
    }
    if (m_lot.empty()) {
        showStart();
    } else {
        m_lots->setCurrentIndex(std::max(0, m_lots->findData(text(m_lot))));
    }
}

void IndicatorDeskPage::choose(const std::string& lot)
{
    if (m_isChecking) {
        return;
    }
    m_lot = lot;
    m_lots->setCurrentIndex(std::max(0, m_lots->findData(text(lot))));
    const auto found = std::ranges::find(m_known.lots, lot, &ReadableLot::lot);
    if (found == m_known.lots.end()) {
        m_lot.clear();
        showStart();
        return;
    }
    showLot(*found);
}

void IndicatorDeskPage::showLot(const ReadableLot& lot)
{
    clearLayout(m_column);
    const ReadingGuide guide{
        .type = lot.product.type, .directions = lot.directions, .today = m_known.today};
    auto* const panel = new ReadingPanel(m_workstation.look,
                                         m_place->currentIndex() == 0 ? tr("One indicator")
                                                                      : m_place->currentText(),
                                         text(lot.name), lot.product.response, guide);
    connect(panel, &ReadingPanel::answered, this,
            [this, lot](Seen seen, const QString&) { showAnswer(lot, seen); });
    connect(panel, &ReadingPanel::left, this, [this] { choose({}); });
    addNarrow(panel);
    m_column->addStretch();
    settleLayouts(m_scroll->widget());
    m_scroll->verticalScrollBar()->setValue(0);
}

void IndicatorDeskPage::focusReading()
{
    if (auto* const panel = m_scroll->widget()->findChild<ReadingPanel*>()) {
        panel->focusFirst();
    }
}

void IndicatorDeskPage::showAnswer(const ReadableLot& lot, Seen seen)
{
    const int chosen = m_place->currentIndex();
    const auto place =
        chosen > 0 ? std::optional(static_cast<IndicatorUsedAt>(chosen - 1)) : std::nullopt;
    const IndicatorAnswer answer =
        answerIndicator(lot, seen, Method::unknown, place, m_known.policy, m_known.today);
    clearLayout(m_column);
    auto* const view = new AnswerView(
        m_workstation.look,
        tr("%1, lot %2", "a product, its lot").arg(text(lot.name), text(lot.number.number)),
        answer.state, say(answer, seen, place, m_workstation.desk.style()));
    connect(view, &AnswerView::wantsAnother, this, [this, id = lot.lot] {
        choose(id);
        focusReading();
    });
    connect(view, &AnswerView::left, this, [this] {
        choose({});
        m_lots->setFocus();
    });
    addNarrow(view);
    m_column->addStretch();
    settleLayouts(m_scroll->widget());
    m_scroll->verticalScrollBar()->setValue(0);
    view->focusFirst();
}

void IndicatorDeskPage::showStart()
{
    clearLayout(m_column);
    if (m_known.lots.empty()) {
        m_column->addWidget(new EmptyState(
            tr("No lot of a chemical indicator is registered"),
            tr("A supervisor registers products and their lots under Settings, from the makers' "
               "directions. Then an indicator can be read here.")));
        m_column->addStretch();
        return;
    }
    m_column->addWidget(new EmptyState(
        tr("Choose or scan the lot that is printed on the indicator"),
        tr("Then place or mark what you see, and the rule says what it is. Nothing is recorded "
           "here: a reading that counts is recorded in its load.")));
    auto* const checks =
        new ChecksView(m_known.checks, m_known.agreement, !drawable(m_known.lots).empty(),
                       m_workstation.desk.style());
    connect(checks, &ChecksView::wantsCheck, this, &IndicatorDeskPage::beginCheck);
    addNarrow(checks);
    m_column->addStretch();
}

void IndicatorDeskPage::beginCheck()
{
    clearLayout(m_column);
    m_isChecking = true;
    auto* const check = new CheckView(m_workstation.look, drawable(m_known.lots),
                                      static_cast<std::uint64_t>(numberOf(m_known.today)));
    connect(check, &CheckView::finished, this,
            [this, who = m_workstation.session.who()->id()](const CheckResult& result) {
                if (m_workstation.session.who()->id() == who) {
                    record(result);
                } else {
                    emit says(tr("This check is not recorded: another person began it."), {});
                }
            });
    const auto leave = [this] {
        m_isChecking = false;
        m_lot.clear();
        showStart();
        refresh();
        m_lots->setFocus();
    };
    connect(check, &CheckView::gaveUp, this, leave);
    connect(check, &CheckView::left, this, leave);
    addNarrow(check);
    settleLayouts(m_scroll->widget());
    m_scroll->verticalScrollBar()->setValue(0);
    check->focusFirst();
}

void IndicatorDeskPage::record(const CheckResult& result)
{
    ReadingCheckTaken taken{.number = static_cast<std::int64_t>(result.seed), .drawings = {}};
    for (std::size_t i = 0; i < result.drawn.size(); ++i) {
        taken.drawings.push_back({.product = result.drawn[i].product,
                                  .drawn = result.drawn[i].truth,
                                  .answer = result.answers[i].readAs,
                                  .ms = result.answers[i].tookMs});
    }
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), taken](Office& office) {
            return Recorder(office).record(
                who, {.act = taken, .subjects = {office.place().ids.next("rc")}});
        },
        [this](const OrRefusal<Appended>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told said = say(*refusal, m_workstation.desk.style());
                emit says(text(said.says), text(said.next));
                return;
            }
            emit says(tr("Your reading check is recorded."), {});
        });
}

void IndicatorDeskPage::addNarrow(QWidget* widget)
{
    widget->setMaximumWidth(widest);
    auto* const row = new QHBoxLayout;
    row->addWidget(widget, 1);
    row->addStretch(0);
    m_column->addLayout(row);
}

} // namespace loadwarden::ui
