#include "ui/trace/mapping_form.h"

#include "core/words/say_trace.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"
#include "ui/trace/mapping_columns.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr std::size_t linesAskedFor = 200; ///< beyond what stands before the samples
constexpr std::size_t linesShown = 8;
constexpr int tableHeight = 250;

template <typename Value>
void fill(QComboBox* combo, Value last)
{
    for (int i = 0; i <= static_cast<int>(last); ++i) {
        combo->addItem(text(say(static_cast<Value>(i))), i);
    }
}

template <typename Value>
void read(const QComboBox* combo, Value& into)
{
    into = static_cast<Value>(combo->currentIndex());
}

} // namespace

MappingForm::MappingForm(QWidget* parent)
    : QWidget(parent),
      m_table(new QTableWidget),
      m_columns(new MappingColumns),
      m_missing(makeLabel({}, Type::strong)),
      m_confirm(makeButton(tr("Read files of this recorder so"), ButtonKind::main))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("How this recorder's file is read"), Type::heading));
    column->addWidget(makeLabel(tr("This is proposed from the first lines of the file. Compare it "
                                   "with them and with the recorder's directions: a column taken "
                                   "for another gives wrong answers.")));
    m_table->setAccessibleName(tr("The first lines of the file"));
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionMode(QAbstractItemView::NoSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setCornerButtonEnabled(false); // nothing is selected
    m_table->setFixedHeight(tableHeight);
    column->addWidget(m_table);

    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::medium);
    m_encoding = addChoice(grid, tr("&Encoding"), m_fields[0]);
    m_separator = addChoice(grid, tr("Fields are parted &by"), m_fields[1]);
    m_decimal = addChoice(grid, tr("&Decimal mark"), m_fields[2]);
    m_timeForm = addChoice(grid, tr("&Times are written as"), m_fields[3]);
    m_dateOrder = addChoice(grid, tr("D&ates are written as"), m_fields[4]);
    fill(m_encoding, TextEncoding::latin1);
    fill(m_separator, FieldSeparator::tab);
    fill(m_decimal, DecimalMark::comma);
    fill(m_timeForm, TimeForm::dateTime);
    fill(m_dateOrder, DateOrder::monthDayYear);
    column->addLayout(grid);
    column->addWidget(m_columns);
    column->addWidget(m_missing);
    setStyleProperty(m_missing, "tone", "bad");

    auto* const row = new FlowLayout;
    QPushButton* const leave = makeButton(tr("Leave the file unread"));
    row->addWidget(m_confirm);
    row->addWidget(leave);
    column->addLayout(row);
    connect(leave, &QPushButton::clicked, this, &MappingForm::left);
    connect(m_confirm, &QPushButton::clicked, this, &MappingForm::confirmed);
    connect(m_columns, &MappingColumns::edited, this, &MappingForm::edited);
    for (QComboBox* const cut : {m_encoding, m_separator}) {
        connect(cut, &QComboBox::currentIndexChanged, this, &MappingForm::cutAnew);
    }
    for (QComboBox* const other : {m_decimal, m_timeForm, m_dateOrder}) {
        connect(other, &QComboBox::currentIndexChanged, this, &MappingForm::edited);
    }
}

QComboBox* MappingForm::addChoice(QGridLayout* grid, const QString& label, Field*& field)
{
    constexpr int across = 2;
    QComboBox* const combo = makeCombo();
    field = new Field(label, combo);
    const int place = grid->count();
    grid->addWidget(field, place / across, place % across);
    return combo;
}

void MappingForm::show(std::string bytes, const MappingProposal& proposal)
{
    m_bytes = std::move(bytes);
    m_mapping = proposal.mapping;
    m_notes = proposal.notes;
    m_isFilling = true;
    m_encoding->setCurrentIndex(static_cast<int>(m_mapping.encoding));
    m_separator->setCurrentIndex(static_cast<int>(m_mapping.separator));
    m_decimal->setCurrentIndex(static_cast<int>(m_mapping.decimal));
    m_timeForm->setCurrentIndex(static_cast<int>(m_mapping.time.form));
    m_dateOrder->setCurrentIndex(static_cast<int>(m_mapping.time.order));
    m_isFilling = false;
    m_lines = shownLines(m_bytes, m_mapping, 1,
                         m_mapping.headerLine + m_mapping.linesToSkip + linesAskedFor);
    const ProposedItem items[] = {ProposedItem::encoding, ProposedItem::separator,
                                  ProposedItem::decimal, ProposedItem::timeForm,
                                  ProposedItem::dateOrder};
    for (std::size_t i = 0; i < std::size(items); ++i) {
        m_fields[i]->setHint(whyOf(items[i]));
    }
    showLines();
    showColumns();
    edited();
}

QString MappingForm::whyOf(ProposedItem item) const
{
    const auto note = std::ranges::find(m_notes, item, &ProposalNote::item);
    return note == m_notes.end() ? QString() : text(say(*note));
}

std::size_t MappingForm::firstSample() const
{
    return std::min(m_mapping.headerLine + m_mapping.linesToSkip,
                    m_lines.empty() ? 0 : m_lines.size() - 1);
}

/// Encoding or separator are others: columns are counted anew, and nothing is known of them.
void MappingForm::cutAnew()
{
    if (m_isFilling) {
        return;
    }
    read(m_encoding, m_mapping.encoding);
    read(m_separator, m_mapping.separator);
    m_lines = shownLines(m_bytes, m_mapping, 1,
                         m_mapping.headerLine + m_mapping.linesToSkip + linesAskedFor);
    m_notes.clear();
    const std::size_t before = m_mapping.columns;
    m_mapping.columns = m_lines.empty() ? 0 : m_lines[firstSample()].fields.size();
    if (m_mapping.headerLine > 0 && m_mapping.headerLine <= m_lines.size()) {
        m_mapping.header = m_lines[m_mapping.headerLine - 1].fields;
        for (std::string& field : m_mapping.header) {
            field = text(field).trimmed().toStdString();
        }
    }
    if (m_mapping.columns != before) {
        m_mapping.channels.clear();
        m_mapping.counterColumn.reset();
        m_mapping.time.dateColumn.reset();
        m_mapping.time.column = 0;
    }
    for (Field* const field : m_fields) {
        field->setHint({});
    }
    showLines();
    showColumns();
    edited();
}

void MappingForm::showLines()
{
    const std::size_t first = m_mapping.headerLine > 0 ? m_mapping.headerLine - 1 : firstSample();
    const std::size_t count =
        first < m_lines.size() ? std::min(linesShown, m_lines.size() - first) : 0;
    m_table->clear();
    m_table->setRowCount(static_cast<int>(count));
    m_table->setColumnCount(static_cast<int>(m_mapping.columns));
    QStringList lines;
    for (std::size_t i = 0; i < count; ++i) {
        const ShownLine& line = m_lines[first + i];
        lines += tr("line %1").arg(line.line);
        for (std::size_t field = 0; field < std::min(line.fields.size(), m_mapping.columns);
             ++field) {
            m_table->setItem(static_cast<int>(i), static_cast<int>(field),
                             new QTableWidgetItem(text(line.fields[field])));
        }
    }
    QStringList numbers;
    for (std::size_t i = 1; i <= m_mapping.columns; ++i) {
        numbers += QString::number(i);
    }
    m_table->setHorizontalHeaderLabels(numbers);
    m_table->setVerticalHeaderLabels(lines);
    m_table->resizeColumnsToContents();
}

void MappingForm::showColumns()
{
    const auto from = m_lines.begin() + static_cast<std::ptrdiff_t>(firstSample());
    m_columns->show(m_mapping, m_notes, {from, m_lines.end()});
}

QString MappingForm::whatIsMissing() const
{
    if (m_lines.empty()) {
        return tr("The file holds no line. Take it from the recorder once more.");
    }
    const QString missing = m_columns->whatIsMissing();
    return missing.isEmpty() ? text(say(faultOf(m_mapping))) : missing;
}

void MappingForm::edited()
{
    if (m_isFilling) {
        return;
    }
    read(m_decimal, m_mapping.decimal);
    read(m_timeForm, m_mapping.time.form);
    read(m_dateOrder, m_mapping.time.order);
    m_columns->putInto(m_mapping);
    m_fields[4]->setVisible(m_mapping.time.form == TimeForm::dateTime);
    const QString missing = whatIsMissing();
    m_missing->setText(missing);
    m_missing->setVisible(!missing.isEmpty());
    m_confirm->setEnabled(missing.isEmpty());
}

} // namespace loadwarden::ui
