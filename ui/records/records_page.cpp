#include "ui/records/records_page.h"

#include "core/desk/cycle_record.h"
#include "core/desk/look_up.h"
#include "ui/look/text.h"
#include "ui/records/journal_work.h"
#include "ui/records/record_pane.h"
#include "ui/records/record_paper.h"
#include "ui/records/record_text.h"
#include "ui/records/records_filter.h"
#include "ui/records/signed_delegate.h"
#include "ui/shell/desk_link.h"

#include <QAction>
#include <QApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int settleMs = 120;  ///< a row that is only passed is not read
constexpr int paneWidth = 340; ///< at least

/// Without the search of what is typed, which would read every row that is there.
class RowTable : public QTableView {
public:
    void keyboardSearch(const QString& /*typed*/) override {}
};

QLabel* sentence(Type type)
{
    auto* const label = makeLabel({}, type);
    label->setMaximumWidth(620);
    return label;
}

} // namespace

RecordsPage::RecordsPage(Workstation& workstation)
    : m_workstation(workstation),
      m_model(new RecordsModel([this](const CyclePlace& behind,
                                      RecordsModel::Done done) { ask(behind, std::move(done)); },
                               [this](const std::string& id) { return nameOf(id); }, this)),
      m_filter(new RecordsFilter),
      m_state(makeMuted({}, false)),
      m_goOn(makeButton(tr("Loo&k further back"))),
      m_clear(makeButton(tr("&Clear"), ButtonKind::quiet)),
      m_verify(makeButton(tr("&Verify the journal"))),
      m_export(makeButton(tr("E&xport a copy"))),
      m_work(new JournalWork(m_workstation)),
      m_paper(new RecordPaper(m_workstation)),
      m_table(new RowTable),
      m_stack(new QStackedWidget),
      m_emptyHead(sentence(Type::heading)),
      m_emptySays(sentence(Type::body)),
      m_pane(new RecordPane(m_workstation)),
      m_settle(new QTimer(this))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    column->addWidget(m_work);
    column->addWidget(m_paper);
    auto* const filters = new QVBoxLayout;
    filters->setContentsMargins(space::page, space::hair, space::page, 0);
    filters->setSpacing(0);
    filters->addWidget(m_filter);
    auto* const line = new QHBoxLayout;
    line->setSpacing(space::small);
    auto* const find = makeButton(tr("Fin&d"), ButtonKind::main);
    line->addWidget(find);
    line->addWidget(m_clear);
    line->addSpacing(space::small);
    line->addWidget(m_state, 1);
    line->addWidget(m_goOn);
    filters->addLayout(line);
    column->addLayout(filters);
    auto* const both = new QHBoxLayout;
    both->setContentsMargins(space::page, space::small, space::page, space::small);
    both->setSpacing(space::medium);
    m_stack->addWidget(makeTable());
    m_stack->addWidget(makeEmpty());
    both->addWidget(m_stack, 11);
    m_pane->setMinimumWidth(paneWidth);
    both->addWidget(m_pane, 4);
    column->addLayout(both, 1);

    connect(find, &QPushButton::clicked, this, &RecordsPage::find);
    connect(m_clear, &QPushButton::clicked, this, [this] {
        m_filter->clear();
        m_filter->focusFirst();
        RecordsPage::find();
    });
    connect(m_filter, &RecordsFilter::asked, this, &RecordsPage::find);
    connect(m_filter, &RecordsFilter::left, m_table, qOverload<>(&QWidget::setFocus));
    connect(m_goOn, &QPushButton::clicked, m_model, &RecordsModel::goOn);
    connect(m_verify, &QPushButton::clicked, m_work, &JournalWork::verify);
    connect(m_export, &QPushButton::clicked, m_work, &JournalWork::exportLines);
    connect(m_work, &JournalWork::busy, this, [this](bool isBusy) {
        m_verify->setEnabled(!isBusy);
        m_export->setEnabled(!isBusy);
    });
    connect(m_paper, &RecordPaper::says, this, &Page::says);
    connect(m_pane, &RecordPane::wantsOpen, this, &RecordsPage::open);
    connect(m_pane, &RecordPane::wantsPaper, this, [this] { m_paper->ask(m_pane->record()); });
    connect(m_model, &RecordsModel::looked, this, &RecordsPage::tellState);
    connect(m_model, &QAbstractItemModel::modelAboutToBeReset, this,
            [this] { m_wasChosen = m_chosen; });
    connect(m_model, &QAbstractItemModel::modelReset, this, &RecordsPage::chose);
    m_settle->setSingleShot(true);
    m_settle->setInterval(settleMs);
    connect(m_settle, &QTimer::timeout, this, &RecordsPage::askHistory);
    auto* const toFilter = new QAction(tr("Look for a record"), this);
    toFilter->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_F));
    toFilter->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    connect(toFilter, &QAction::triggered, m_filter, &RecordsFilter::focusFirst);
    addAction(toFilter);
    connect(&workstation.desk, &DeskLink::recorded, this, [this] {
        if (isVisible()) {
            offer();
        }
    });
}

QWidget* RecordsPage::makeHead()
{
    auto* const head = new QWidget;
    auto* const row = new QHBoxLayout(head);
    row->setContentsMargins(space::page, space::medium, space::page, space::small);
    row->setSpacing(space::small);
    row->addWidget(makeLabel(tr("Records"), Type::title, false));
    row->addStretch();
    row->addWidget(m_verify);
    row->addWidget(m_export);
    return head;
}

QWidget* RecordsPage::makeTable()
{
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Loads and tests, the newest first"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->setItemDelegateForColumn(RecordsModel::signedAs,
                                      new SignedDelegate(m_workstation.look, m_table));
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(space::target);
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    QHeaderView* const header = m_table->horizontalHeader();
    header->setHighlightSections(false);
    header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    header->setSectionsClickable(false);
    header->setSectionResizeMode(QHeaderView::Fixed);
    header->setSectionResizeMode(RecordsModel::sterilizer, QHeaderView::Stretch);
    header->setSectionResizeMode(RecordsModel::signedBy, QHeaderView::Stretch);
    sizeColumns();
    connect(&m_workstation.look, &Look::changed, this, &RecordsPage::sizeColumns);
    m_table->installEventFilter(this);
    connect(m_table->verticalScrollBar(), &QScrollBar::valueChanged, this, &RecordsPage::tellView);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &RecordsPage::chose);
    connect(m_table, &QTableView::doubleClicked, this, &RecordsPage::open);
    return m_table;
}

/// What is long as anything can be is as wide as that; names share the rest.
void RecordsPage::sizeColumns()
{
    constexpr int beside = 22; // a cell's padding, and a little air
    constexpr int mark = 28;
    const QFontMetrics metrics(m_workstation.look.font(Type::body));
    const auto width = [&](const QString& longest) {
        return metrics.horizontalAdvance(longest) + beside;
    };
    const HouseStyle style = m_workstation.desk.style();
    RecordRow signedRow{.signedAs = Verdict::quarantine, .hasMoreSince = true};
    RecordRow test{.purpose = Purpose::bowieDick};
    m_table->setColumnWidth(RecordsModel::when,
                            width(text(sayTime(*parseInstant("2028-09-28T20:00Z"), style))));
    m_table->setColumnWidth(RecordsModel::lot, width(QStringLiteral("10-2028-365-88")));
    m_table->setColumnWidth(RecordsModel::what, width(whatText(test)));
    m_table->setColumnWidth(RecordsModel::signedAs, width(signedText(signedRow)) + mark);
    m_table->verticalHeader()->setDefaultSectionSize(
        std::max(space::target, metrics.height() + 2 * space::small));
}

QWidget* RecordsPage::makeEmpty()
{
    auto* const empty = new QWidget;
    auto* const column = new QVBoxLayout(empty);
    column->setContentsMargins(0, space::large, space::large, 0);
    column->setSpacing(space::small);
    column->addWidget(m_emptyHead);
    column->addWidget(m_emptySays);
    column->addStretch();
    return empty;
}

bool RecordsPage::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            open();
            return true;
        }
    }
    if (watched == m_table && event->type() == QEvent::FocusIn && !m_table->currentIndex().isValid()
        && m_model->rowCount() > 0) {
        m_table->setCurrentIndex(m_model->index(0, 0));
    }
    if (watched == m_table && event->type() == QEvent::Resize) {
        QTimer::singleShot(0, this, &RecordsPage::tellView);
    }
    return Page::eventFilter(watched, event);
}

bool RecordsPage::isUpToDate() const
{
    return m_isOffered && !m_isAsking && !m_isResolving && !m_model->isLooking() && !m_isReading
           && !m_settle->isActive();
}

void RecordsPage::shown()
{
    if (!isAncestorOf(QApplication::focusWidget())) {
        m_filter->focusFirst();
    }
    offer();
}

void RecordsPage::offer()
{
    if (std::exchange(m_isAsking, true)) {
        return;
    }
    m_workstation.desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return recordChoices(snapshot);
        },
        [this](const RecordChoices& choices) {
            m_isAsking = false;
            if (!std::exchange(m_isOffered, true) || choices != m_choices) {
                m_choices = choices;
                m_filter->offer(choices);
                search(m_question);
                return;
            }
            m_model->refresh();
            if (!m_chosen.empty()) {
                askHistory();
            }
        },
        [this] { m_isAsking = false; });
}

void RecordsPage::find()
{
    auto question = m_filter->question();
    if (!question) {
        return;
    }
    const std::string product = m_filter->productLot();
    if (product.empty()) {
        search(*std::move(question));
        return;
    }
    m_isResolving = true;
    m_workstation.desk.ask(
        this,
        [product](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return productLotsNumbered(snapshot, product);
        },
        [this, asks = *std::move(question)](const std::vector<std::string>& lots) mutable {
            m_isResolving = false;
            if (lots.empty()) {
                m_filter->sayUnknownLot();
                return;
            }
            asks.productLots = lots;
            search(std::move(asks));
        },
        [this] { m_isResolving = false; });
}

void RecordsPage::search(RecordQuestion question)
{
    m_question = std::move(question);
    m_model->setStyle(m_workstation.desk.style());
    m_model->search();
}

void RecordsPage::ask(const CyclePlace& behind, RecordsModel::Done done)
{
    const auto answer = std::make_shared<RecordsModel::Done>(std::move(done));
    m_workstation.desk.ask(
        this,
        [question = m_question, behind](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return findRecords(snapshot, office.zone(), question, behind);
        },
        [answer](RecordPage page) { (*answer)(std::move(page)); },
        [answer] { (*answer)(std::nullopt); });
}

void RecordsPage::tellState()
{
    const int rows = m_model->rowCount();
    const bool isNothing = rows == 0 && m_model->isEnd();
    const bool isEmptyJournal = isNothing && m_question == RecordQuestion{};
    if (rows > 0) {
        m_stack->setCurrentIndex(0);
        chooseAgain();
    } else {
        m_stack->setCurrentIndex(1);
        m_emptyHead->setText(isEmptyJournal          ? tr("No load and no test is recorded yet")
                             : isNothing             ? tr("Nothing fits")
                             : m_model->hasStopped() ? tr("Nothing fits so far")
                                                     : tr("Looking"));
        m_emptySays->setText(
            isEmptyJournal
                ? tr("Every load and every test that was ever begun stands here, the newest first: "
                     "by whom it was signed, and its whole history with everything that was "
                     "corrected. The first one comes when a cycle is reserved for a sterilizer.")
            : isNothing ? tr("No load and no test of this journal fits everything that is typed "
                             "above. Take something away, or clear it.")
            : m_model->hasStopped()
                ? tr("Older ones may: look further back, or say from which day until which.")
                : QString());
    }
    const auto back = m_model->lookedBackTo();
    const QString day = back ? text(sayTime(*back, m_workstation.desk.style())) : QString();
    QString says;
    if (isNothing) {
        says.clear();
    } else if (m_model->isLooking()) {
        says = day.isEmpty() ? tr("Looking") : tr("Looking: back to %1").arg(day);
    } else if (m_model->hasStopped()) {
        says = day.isEmpty() ? tr("It stopped looking.") : tr("Looked back to %1.").arg(day);
    } else if (m_model->isEnd()) {
        says = rows == 1 ? tr("1 record, and no older one")
                         : tr("%1 records, and no older ones").arg(rows);
    } else {
        says = tr("The newest first. Older ones come as you go down.");
    }
    if (m_model->isByTime() && !isNothing) {
        says += QStringLiteral(" ") + tr("Very many begin so: days make it quick.");
    }
    m_state->setText(says);
    m_goOn->setVisible(m_model->hasStopped());
    if (!m_model->isLooking()) {
        QTimer::singleShot(0, this, &RecordsPage::tellView);
    }
}

void RecordsPage::tellView()
{
    if (m_model->rowCount() == 0 || !m_table->isVisible()) {
        return;
    }
    const int first = m_table->rowAt(0);
    const int last = m_table->rowAt(m_table->viewport()->height() - 1);
    m_model->showing(first, last < 0 ? m_model->rowCount() - 1 : last);
}

/// After it was searched anew, what was chosen stays so where it is among the newest.
void RecordsPage::chooseAgain()
{
    const std::string wanted = std::exchange(m_wasChosen, {});
    for (int row = 0; !wanted.empty() && row < m_model->rowCount(); ++row) {
        const RecordRow* const each = m_model->at(row);
        if (each != nullptr && each->cycle == wanted) {
            m_table->setCurrentIndex(m_model->index(row, 0));
            return;
        }
    }
}

const RecordRow* RecordsPage::chosen() const
{
    return m_model->at(m_table->currentIndex().row());
}

void RecordsPage::chose()
{
    const RecordRow* const row = chosen();
    m_chosen = row == nullptr ? std::string() : row->cycle;
    if (row == nullptr) {
        m_settle->stop();
        m_pane->clear();
        return;
    }
    m_pane->wait(text(row->lot.empty() ? row->cycle : row->lot));
    m_settle->start();
}

void RecordsPage::askHistory()
{
    if (m_chosen.empty()) {
        return;
    }
    m_isReading = true;
    m_workstation.desk.ask(
        this,
        [cycle = m_chosen](Office& office) -> std::shared_ptr<const CycleRecord> {
            ReadSnapshot snapshot(office.connection());
            auto record = recordOfCycle(snapshot, office.entries(), cycle, office.now());
            return record ? std::make_shared<const CycleRecord>(*std::move(record)) : nullptr;
        },
        [this, cycle = m_chosen](std::shared_ptr<const CycleRecord> record) {
            m_isReading = false;
            if (record != nullptr && cycle == m_chosen) {
                m_pane->show(std::move(record));
            }
        },
        [this] { m_isReading = false; });
}

void RecordsPage::open()
{
    if (const RecordRow* const row = chosen()) {
        emit wantsCycle(text(row->cycle), {});
    }
}

QString RecordsPage::nameOf(const std::string& id) const
{
    for (const auto* const list : {&m_choices.sterilizers, &m_choices.people}) {
        const auto found = std::ranges::find(*list, id, &NamedId::id);
        if (found != list->end()) {
            return text(found->name);
        }
    }
    return text(id);
}

} // namespace loadwarden::ui
