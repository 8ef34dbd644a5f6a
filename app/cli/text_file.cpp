#include "app/cli/text_file.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

namespace loadwarden::cli {

std::string readTextFile(const std::string& path)
{
    constexpr std::size_t most = 1'000'000;
    std::error_code failure;
    if (std::filesystem::is_directory(path, failure)) {
        throw std::runtime_error(path + ": is a directory");
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        throw std::runtime_error(path + ": cannot be opened");
    }
    std::string text(most + 1, '\0');
    stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (stream.bad()) {
        throw std::runtime_error(path + ": cannot be read");
    }
    text.resize(static_cast<std::size_t>(stream.gcount()));
    if (text.size() > most) {
        throw std::runtime_error(path + ": is larger than a million bytes");
    }
    return text;
}

} // namespace loadwarden::cli
