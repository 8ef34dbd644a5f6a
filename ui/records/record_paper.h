#pragma once

#include "core/desk/cycle_record.h"
#include "ui/records/paper_ask.h"

#include <memory>

class QComboBox;

namespace loadwarden::ui {

/// Asks where the record of a load or a test goes, or what is put on it while it is held or
/// reprocessed, and prints it or saves it as a PDF.
class RecordPaper : public PaperAsk {
    Q_OBJECT

public:
    explicit RecordPaper(Workstation& workstation, QWidget* parent = nullptr);

    /// Asks about this record.
    void ask(std::shared_ptr<const CycleRecord> record);

private:
    [[nodiscard]] Making making() const override;

    QComboBox* m_what;
    std::shared_ptr<const CycleRecord> m_record;
};

} // namespace loadwarden::ui
