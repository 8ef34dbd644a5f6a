#pragma once

#include "core/cycle/simulation/simulation.h"
#include "core/cycle/simulation/trace_text.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

#include <utility>
#include <vector>

namespace loadwarden::ui_tests {

/// Writes a simulated recorder's file of the cycle with counter 101, which ran at 132 °C; its path.
inline QString writeRecording(const QTemporaryDir& folder,
                              std::vector<simulation::Fault> faults = {},
                              std::vector<TraceDefectKind> defects = {})
{
    simulation::Settings settings;
    settings.setCelsius = 132;
    settings.faults = std::move(faults);
    QFile file(folder.filePath(QStringLiteral("recorder-of-s1_cycle-101_whole-day.csv")));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray::fromStdString(simulation::writeTraceText(
        simulation::simulate(settings).trace, {.counter = 101, .defects = std::move(defects)})));
    return file.fileName();
}

} // namespace loadwarden::ui_tests
