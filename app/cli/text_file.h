#pragma once

#include <cstddef>
#include <string>

namespace loadwarden::cli {

/// The bytes of a small file. Throws std::runtime_error, with the file's name, when it cannot be
/// read or is larger than a million bytes.
std::string readTextFile(const std::string& path);

/// The same of a file of at most so many bytes.
std::string readFile(const std::string& path, std::size_t most);

} // namespace loadwarden::cli
