#pragma once

#include "tests/benchmarks/window/bench_desktop.h"

#include <string>

namespace loadwarden::benchmarks {

/// Asked: filled Today within 120 ms of a bare window, at most 8 queries before it. From the start
/// of a program each: of this one until the sign-in is painted, and again from the last key of the
/// PIN until Today is; what a person takes between is not counted.
void measureToday(const std::string& program);
/// The program that measureToday() starts; `begun` is when, on the monotonic clock.
int todayOnce(PaintWatch& application, double begun);
/// Before the application: counts statements where `how` asks for it.
void countIfAsked(const std::string& how);

/// Asked: 50 ms from the click on its row, or the last key of the scanner, until a load is painted.
void measureLoads(BenchDesktop& desktop, const LongJournal& journal);

/// Asked: the first page of Records and every step of scrolling within 16 ms.
void measureRecords(PaintWatch& application, const LongJournal& journal);

/// Asked: an answer within 100 ms while the journal is verified, backed up and copied out.
void measureLongWork(BenchDesktop& desktop, const LongJournal& journal);

} // namespace loadwarden::benchmarks
