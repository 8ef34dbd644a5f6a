#include "ui/load/trace_section.h"

#include "core/acts/fold/facts.h"
#include "ui/load/load_text.h"
#include "ui/load/trace_look.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

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

/// A name for a button, which does not wrap: its beginning and its end.
QString shortened(const QString& name)
{
    constexpr int most = 40; // characters
    constexpr int end = 12;
    return name.size() <= most ? name : name.left(most - end - 1) + u'…' + name.right(end);
}

} // namespace

TraceSection::TraceSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("The sterilizer's recording"), parent),
      m_facts(new Facts(this)),
      m_kept(new QVBoxLayout),
      m_file(new FileEdit(FileEdit::What::openFile, tr("Choose a recorder's file"))),
      m_field(new Field(tr("A recorder's file of this cycle"), m_file,
                        tr("text with the temperatures and the pressure of the cycle; it may also "
                           "be dropped on this page")))
{
    column()->addWidget(m_facts);
    column()->addLayout(m_kept);
    auto* const row = new QHBoxLayout;
    row->addWidget(m_field, 1);
    auto* const look = makeButton(tr("Look at it"));
    row->addWidget(look, 0, Qt::AlignVCenter);
    column()->addLayout(row);
    connect(look, &QPushButton::clicked, this, &TraceSection::openTyped);
    connect(m_file->line(), &QLineEdit::returnPressed, this, &TraceSection::openTyped);
}

void TraceSection::show(const LoadSheet& sheet)
{
    const auto& record = sheet.view().folded.record;
    const bool isSteam = !record.specification || record.specification->method == Method::steam;
    setVisible(!sheet.view().isTest() && !sheet.view().isImported() && sheet.state.started
               && isSteam);
    m_facts->clear();
    const FactBook book(sheet.record.entries);
    std::map<std::string, std::string> names;
    for (const TraceFindings& trace : record.load.traces) {
        const TraceRead* const read = keptTrace(sheet, book, trace.id);
        names[trace.id] = read == nullptr ? trace.id : read->fileName;
    }
    const bool isNew = std::exchange(m_names, names) != names;
    if (isNew) {
        clearLayout(m_kept);
    }
    for (const TraceFindings& trace : record.load.traces) {
        const QString name = text(m_names[trace.id]);
        m_facts->add(tr("Attached"), name, whoText(trace.act, sheet, desk().style()));
        if (isNew) {
            auto* const look = makeButton(tr("Look at %1").arg(shortened(name)), ButtonKind::quiet);
            look->setAccessibleName(tr("Look at %1").arg(name));
            connect(look, &QPushButton::clicked, this, [this, id = trace.id] { openKept(id); });
            m_kept->addWidget(look, 0, Qt::AlignLeft);
        }
    }
    setState(record.load.traces.empty() ? tr("none attached") : QString());
}

std::string TraceSection::nameOf(const std::string& id) const
{
    const auto named = m_names.find(id);
    return named == m_names.end() ? std::string() : named->second;
}

void TraceSection::goTo(const QString& subject)
{
    if (desk().sheet() != nullptr && !subject.isEmpty()) {
        const auto& traces = desk().sheet()->view().folded.record.load.traces;
        if (std::ranges::find(traces, subject.toStdString(), &TraceFindings::id) != traces.end()) {
            openKept(subject.toStdString());
            return;
        }
    }
    m_file->line()->setFocus();
}

void TraceSection::refuse(const QString& why)
{
    m_field->setError(why);
    m_file->line()->setFocus();
}

void TraceSection::openTyped()
{
    if (m_file->path().trimmed().isEmpty()) {
        refuse(tr("Choose the file that the recorder wrote of this cycle."));
        return;
    }
    open(m_file->path().trimmed());
}

void TraceSection::open(const QString& path)
{
    if (std::exchange(m_isBusy, true)) {
        return;
    }
    m_file->line()->setText(path);
    m_field->setError({});
    desk().workstation().desk.ask(
        this,
        [path, cycle = desk().cycle()](Office& office) { return traceFileOf(office, cycle, path); },
        [this](std::variant<QString, TraceFile> answer) {
            m_isBusy = false;
            if (const auto* const wrong = std::get_if<QString>(&answer)) {
                refuse(*wrong);
                return;
            }
            look(std::get<TraceFile>(std::move(answer)));
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
    desk().workstation().desk.ask(
        this,
        [kept = *read, cycle = desk().cycle()](Office& office) {
            return keptTraceFile(office, cycle, kept);
        },
        [this](std::optional<TraceFile> answer) {
            m_isBusy = false;
            if (!answer) {
                emit desk().says(tr("The file of this trace is not in the journal."),
                                 tr("Verify the journal on the page Records."));
                return;
            }
            look(*std::move(answer));
        },
        [this] { m_isBusy = false; });
}

void TraceSection::look(TraceFile file)
{
    if (m_look == nullptr) {
        m_look = new TraceLook(desk(), this);
        column()->addWidget(m_look);
        connect(m_look, &TraceLook::attached, this, [this] {
            m_file->line()->clear();
            emit desk().says(tr("The recording is attached to this load."), {});
        });
        connect(m_look, &TraceLook::left, this, [this] {
            m_file->line()->setFocus(); // before what had the keyboard is hidden
            m_look->hide();
        });
    }
    m_look->show();
    m_look->look(std::move(file));
}

} // namespace loadwarden::ui
