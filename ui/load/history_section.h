#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// Everything that was recorded of the cycle, in order; what was corrected is struck through, not
/// hidden, and says by whom and why.
class HistorySection : public SheetSection {
    Q_OBJECT

public:
    explicit HistorySection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    void addLine(const HistoryLine& line, const Entry& entry, const LoadSheet& sheet);
    [[nodiscard]] QWidget* makeCorrection(const Entry& entry);
    void ask(std::int64_t seq);
    [[nodiscard]] QString saidOf(const Entry& entry);
    void strike(const Entry& entry, const QString& why, Field* field);
    void annotate(const Entry& entry, const QString& note, Field* field);

    QVBoxLayout* m_rows;
    std::int64_t m_correcting = 0; ///< seq of the entry whose correction is asked for; 0: none
    QString m_typed;               ///< the words for it, so that showing anew loses none
};

} // namespace loadwarden::ui
