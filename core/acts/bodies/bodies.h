#pragma once

#include "core/acts/any_act.h"
#include "core/acts/bodies/io.h"

namespace loadwarden::body_format {

// The members of every act: written, and read. Defined beside their descriptions in bodies/*.cpp.

#define LW_ACT(Struct, kind, version, paper, subjects)                                             \
    void describe(Writer& io, const Struct& act);                                                  \
    void describe(Reader& io, Struct& act);
#include "core/acts/acts.def"
#undef LW_ACT

} // namespace loadwarden::body_format
