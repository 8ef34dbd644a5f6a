#pragma once

#include "core/release/finding_sink.h"
#include "core/release/view.h"

#include <cstddef>

/// One function a rule, one file a function; what each says stands in core/release/RULES.md.
namespace loadwarden::rules {

void order(const View& view, FindingSink& sink);
void acts(const View& view, FindingSink& sink);
void record(const View& view, FindingSink& sink);
void printout(const View& view, FindingSink& sink);
void cycleEnd(const View& view, FindingSink& sink);
void sterilizer(const View& view, FindingSink& sink);
void processFailure(const View& view, FindingSink& sink);
void scope(const View& view, FindingSink& sink);
void airRemoval(const View& view, FindingSink& sink);
void physical(const View& view, FindingSink& sink);
void trace(const View& view, FindingSink& sink);
void verification(const View& view, FindingSink& sink);
void pcd(const View& view, FindingSink& sink);
void implant(const View& view, FindingSink& sink);
void bi(const View& view, FindingSink& sink);
void routineBi(const View& view, FindingSink& sink);
void packages(const View& view, FindingSink& sink);
void aeration(const View& view, FindingSink& sink);
void peroxide(const View& view, FindingSink& sink);
void immediate(const View& view, FindingSink& sink);
void reviews(const View& view, FindingSink& sink);
void voiding(const View& view, FindingSink& sink);

void wasInside(const View& view, std::size_t item, FindingSink& sink);
void external(const View& view, std::size_t item, FindingSink& sink);
void package(const View& view, std::size_t item, FindingSink& sink);
void internal(const View& view, std::size_t item, FindingSink& sink);
void cycleAllowed(const View& view, std::size_t item, FindingSink& sink);
void itemImplant(const View& view, std::size_t item, FindingSink& sink);
void itemPeroxide(const View& view, std::size_t item, FindingSink& sink);
void inTest(const View& view, std::size_t item, FindingSink& sink);

/// Whether an item has what hydrogen peroxide must not meet.
[[nodiscard]] bool isUnsuitableForPeroxide(const Item& item);

} // namespace loadwarden::rules
