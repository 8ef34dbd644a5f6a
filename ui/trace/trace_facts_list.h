#pragma once

#include "core/cycle/trace/evaluate.h"

#include <QString>

#include <optional>
#include <vector>

namespace loadwarden::ui {

/// A figure of a trace: what it is, in words how much, whether what is asked is met, and what it
/// means. `means` may be empty.
struct TraceFact {
    QString what;
    QString says;
    std::optional<Shown> answer{}; ///< nullopt: nothing is asked of it
    QString means{};
};

struct TraceFactGroup {
    QString title;
    std::vector<TraceFact> facts;
    QString note{}; ///< a sentence under all of them
};

/// What is computed of a trace, by subject, in the order of a cycle. Nothing of microbiology where
/// no population is given.
[[nodiscard]] std::vector<TraceFactGroup>
factsOf(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked);

} // namespace loadwarden::ui
