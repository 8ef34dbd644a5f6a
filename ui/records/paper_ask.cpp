#include "ui/records/paper_ask.h"

#include "core/desk/journal_copy.h"
#include "ui/look/text.h"
#include "ui/paper/kit/pdf.h"
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

#include <algorithm>

namespace loadwarden::ui {

PaperAsk::PaperAsk(Workstation& workstation, QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_second(workstation.desk),
      m_row(new QHBoxLayout(this)),
      m_where(makeCombo()),
      m_size(makeCombo()),
      m_ask(new FileAsk(tr("To this file"), tr("Save"), tr("PDF (*.pdf)")))
{
    setObjectName(QStringLiteral("banner"));
    setProperty("tone", "neutral");
    m_row->setContentsMargins(space::large, space::small, space::page, space::small);
    m_row->setSpacing(space::small);
    m_size->addItem(tr("Letter"), static_cast<int>(paper::PageSize::letter));
    m_size->addItem(tr("A4"), static_cast<int>(paper::PageSize::a4));
    const bool isMetric = QLocale().measurementSystem() == QLocale::MetricSystem;
    m_size->setCurrentIndex(isMetric ? 1 : 0);
    m_row->addWidget(new Field(tr("Where to"), m_where));
    m_row->addWidget(new Field(tr("Page"), m_size));
    m_row->addWidget(m_ask, 1);
    connect(m_where, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_ask->setFileAsked(index <= 0);
        m_ask->setDoes(index <= 0 ? tr("Save") : tr("Print"));
    });
    connect(m_ask, &FileAsk::chosen, this, &PaperAsk::go);
    connect(m_ask, &FileAsk::left, this, &QWidget::hide);
    hide();
}

void PaperAsk::addFirst(QWidget* question)
{
    m_row->insertWidget(0, question);
}

void PaperAsk::askFor(const QString& of, const QString& fileName)
{
    m_of = of;
    const QString before = m_where->currentText();
    m_where->clear();
    m_where->addItem(tr("PDF file"));
    m_where->addItems(QPrinterInfo::availablePrinterNames());
    m_where->setCurrentIndex(std::max(0, m_where->findText(before)));
    m_ask->go()->setAccessibleName(tr("Print or save %1 now").arg(of));
    show();
    m_ask->ask(suggestedFile(m_workstation.desk, fileName, QStringLiteral("pdf")));
}

paper::House PaperAsk::house() const
{
    const DeskLink& desk = m_workstation.desk;
    return {.style = desk.style(),
            .facility = desk.about().facility,
            .journal = desk.about().journal,
            .size = static_cast<paper::PageSize>(m_size->currentData().toInt())};
}

Date PaperAsk::today() const
{
    return m_workstation.desk.about().zone->dateOf(m_workstation.desk.now());
}

void PaperAsk::go(const QString& file)
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

void PaperAsk::save(const QString& file)
{
    m_second.run(
        [making = making(), house = house(), target = file.toStdString()](Office&, Progress&) {
            const paper::Pages pages = making(house);
            paper::writePdf(pages, target);
            return pages.count();
        },
        [this, file, of = m_of](const std::optional<int>& pages) {
            if (pages) {
                hide();
                emit says(tr("The paper of %1 is in %2. Pages: %3.").arg(of, file).arg(*pages), {});
            }
        },
        [this](const Trouble& trouble) { m_ask->setError(trouble.says); });
}

void PaperAsk::print(const QString& name)
{
    const paper::House house = this->house();
    QPrinter printer(QPrinterInfo::printerInfo(name), QPrinter::HighResolution);
    printer.setResolution(static_cast<int>(paper::unitsPerInch));
    printer.setFullPage(true);
    printer.setPageSize(
        QPageSize(house.size == paper::PageSize::letter ? QPageSize::Letter : QPageSize::A4));
    const paper::Pages pages = making()(house);
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
    emit says(tr("The paper of %1 is with the printer %2.").arg(m_of, name),
              tr("Look whether all %1 pages came out.").arg(pages.count()));
}

} // namespace loadwarden::ui
