#include "core/cycle/trace/trace_mapping.h"

#include <bitset>

namespace loadwarden {
namespace {

/// Columns that are taken, each by one thing.
class TakenColumns {
public:
    explicit TakenColumns(std::size_t columns) noexcept : m_columns(columns) {}

    void take(std::size_t column) noexcept
    {
        if (m_fault != MappingFault::none) {
            return;
        }
        if (column >= m_columns) {
            m_fault = MappingFault::columnOutside;
        } else if (m_taken[column]) {
            m_fault = MappingFault::columnTwice;
        } else {
            m_taken[column] = true;
        }
    }

    [[nodiscard]] MappingFault fault() const noexcept { return m_fault; }

private:
    std::size_t m_columns;
    std::bitset<mostTraceColumns> m_taken;
    MappingFault m_fault = MappingFault::none;
};

bool isKnown(const TraceMapping& mapping) noexcept
{
    bool isSo = mapping.encoding <= TextEncoding::latin1 && mapping.separator <= FieldSeparator::tab
                && mapping.decimal <= DecimalMark::comma && mapping.time.form <= TimeForm::dateTime
                && mapping.time.order <= DateOrder::monthDayYear;
    for (const MappedChannel& channel : mapping.channels) {
        isSo = isSo && channel.role <= ChannelRole::notUsed && channel.unit <= RecorderUnit::mmHg
               && channel.zero <= PressureZero::gauge;
    }
    return isSo;
}

} // namespace

MappingFault faultOf(const TraceMapping& mapping) noexcept
{
    if (!isKnown(mapping)) {
        return MappingFault::impossibleValue;
    }
    if (mapping.columns == 0) {
        return MappingFault::noColumns;
    }
    if (mapping.columns > mostTraceColumns || mapping.header.size() > mostTraceColumns) {
        return MappingFault::tooManyColumns;
    }
    if (mapping.header.empty() != (mapping.headerLine == 0)) {
        return MappingFault::headerWithoutLine;
    }
    if (mapping.time.dateColumn && mapping.time.form != TimeForm::dateTime) {
        return MappingFault::dateWithoutClock;
    }
    TakenColumns taken(mapping.columns);
    taken.take(mapping.time.column);
    if (mapping.time.dateColumn) {
        taken.take(*mapping.time.dateColumn);
    }
    if (mapping.counterColumn) {
        taken.take(*mapping.counterColumn);
    }
    bool hasChannel = false;
    bool hasOtherUnit = false;
    for (const MappedChannel& channel : mapping.channels) {
        if (channel.role == ChannelRole::notUsed) {
            continue;
        }
        hasChannel = true;
        taken.take(channel.column);
        hasOtherUnit = hasOtherUnit || isTemperature(channel.role) != isTemperature(channel.unit);
    }
    if (taken.fault() != MappingFault::none) {
        return taken.fault();
    }
    return !hasChannel    ? MappingFault::noChannel
           : hasOtherUnit ? MappingFault::unitOfOtherKind
                          : MappingFault::none;
}

} // namespace loadwarden
