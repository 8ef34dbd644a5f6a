#pragma once

#include "core/cycle/trace/mapping_proposal.h"

#include <QWidget>

#include <string>
#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;
class QPushButton;
class QTableWidget;

namespace loadwarden::ui {

class Field;
class MappingColumns;

/// How a recorder's file is read: the first lines, what is proposed and why. Nothing is read by it
/// before a person confirms it.
class MappingForm : public QWidget {
    Q_OBJECT

public:
    explicit MappingForm(QWidget* parent = nullptr);

    /// Of a file's bytes; what is proposed may also be a mapping that does not fit any more.
    void show(std::string bytes, const MappingProposal& proposal);
    using QWidget::show;
    [[nodiscard]] const TraceMapping& mapping() const { return m_mapping; }
    /// In plain words; empty: it can be confirmed.
    [[nodiscard]] QString whatIsMissing() const;

signals:
    void confirmed();
    void left();

private:
    QComboBox* addChoice(QGridLayout* grid, const QString& label, Field*& field);
    void cutAnew();
    void showLines();
    void showColumns();
    void edited();
    [[nodiscard]] std::size_t firstSample() const;
    [[nodiscard]] QString whyOf(ProposedItem item) const;

    std::string m_bytes;
    TraceMapping m_mapping;
    std::vector<ProposalNote> m_notes;
    std::vector<ShownLine> m_lines;
    bool m_isFilling = false;

    Field* m_fields[5]{};
    QComboBox* m_encoding;
    QComboBox* m_separator;
    QComboBox* m_decimal;
    QComboBox* m_timeForm;
    QComboBox* m_dateOrder;
    QTableWidget* m_table;
    MappingColumns* m_columns;
    QLabel* m_missing;
    QPushButton* m_confirm;
};

} // namespace loadwarden::ui
