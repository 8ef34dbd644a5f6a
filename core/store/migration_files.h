#pragma once

#include "core/exchange/embedded.h"

#include <span>

namespace loadwarden::embedded {

std::span<const EmbeddedFile> migrations(); ///< resources/store/NNNN.sql

} // namespace loadwarden::embedded
