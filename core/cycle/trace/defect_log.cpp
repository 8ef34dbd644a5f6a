#include "core/cycle/trace/defect_log.h"

#include <algorithm>
#include <utility>

namespace loadwarden {

DefectLog::DefectLog(TraceReading& reading, std::size_t channels, const TraceLimits& limits)
    : m_reading(reading),
      m_slots(channels + 1),
      m_lostSamples(limits.lostSamples),
      m_runs(traceDefectKindCount * (channels + 1))
{
}

DefectLog::Run& DefectLog::runOf(TraceDefectKind kind, std::size_t slot)
{
    return m_runs[static_cast<std::size_t>(kind) * m_slots + slot];
}

bool DefectLog::prolong(TraceDefectKind kind, std::size_t slot, std::int64_t row, std::int64_t line)
{
    Run& run = runOf(kind, slot);
    if (run.lastRow != row - 1) {
        return false;
    }
    run.lastRow = row;
    ++run.samples;
    if (run.told < m_reading.defects.size()) {
        m_reading.defects[run.told].lastLine = line;
        m_reading.defects[run.told].samples = run.samples;
    }
    if (kind == TraceDefectKind::valueMissing && run.samples == m_lostSamples) {
        becomeLost(run);
    }
    return true;
}

void DefectLog::becomeLost(const Run& run)
{
    --m_reading.counts[static_cast<std::size_t>(TraceDefectKind::valueMissing)];
    ++m_reading.counts[static_cast<std::size_t>(TraceDefectKind::sensorLost)];
    if (run.told < m_reading.defects.size()) {
        m_reading.defects[run.told].kind = TraceDefectKind::sensorLost;
    }
}

void DefectLog::add(TraceDefect defect, std::size_t slot, std::int64_t row)
{
    ++m_reading.counts[static_cast<std::size_t>(defect.kind)];
    defect.lastLine = std::max(defect.lastLine, defect.place.line);
    const bool isTold = m_reading.defects.size() < mostDefectsTold;
    if (row != noRow) {
        defect.samples = std::max<std::int64_t>(defect.samples, 1);
        runOf(defect.kind, slot) = {row, defect.samples,
                                    isTold ? m_reading.defects.size() : SIZE_MAX};
    }
    m_lastIsTold = isTold;
    if (isTold) {
        m_reading.defects.push_back(std::move(defect));
    }
}

void DefectLog::prolongLast(std::int64_t samples, std::int64_t lastLine)
{
    if (m_lastIsTold) {
        m_reading.defects.back().samples = samples;
        m_reading.defects.back().lastLine = lastLine;
    }
}

} // namespace loadwarden
