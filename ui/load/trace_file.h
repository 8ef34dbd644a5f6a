#pragma once

#include "core/acts/kinds/trace_acts.h"
#include "core/desk/office.h"
#include "core/desk/trace_work.h"

#include <QString>

#include <optional>
#include <string>
#include <variant>

namespace loadwarden::ui {

/// A recorder's file while it is looked at for a load.
struct TraceFile {
    std::string name; ///< without its folder
    std::string bytes;
    TraceBasis basis;
    ChosenMapping chosen;
    bool isKept = false; ///< it is attached already
};

// Both are asked in the reader's thread. Throw StoreError.

/// A file of this computer for a load (ld-), or in plain words why not.
[[nodiscard]] std::variant<QString, TraceFile> traceFileOf(Office& office, const std::string& cycle,
                                                           const QString& path);

/// One that was attached before, read as it was then; nullopt: it is not in the journal any more.
[[nodiscard]] std::optional<TraceFile> keptTraceFile(Office& office, const std::string& cycle,
                                                     const TraceRead& read);

} // namespace loadwarden::ui
