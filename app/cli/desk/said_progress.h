#pragma once

#include "core/store/progress.h"

#include <cstdint>
#include <iosfwd>

namespace loadwarden::cli {

/// Says on the terminal how far something has come, at most a hundred times.
class SaidProgress : public Progress {
public:
    /// Work of fewer steps is done before anybody wonders, and says nothing.
    explicit SaidProgress(std::ostream& err, std::int64_t least = 100'000)
        : m_err(err), m_least(least)
    {
    }
    ~SaidProgress() override;
    SaidProgress(const SaidProgress&) = delete;
    SaidProgress& operator=(const SaidProgress&) = delete;

    bool goOn(std::int64_t done, std::int64_t total) override;

private:
    std::ostream& m_err;
    std::int64_t m_least;
    std::int64_t m_said = -1;
};

/// The same of work that Ctrl-C ends as soon as it can be left, instead of the program. One at a
/// time.
class StoppableProgress final : public SaidProgress {
public:
    explicit StoppableProgress(std::ostream& err, std::int64_t least);
    ~StoppableProgress() override;
    StoppableProgress(const StoppableProgress&) = delete;
    StoppableProgress& operator=(const StoppableProgress&) = delete;

    bool goOn(std::int64_t done, std::int64_t total) override;

private:
    void (*m_before)(int);
};

} // namespace loadwarden::cli
