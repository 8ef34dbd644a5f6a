#include "ui/records/record_paper.h"

#include "core/desk/journal_copy.h"
#include "ui/look/text.h"
#include "ui/paper/kit/pdf.h"
#include "ui/paper/sheets/hold_sheet.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/paper/sheets/load_record.h"
#include "ui/paper/sheets/reprocess_ticket.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/records/file_ask.h"
#include "ui/records/records_files.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLocale>
#include <QPainter>
#include <QPrinter>
#include <QPrinterInfo>

namespace loadwarden::ui {
namespace {

paper::House houseOf(const DeskLink& desk, paper::PageSize size)
{
    return {.style = desk.style(),
            .facility = desk.about().facility,
            .journal = desk.about().journal,
            .size = size};
}

paper::Pages pagesOf(SheetKind kind, const CycleRecord& record, const paper::House& house)
{
    switch (kind) {
    case SheetKind::record: break;
    case SheetKind::hold: return paper::holdSheet(record, house);
    case SheetKind::reprocess: return paper::reprocessTicket(record, house);
    }
    return paper::loadRecord(record, house);
}

} // namespace

RecordPaper::RecordPaper(Workstation& workstation, QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_second(workstation.desk),
      m_what(makeCombo()),
      m_where(makeCombo()),
      m_size(makeCombo()),
      m_ask(new FileAsk(tr("To this file"), tr("Save"), tr("PDF (*.pdf)")))
{
    setObjectName(QStringLiteral("banner"));
    setProperty("tone", "neutral");
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(space::large, space::small, space::page, space::small);
    row->setSpacing(space::small);
    m_size->addItem(tr("Letter"), static_cast<int>(paper::PageSize::letter));
    m_size->addItem(tr("A4"), static_cast<int>(paper::PageSize::a4));
    const bool isMetric = QLocale().measurementSystem() == QLocale::MetricSystem;
    m_size->setCurrentIndex(isMetric ? 1 : 0);
    row->addWidget(new Field(tr("Which"), m_what));
    row->addWidget(new Field(tr("Where to"), m_where));
    row->addWidget(new Field(tr("Page"), m_size));
    row->addWidget(m_ask, 1);
    connect(m_where, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_ask->setFileAsked(index <= 0);
        m_ask->setDoes(index <= 0 ? tr("Save") : tr("Print"));
    });
    connect(m_ask, &FileAsk::chosen, this, &RecordPaper::go);
    connect(m_ask, &FileAsk::left, this, &QWidget::hide);
    hide();
}

void RecordPaper::ask(std::shared_ptr<const CycleRecord> record)
{
    m_record = std::move(record);
    const QString lot = paper::lotText(m_record->view);
    const int kind = m_what->currentData().toInt();
    m_what->clear();
    m_what->addItem(tr("Record"), static_cast<int>(SheetKind::record));
    if (paper::isHeld(*m_record)) {
        m_what->addItem(tr("Hold sheet"), static_cast<int>(SheetKind::hold));
    }
    if (paper::isToReprocess(*m_record)) {
        m_what->addItem(tr("Reprocess ticket"), static_cast<int>(SheetKind::reprocess));
    }
    m_what->setCurrentIndex(std::max(0, m_what->findData(kind)));
    const QString before = m_where->currentText();
    m_where->clear();
    m_where->addItem(tr("PDF file"));
    m_where->addItems(QPrinterInfo::availablePrinterNames());
    m_where->setCurrentIndex(std::max(0, m_where->findText(before)));
    m_ask->go()->setAccessibleName(tr("Print or save %1 now").arg(lot));
    show();
    m_ask->ask(suggestedFile(m_workstation.desk, lot, QStringLiteral("pdf")));
}

paper::PageSize RecordPaper::size() const
{
    return static_cast<paper::PageSize>(m_size->currentData().toInt());
}

SheetKind RecordPaper::kind() const
{
    return static_cast<SheetKind>(m_what->currentData().toInt());
}

void RecordPaper::go(const QString& file, bool /*replaces*/)
{
    if (m_second.isBusy()) {
        return;
    }
    if (m_where->currentIndex() > 0) {
        print(m_where->currentText());
    } else if (isOfJournal(m_workstation.desk.file(), m_workstation.desk.place(),
                           file.toStdString())) {
        m_ask->setError(tr("That file belongs to the journal itself. Type another name."));
    } else {
        save(file);
    }
}

void RecordPaper::save(const QString& file)
{
    m_second.run(
        [record = m_record, which = kind(), house = houseOf(m_workstation.desk, size()),
         target = file.toStdString()](Office&, Progress&) {
            const paper::Pages pages = pagesOf(which, *record, house);
            paper::writePdf(pages, target);
            return pages.count();
        },
        [this, file, lot = paper::lotText(m_record->view)](const std::optional<int>& pages) {
            if (pages) {
                hide();
                emit says(tr("The paper of %1 is in %2. Pages: %3.").arg(lot, file).arg(*pages),
                          {});
            }
        },
        [this](const Trouble& trouble) { m_ask->setError(trouble.says); });
}

void RecordPaper::print(const QString& name)
{
    QPrinter printer(QPrinterInfo::printerInfo(name), QPrinter::HighResolution);
    printer.setResolution(static_cast<int>(paper::unitsPerInch));
    printer.setFullPage(true);
    printer.setPageSize(
        QPageSize(size() == paper::PageSize::letter ? QPageSize::Letter : QPageSize::A4));
    const paper::Pages pages =
        pagesOf(kind(), *m_record, houseOf(m_workstation.desk, size()));
    QPainter painter;
    bool isDone = painter.begin(&printer);
    for (int page = 0; isDone && page < pages.count(); ++page) {
        isDone = page == 0 || printer.newPage();
        if (isDone) {
            pages.paint(painter, page);
        }
    }
    if (!isDone) {
        emit says(tr("The printer %1 did not take it.").arg(name),
                  tr("Look whether it is on and has paper, or save a PDF."));
        return;
    }
    hide();
    emit says(
        tr("The record of %1 is with the printer %2.").arg(paper::lotText(m_record->view), name),
        tr("Look whether all %1 pages came out.").arg(pages.count()));
}

} // namespace loadwarden::ui
