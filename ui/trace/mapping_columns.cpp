#include "ui/trace/mapping_columns.h"

#include "core/words/say_trace.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/combo.h"

#include <QComboBox>
#include <QGridLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

// What a column may hold besides a channel; beyond the channels' roles.
constexpr int holdsTime = 100;
constexpr int holdsDate = 101;
constexpr int holdsCounter = 102;

constexpr std::size_t valuesShown = 3;

QString startCase(QString said)
{
    if (!said.isEmpty()) {
        said.front() = said.front().toUpper();
    }
    return said;
}

int holdsOf(const TraceMapping& mapping, std::size_t column)
{
    if (mapping.time.column == column) {
        return holdsTime;
    }
    if (mapping.time.dateColumn == column) {
        return holdsDate;
    }
    if (mapping.counterColumn == column) {
        return holdsCounter;
    }
    const auto channel = std::ranges::find(mapping.channels, column, &MappedChannel::column);
    return static_cast<int>(channel == mapping.channels.end() ? ChannelRole::notUsed
                                                              : channel->role);
}

int heldBy(const QComboBox* combo)
{
    return combo->currentData().toInt();
}

bool isChannel(int holds)
{
    return holds < static_cast<int>(ChannelRole::notUsed);
}

bool isPressureRole(int holds)
{
    return holds == static_cast<int>(ChannelRole::chamberPressure);
}

void choose(QComboBox* combo, int data)
{
    combo->setCurrentIndex(std::max(0, combo->findData(data)));
}

} // namespace

MappingColumns::MappingColumns(QWidget* parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(space::medium);
    m_grid->setVerticalSpacing(space::hair);
    m_grid->setColumnStretch(0, 3);
    m_grid->setColumnStretch(1, 4);
    m_grid->setColumnStretch(2, 3);
}

void MappingColumns::show(const TraceMapping& mapping, const std::vector<ProposalNote>& notes,
                          const std::vector<ShownLine>& samples)
{
    clearLayout(m_grid);
    m_rows.clear();
    const QStringList heads{tr("Column, and its first values"), tr("Holds"),
                            tr("Unit, and counted from")};
    for (int i = 0; i < heads.size(); ++i) {
        m_grid->addWidget(makeLabel(heads[i], Type::strong), 0, i);
    }
    for (std::size_t column = 0; column < mapping.columns; ++column) {
        addRow(column, mapping, notes, samples);
    }
}

void MappingColumns::addRow(std::size_t column, const TraceMapping& mapping,
                            const std::vector<ProposalNote>& notes,
                            const std::vector<ShownLine>& samples)
{
    Row row{column < mapping.header.size() ? mapping.header[column] : std::string(), makeCombo(),
            makeCombo(), makeCombo()};
    for (QComboBox* const combo : {row.holds, row.unit, row.zero}) {
        combo->setParent(this); // else it would be a window while it is filled
    }
    const QString name = row.name.empty()
                             ? tr("Column %1").arg(column + 1)
                             : tr("%1: %2", "column, header").arg(column + 1).arg(text(row.name));
    QStringList values;
    for (const ShownLine& line : samples) {
        if (column < line.fields.size() && values.size() < static_cast<int>(valuesShown)) {
            values += text(line.fields[column]);
        }
    }
    for (int i = 0; i <= static_cast<int>(ChannelRole::notUsed); ++i) {
        row.holds->addItem(startCase(text(say(static_cast<ChannelRole>(i)))), i);
    }
    row.holds->addItem(tr("Time"), holdsTime);
    row.holds->addItem(tr("Date, apart from the time"), holdsDate);
    row.holds->addItem(tr("Cycle counter"), holdsCounter);
    for (const PressureZero zero : {PressureZero::absolute, PressureZero::gauge}) {
        row.zero->addItem(startCase(text(say(zero))), static_cast<int>(zero));
    }
    row.holds->setAccessibleName(tr("%1: holds").arg(name));
    row.unit->setAccessibleName(tr("%1: unit").arg(name));
    row.zero->setAccessibleName(tr("%1: counted from").arg(name));
    choose(row.holds, holdsOf(mapping, column));
    offerUnits(row);
    if (const auto channel = std::ranges::find(mapping.channels, column, &MappedChannel::column);
        channel != mapping.channels.end()) {
        choose(row.unit, static_cast<int>(channel->unit));
        choose(row.zero, static_cast<int>(channel->zero));
    }

    QStringList why;
    for (const ProposalNote& note : notes) {
        const bool isOfChannel = note.item == ProposedItem::unit || note.item == ProposedItem::zero;
        if (note.column == column + 1 && (!isOfChannel || isChannel(heldBy(row.holds)))) {
            why += tr("%1: %2", "an item of a mapping, why it is proposed")
                       .arg(startCase(text(say(note.item))), text(say(note)));
        }
    }
    const int at = m_grid->rowCount();
    QLabel* const named = makeLabel(name, Type::strong);
    named->setToolTip(values.join(QStringLiteral("; ")));
    auto* const named2 = new QVBoxLayout;
    named2->setSpacing(0);
    named2->addWidget(named);
    named2->addWidget(makeMuted(values.join(QStringLiteral("; "))));
    m_grid->addLayout(named2, at, 0);
    m_grid->addWidget(row.holds, at, 1);
    auto* const unit = new QVBoxLayout; // beside each other they do not fit a small window
    unit->setSpacing(space::hair);
    unit->addWidget(row.unit);
    unit->addWidget(row.zero);
    m_grid->addLayout(unit, at, 2);
    m_grid->addWidget(makeMuted(why.join(QStringLiteral(" "))), at + 1, 0, 1, 3);
    m_grid->addWidget(makeRule(), at + 2, 0, 1, 3);
    connect(row.holds, &QComboBox::currentIndexChanged, this, [this, row] {
        offerUnits(row);
        emit edited();
    });
    connect(row.unit, &QComboBox::currentIndexChanged, this, &MappingColumns::edited);
    connect(row.zero, &QComboBox::currentIndexChanged, this, &MappingColumns::edited);
    m_rows.push_back(std::move(row));
}

/// The units of what a column holds; what is chosen stays where it may.
void MappingColumns::offerUnits(const Row& row)
{
    const int holds = heldBy(row.holds);
    const bool isPressure = isPressureRole(holds);
    const QVariant before = row.unit->currentData();
    const QSignalBlocker quiet(row.unit);
    row.unit->clear();
    for (int i = 0; isChannel(holds) && i <= static_cast<int>(RecorderUnit::mmHg); ++i) {
        const auto unit = static_cast<RecorderUnit>(i);
        if (isTemperature(unit) != isPressure) {
            row.unit->addItem(text(say(unit)), i);
        }
    }
    if (before.isValid()) {
        choose(row.unit, before.toInt());
    }
    row.unit->setEnabled(isChannel(holds));
    row.zero->setEnabled(isPressure);
    row.zero->setVisible(isPressure);
    row.unit->setVisible(isChannel(holds));
}

int MappingColumns::count(int holds) const
{
    return static_cast<int>(
        std::ranges::count_if(m_rows, [&](const Row& row) { return heldBy(row.holds) == holds; }));
}

void MappingColumns::putInto(TraceMapping& mapping) const
{
    mapping.channels.clear();
    mapping.counterColumn.reset();
    mapping.time.dateColumn.reset();
    bool hasTime = false;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const Row& row = m_rows[i];
        const int holds = heldBy(row.holds);
        if (holds == holdsTime && !hasTime) {
            mapping.time.column = i;
            hasTime = true;
        } else if (holds == holdsDate) {
            mapping.time.dateColumn = i;
        } else if (holds == holdsCounter) {
            mapping.counterColumn = i;
        } else if (isChannel(holds)) {
            mapping.channels.push_back(
                {i, row.name, static_cast<ChannelRole>(holds),
                 static_cast<RecorderUnit>(row.unit->currentData().toInt()),
                 isPressureRole(holds) ? static_cast<PressureZero>(row.zero->currentData().toInt())
                                       : PressureZero::absolute});
        }
    }
}

QString MappingColumns::whatIsMissing() const
{
    if (count(holdsTime) != 1) {
        return tr("Choose the one column that holds the time.");
    }
    if (count(holdsDate) > 1 || count(holdsCounter) > 1) {
        return tr("Date and cycle counter can each stand in one column only.");
    }
    int temperatures = 0;
    for (int i = 0; i < static_cast<int>(ChannelRole::notUsed); ++i) {
        temperatures += isPressureRole(i) ? 0 : count(i);
    }
    if (temperatures == 0) {
        return tr("Choose at least one column that holds a temperature.");
    }
    if (count(static_cast<int>(ChannelRole::chamberPressure)) > 1) {
        return tr("Choose one column only as the chamber pressure.");
    }
    return {};
}

} // namespace loadwarden::ui
