#pragma once

#include "core/cycle/trace/mapping_proposal.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;

namespace loadwarden::ui {

/// What each column of a recorder's file holds and in which unit, a row for each column, with why
/// it is proposed.
class MappingColumns : public QWidget {
    Q_OBJECT

public:
    explicit MappingColumns(QWidget* parent = nullptr);

    /// `samples` are lines of the file, to show what stands in a column.
    void show(const TraceMapping& mapping, const std::vector<ProposalNote>& notes,
              const std::vector<ShownLine>& samples);
    using QWidget::show;
    /// Writes what is chosen into a mapping. Of two columns with the time the first counts, and the
    /// second makes it unsound.
    void putInto(TraceMapping& mapping) const;
    /// What a person must still choose, a sentence; empty: nothing.
    [[nodiscard]] QString whatIsMissing() const;

signals:
    void edited();

private:
    struct Row {
        std::string name;
        QComboBox* holds;
        QComboBox* unit;
        QComboBox* zero;
    };

    void addRow(std::size_t column, const TraceMapping& mapping,
                const std::vector<ProposalNote>& notes, const std::vector<ShownLine>& samples);
    static void offerUnits(const Row& row);
    [[nodiscard]] int count(int holds) const;

    QGridLayout* m_grid;
    std::vector<Row> m_rows;
};

} // namespace loadwarden::ui
