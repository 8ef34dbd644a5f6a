#pragma once

#include "core/desk/cycle_record.h"
#include "ui/paper/kit/page_size.h"
#include "ui/records/second_desk.h"
#include "ui/shell/area.h"

#include <QFrame>

#include <memory>

class QComboBox;

namespace loadwarden::ui {

class FileAsk;

/// What is put on paper of a load or a test.
enum class SheetKind : std::uint8_t { record, hold, reprocess };

/// Asks where the record of a load or a test goes, or what is put on it while it is held or
/// reprocessed, and prints it or saves it as a PDF.
class RecordPaper : public QFrame {
    Q_OBJECT

public:
    explicit RecordPaper(Workstation& workstation, QWidget* parent = nullptr);

    /// Asks about this record.
    void ask(std::shared_ptr<const CycleRecord> record);

signals:
    void says(const QString& what, const QString& next);

private:
    void go(const QString& file, bool replaces);
    void save(const QString& file);
    void print(const QString& printer);
    [[nodiscard]] paper::PageSize size() const;
    [[nodiscard]] SheetKind kind() const;

    Workstation& m_workstation;
    SecondDesk m_second;
    QComboBox* m_what;
    QComboBox* m_where;
    QComboBox* m_size;
    FileAsk* m_ask;
    std::shared_ptr<const CycleRecord> m_record;
};

} // namespace loadwarden::ui
