#include "ui/load/trace_section.h"

#include "core/cycle/simulation/trace_text.h"
#include "core/desk/recorder.h"
#include "core/exchange/trace_mapping_json.h"
#include "core/store/attachments.h"
#include "core/words/say_refusal.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"
#include "ui/trace/mapping_form.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <QCoreApplication>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QUrl>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>
#include <variant>

namespace loadwarden::ui {
namespace {

/// What was read of a file, or why it was not.
struct FileBytes {
    std::string bytes;
    QString wrong;
};

FileBytes readFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return {{},
                QCoreApplication::translate("TraceSection", "The file cannot be opened (%1).")
                    .arg(file.errorString())};
    }
    // What is larger is refused by the reader, which says so.
    const QByteArray bytes = file.read(static_cast<qint64>(TraceLimits{}.mostBytes) + 1);
    if (file.error() != QFileDevice::NoError) {
        return {{},
                QCoreApplication::translate("TraceSection", "The file cannot be read (%1).")
                    .arg(file.errorString())};
    }
    return {bytes.toStdString(), {}};
}

/// The act by which a trace of the cycle was recorded, as it counts now, or null.
const TraceRead* keptTrace(const LoadSheet& sheet, const FactBook& book, std::string_view id)
{
    for (const std::uint32_t index : book.about(id)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && fact.origin->isAbout(sheet.view().id)) {
            if (const auto* const read = std::get_if<TraceRead>(&fact.current().act)) {
                return read;
            }
        }
    }
    return nullptr;
}

} // namespace

TraceSection::TraceSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("The sterilizer's recording"), parent),
      m_facts(new Facts),
      m_kept(new QVBoxLayout),
      m_file(new FileEdit(FileEdit::What::openFile, tr("Choose a recorder's file"))),
      m_fileField(new Field(tr("A recorder's file of this cycle"), m_file,
                            tr("text with the temperatures and the pressure of the cycle; it may "
                               "also be dropped here"))),
      m_mapping(new MappingForm),
      m_view(new QWidget),
      m_viewColumn(new QVBoxLayout(m_view)),
      m_attach(makeButton(tr("Attach it to this load"), ButtonKind::main)),
      m_says(new QLabel)
{
    setAcceptDrops(true);
    column()->addWidget(m_facts);
    column()->addLayout(m_kept);
    auto* const row = new QHBoxLayout;
    row->addWidget(m_fileField, 1);
    auto* const look = makeButton(tr("Look at it"));
    row->addWidget(look, 0, Qt::AlignVCenter);
    column()->addLayout(row);
    m_says->setWordWrap(true);
    m_says->hide();
    column()->addWidget(m_says);
    m_mapping->hide();
    column()->addWidget(m_mapping);
    m_viewColumn->setContentsMargins(0, 0, 0, 0);
    auto* const buttons = new QHBoxLayout;
    auto* const away = makeButton(tr("Put it away"), ButtonKind::quiet);
    buttons->addWidget(m_attach);
    buttons->addWidget(away);
    buttons->addStretch();
    m_viewColumn->addLayout(buttons);
    m_view->hide();
    column()->addWidget(m_view);
    connect(look, &QPushButton::clicked, this, &TraceSection::openFile);
    connect(m_file->line(), &QLineEdit::returnPressed, this, &TraceSection::openFile);
    connect(m_mapping, &MappingForm::confirmed, this, [this] { compute(m_mapping->mapping()); });
    connect(m_mapping, &MappingForm::left, this, &TraceSection::putAway);
    connect(m_attach, &QPushButton::clicked, this, &TraceSection::attach);
    connect(away, &QPushButton::clicked, this, &TraceSection::putAway);
}

void TraceSection::show(const LoadSheet& sheet)
{
    const auto& record = sheet.view().folded.record;
    const bool isSteam = !record.specification || record.specification->method == Method::steam;
    setVisible(!sheet.view().isTest() && !sheet.view().isImported() && sheet.state.started
               && isSteam);
    m_facts->clear();
    std::string ids;
    for (const TraceFindings& trace : record.load.traces) {
        ids += trace.id + ' ';
    }
    const FactBook book(sheet.record.entries);
    const bool isNew = std::exchange(m_keptIds, ids) != ids;
    if (isNew) {
        clearLayout(m_kept);
    }
    for (const TraceFindings& trace : record.load.traces) {
        const TraceRead* const read = keptTrace(sheet, book, trace.id);
        const QString name = read == nullptr ? text(trace.id) : text(read->fileName);
        m_facts->add(tr("Attached"), name, whoText(trace.act, sheet, desk().style()));
        if (isNew && read != nullptr) {
            auto* const look = makeButton(tr("Look at %1").arg(name), ButtonKind::quiet);
            connect(look, &QPushButton::clicked, this, [this, id = trace.id] { openKept(id); });
            m_kept->addWidget(look, 0, Qt::AlignLeft);
        }
    }
    setState(record.load.traces.empty() ? tr("none attached") : QString());
}

void TraceSection::goTo(const QString& subject)
{
    if (desk().sheet() != nullptr && !subject.isEmpty()) {
        const auto& traces = desk().sheet()->view().folded.record.load.traces;
        if (std::ranges::find(traces, subject.toStdString(), &TraceFindings::id) != traces.end()) {
            openKept(subject.toStdString());
        }
    }
    m_file->line()->setFocus();
}

void TraceSection::dragEnterEvent(QDragEnterEvent* event)
{
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile()) {
        event->acceptProposedAction();
    }
}

void TraceSection::dropEvent(QDropEvent* event)
{
    event->acceptProposedAction();
    m_file->line()->setText(event->mimeData()->urls().front().toLocalFile());
    openFile();
}

void TraceSection::refuseFile(const QString& why)
{
    m_isBusy = false;
    m_fileField->setError(why);
    m_file->line()->setFocus();
}

void TraceSection::openFile()
{
    if (m_file->path().trimmed().isEmpty()) {
        refuseFile(tr("Choose the file that the recorder wrote of this cycle."));
        return;
    }
    open(m_file->path().trimmed());
}

void TraceSection::open(const QString& file)
{
    if (std::exchange(m_isBusy, true)) {
        return;
    }
    m_fileField->setError({});
    using Answer = std::variant<QString, Looked>;
    desk().workstation().desk.ask(
        this,
        [file, cycle = desk().cycle()](Office& office) -> Answer {
            FileBytes read = readFile(file);
            if (!read.wrong.isEmpty()) {
                return read.wrong;
            }
            ReadSnapshot snapshot(office.connection());
            auto basis = traceBasisOf(snapshot, office.entries(), cycle, office.now());
            if (!basis) {
                return QCoreApplication::translate("TraceSection",
                                                   "Nothing is known of this load.");
            }
            Looked looked{QFileInfo(file).fileName().toStdString(),
                          std::move(read.bytes),
                          *std::move(basis),
                          {}};
            looked.chosen = chooseMapping(looked.bytes, looked.basis.remembered);
            return looked;
        },
        [this](Answer answer) {
            m_isBusy = false;
            if (const auto* const wrong = std::get_if<QString>(&answer)) {
                refuseFile(*wrong);
                return;
            }
            m_isKept = false;
            opened(std::get<Looked>(std::move(answer)));
        },
        [this] { m_isBusy = false; });
}

void TraceSection::openKept(const std::string& id)
{
    const FactBook book(desk().sheet()->record.entries);
    const TraceRead* const read = keptTrace(*desk().sheet(), book, id);
    if (read == nullptr || std::exchange(m_isBusy, true)) {
        return;
    }
    using Answer = std::optional<Looked>;
    desk().workstation().desk.ask(
        this,
        [kept = *read, cycle = desk().cycle()](Office& office) -> Answer {
            ReadSnapshot snapshot(office.connection());
            auto bytes = readAttachment(snapshot, kept.content);
            auto basis = traceBasisOf(snapshot, office.entries(), cycle, office.now());
            const auto mapping = readTraceMapping(kept.mapping);
            if (!bytes || !basis || !std::holds_alternative<TraceMapping>(mapping)) {
                return std::nullopt;
            }
            return Looked{kept.fileName,
                          *std::move(bytes),
                          *std::move(basis),
                          {std::get<TraceMapping>(mapping), MappingOrigin::remembered, {}, {}}};
        },
        [this](Answer answer) {
            m_isBusy = false;
            if (!answer) {
                emit desk().says(tr("The file of this trace is not in the journal."),
                                 tr("Verify the journal on the page Records."));
                return;
            }
            m_isKept = true;
            opened(*std::move(answer));
        },
        [this] { m_isBusy = false; });
}

void TraceSection::opened(Looked looked)
{
    m_looked = std::make_shared<const Looked>(std::move(looked));
    m_work.reset();
    m_view->hide();
    const ChosenMapping& chosen = m_looked->chosen;
    if (chosen.origin == MappingOrigin::remembered) {
        compute(chosen.mapping);
        return;
    }
    m_mapping->show(m_looked->bytes, {chosen.mapping, chosen.notes});
    m_mapping->QWidget::show();
    m_mapping->setFocus();
}

void TraceSection::compute(const TraceMapping& mapping)
{
    if (!m_looked || std::exchange(m_isBusy, true)) {
        return;
    }
    desk().workstation().desk.ask(
        this,
        [looked = m_looked, mapping](Office& office) {
            return std::shared_ptr<const TraceWork>(std::make_shared<TraceWork>(
                readForLoad(looked->basis, office.place().ids.next("tr"), looked->name,
                            looked->bytes, mapping)));
        },
        [this](std::shared_ptr<const TraceWork> work) {
            m_isBusy = false;
            computed(std::move(work));
        },
        [this] { m_isBusy = false; });
}

void TraceSection::computed(std::shared_ptr<const TraceWork> work)
{
    m_work = std::move(work);
    m_mapping->hide();
    if (m_plot == nullptr) {
        constexpr int leastHeight = 420;
        m_plot = new TracePlot(desk().workstation().look);
        m_plot->setMinimumHeight(leastHeight);
        m_found = new TraceFacts(desk().workstation().look);
        m_viewColumn->insertWidget(0, m_plot);
        m_viewColumn->insertWidget(1, m_found);
    }
    const TraceReading& reading = m_work->reading;
    m_plot->show(reading.trace, m_work->evaluation, m_work->asked,
                 simulation::saysSimulated(m_looked->bytes));
    m_found->show(reading.trace, m_work->evaluation, m_work->asked, reading.defects);
    m_attach->setVisible(!m_isKept);
    m_view->show();
    m_plot->setFocus();
}

void TraceSection::attach()
{
    if (!m_work || m_isKept || std::exchange(m_isBusy, true)) {
        return;
    }
    desk().workstation().desk.record(
        this,
        [who = *desk().workstation().session.who(), looked = m_looked, work = m_work](
            Office& office) { return Recorder(office).attach(who, work->act, looked->bytes); },
        [this](const OrRefusal<Appended>& answer) {
            m_isBusy = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told told = say(*refusal, desk().style());
                m_says->setText(text(told.says) + u' ' + text(told.next));
                m_says->show();
                return;
            }
            putAway();
            m_file->line()->clear();
            emit desk().says(tr("The recording is attached to this load."), {});
        },
        [this] { m_isBusy = false; });
}

void TraceSection::putAway()
{
    m_looked.reset();
    m_work.reset();
    m_mapping->hide();
    m_view->hide();
    m_says->hide();
}

} // namespace loadwarden::ui
