#include "ui/records/record_paper.h"

#include "ui/paper/sheets/hold_sheet.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/paper/sheets/load_record.h"
#include "ui/paper/sheets/reprocess_ticket.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"

#include <QComboBox>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

/// What is put on paper of a load or a test.
enum class SheetKind : std::uint8_t { record, hold, reprocess };

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
    : PaperAsk(workstation, parent), m_what(makeCombo())
{
    addFirst(new Field(tr("Which"), m_what));
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
    askFor(lot, lot);
}

PaperAsk::Making RecordPaper::making() const
{
    return [record = m_record, kind = static_cast<SheetKind>(m_what->currentData().toInt())](
               const paper::House& house) { return pagesOf(kind, *record, house); };
}

} // namespace loadwarden::ui
