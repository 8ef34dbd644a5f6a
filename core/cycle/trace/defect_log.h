#pragma once

#include "core/cycle/trace/trace_reader.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace loadwarden {

/// Collects the defects of a reading; the same of one channel in lines that follow each other
/// becomes one run. Slot 0 is for what concerns no channel, slot i + 1 for channel i.
class DefectLog {
public:
    DefectLog(TraceReading& reading, std::size_t channels, const TraceLimits& limits);

    /// Prolongs the run that a line continues; false: there is none, and the defect must be added.
    [[nodiscard]] bool prolong(TraceDefectKind kind, std::size_t slot, std::int64_t row,
                               std::int64_t line);

    /// Adds a defect; of a sample's line, counted by row, it begins a run.
    void add(TraceDefect defect, std::size_t slot = 0, std::int64_t row = noRow);

    /// Says of the defect added last, by which reading ended, how far it reaches.
    void prolongLast(std::int64_t samples, std::int64_t lastLine);

    static constexpr std::int64_t noRow = -2;

private:
    struct Run {
        std::int64_t lastRow = noRow;
        std::int64_t samples = 0;
        std::size_t told = 0; ///< index of the defect; beyond all of them: not told
    };

    [[nodiscard]] Run& runOf(TraceDefectKind kind, std::size_t slot);
    void becomeLost(const Run& run);

    TraceReading& m_reading;
    std::size_t m_slots;
    std::int64_t m_lostSamples;
    std::vector<Run> m_runs;
    bool m_lastIsTold = false;
};

} // namespace loadwarden
