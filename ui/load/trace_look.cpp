#include "ui/load/trace_look.h"

#include "core/cycle/simulation/trace_text.h"
#include "core/desk/journal_copy.h"
#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/paper/kit/pdf.h"
#include "ui/paper/sheets/house.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/parts/flow_layout.h"
#include "ui/trace/mapping_form.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"
#include "ui/trace/trace_sheet.h"

#include <QFileDialog>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>
#include <variant>

namespace loadwarden::ui {

TraceLook::TraceLook(CycleDesk& desk, QWidget* parent)
    : QWidget(parent),
      m_desk(desk),
      m_mapping(new MappingForm(this)),
      m_seen(new QWidget(this)),
      m_name(makeLabel({}, Type::strong)),
      m_plot(new TracePlot(desk.workstation().look, m_seen)),
      m_facts(new TraceFacts(desk.workstation().look, m_seen)),
      m_attach(makeButton(tr("Attach it to this load"), ButtonKind::main)),
      m_refused(makeLabel({})),
      m_saved(makeMuted({}))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, space::small, 0, 0);
    column->addWidget(m_mapping);
    column->addWidget(m_seen);
    auto* const seen = new QVBoxLayout(m_seen);
    seen->setContentsMargins(0, 0, 0, 0);
    seen->addWidget(m_name);
    seen->addWidget(m_plot);
    seen->addWidget(m_facts);
    m_refused->setProperty("tone", "bad");
    m_refused->hide();
    seen->addWidget(m_refused);
    m_saved->hide();
    seen->addWidget(m_saved);
    auto* const buttons = new FlowLayout;
    auto* const onPaper = makeButton(tr("Save as PDF…"));
    onPaper->setAccessibleName(tr("Save picture and figures as PDF"));
    auto* const away = makeButton(tr("Put it away"), ButtonKind::quiet);
    buttons->addWidget(m_attach);
    buttons->addWidget(onPaper);
    buttons->addWidget(away);
    seen->addLayout(buttons);
    m_mapping->hide();
    m_seen->hide();
    connect(m_mapping, &MappingForm::confirmed, this, [this] { compute(m_mapping->mapping()); });
    connect(m_mapping, &MappingForm::left, this, &TraceLook::leave);
    connect(m_attach, &QPushButton::clicked, this, &TraceLook::attach);
    connect(onPaper, &QPushButton::clicked, this, &TraceLook::askForPaper);
    connect(away, &QPushButton::clicked, this, &TraceLook::leave);
}

void TraceLook::look(TraceFile file)
{
    m_file = std::make_shared<const TraceFile>(std::move(file));
    m_work.reset();
    m_mapping->hide();
    m_seen->hide();
    m_refused->hide();
    m_saved->hide();
    const ChosenMapping& chosen = m_file->chosen;
    if (chosen.origin == MappingOrigin::remembered) {
        compute(chosen.mapping);
        return;
    }
    m_mapping->show(m_file->bytes, {chosen.mapping, chosen.notes});
    m_mapping->show();
    m_mapping->setFocus();
}

void TraceLook::compute(const TraceMapping& mapping)
{
    if (!m_file || std::exchange(m_isBusy, true)) {
        return;
    }
    m_desk.workstation().desk.ask(
        this,
        [file = m_file, mapping](Office& office) {
            return std::shared_ptr<const TraceWork>(std::make_shared<TraceWork>(readForLoad(
                file->basis, office.place().ids.next("tr"), file->name, file->bytes, mapping)));
        },
        [this, file = m_file](std::shared_ptr<const TraceWork> work) {
            m_isBusy = false;
            if (file == m_file) {
                showWork(std::move(work));
            } else if (m_file && m_file->chosen.origin == MappingOrigin::remembered) {
                compute(m_file->chosen.mapping); // another came meanwhile
            }
        },
        [this] { m_isBusy = false; });
}

void TraceLook::showWork(std::shared_ptr<const TraceWork> work)
{
    m_work = std::move(work);
    const TraceReading& reading = m_work->reading;
    m_name->setText(withBreaks(text(m_file->name)));
    m_plot->show(reading.trace, m_work->evaluation, m_work->asked,
                 simulation::saysSimulated(m_file->bytes));
    m_facts->show(reading.trace, m_work->evaluation, m_work->asked, reading.defects);
    m_attach->setVisible(!m_file->isKept);
    m_mapping->hide();
    m_seen->show();
    m_plot->setFocus();
}

void TraceLook::attach()
{
    if (!m_work || m_file->isKept || std::exchange(m_isBusy, true)) {
        return;
    }
    m_desk.workstation().desk.record(
        this,
        [who = *m_desk.workstation().session.who(), file = m_file, work = m_work](Office& office) {
            return Recorder(office).attach(who, work->act, file->bytes);
        },
        [this](const OrRefusal<Appended>& answer) {
            m_isBusy = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told told = say(*refusal, m_desk.style());
                m_refused->setText(text(told.says) + u' ' + text(told.next));
                m_refused->show();
                return;
            }
            leave();
            emit attached();
        },
        [this] { m_isBusy = false; });
}

void TraceLook::askForPaper()
{
    const QString file =
        QFileDialog::getSaveFileName(this, tr("Save picture and figures as PDF"),
                                     tr("%1 recording.pdf").arg(m_desk.lot()), tr("PDF (*.pdf)"));
    if (!file.isEmpty()) {
        savePaper(file);
    }
}

void TraceLook::savePaper(const QString& file)
{
    if (!m_work || m_desk.sheet() == nullptr) {
        return;
    }
    const CycleRecord& record = m_desk.sheet()->record;
    const DeskLink& desk = m_desk.workstation().desk;
    if (isOfJournal(desk.file(), desk.place(), file.toStdString())) {
        m_saved->setText(tr("That file belongs to the journal itself. Choose another name."));
        m_saved->show();
        return;
    }
    const bool isMetric = QLocale().measurementSystem() == QLocale::MetricSystem;
    const paper::House house{.style = m_desk.style(),
                             .facility = desk.about().facility,
                             .journal = desk.about().journal,
                             .size = isMetric ? paper::PageSize::a4 : paper::PageSize::letter};
    const TraceOnPaper of{.sterilizer = text(record.names.of(record.view.folded.sterilizer)),
                          .file = text(m_file->name),
                          .kept = m_file->isKept,
                          .simulated = simulation::saysSimulated(m_file->bytes),
                          .picture = [this](QPainter& on, const QRectF& in) {
                              m_plot->paint(on, in, TracePlot::Part::whole);
                          }};
    const paper::Frame frame =
        paper::frameOf(house, tr("The sterilizer's recording"), paper::lotText(record.view),
                       m_desk.now(), record.head);
    try {
        const paper::Pages pages =
            traceSheet(of, m_work->reading, m_work->evaluation, m_work->asked, frame, house.size);
        paper::writePdf(pages, file.toStdString());
        m_saved->setText(tr("Picture and figures are in %1.").arg(file));
    } catch (const std::exception&) {
        m_saved->setText(tr("The paper could not be written to %1. Choose another folder, or make "
                            "room there.")
                             .arg(file));
    }
    m_saved->show();
}

void TraceLook::leave()
{
    m_file.reset();
    m_work.reset();
    emit left();
}

} // namespace loadwarden::ui
