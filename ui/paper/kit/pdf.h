#pragma once

#include "ui/paper/kit/pages.h"

#include <filesystem>
#include <string>

namespace loadwarden::paper {

/// Writes a sheet as a PDF file. An older file of that name is replaced only when the new one is
/// whole. Throws std::runtime_error with a plain sentence.
void writePdf(const Pages& pages, const std::filesystem::path& file);

} // namespace loadwarden::paper
