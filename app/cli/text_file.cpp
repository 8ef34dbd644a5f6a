#include "app/cli/text_file.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

namespace loadwarden::cli {

namespace {

constexpr std::size_t aMillion = 1'000'000;

} // namespace

std::string readFile(const std::string& path, std::size_t most)
{
    std::error_code failure;
    if (std::filesystem::is_directory(path, failure)) {
        throw std::runtime_error(path + ": is a directory");
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        throw std::runtime_error(path + ": cannot be opened");
    }
    std::string text;
    constexpr std::size_t block = 65'536;
    while (stream && text.size() <= most) {
        const std::size_t before = text.size();
        text.resize(before + block);
        stream.read(text.data() + before, static_cast<std::streamsize>(block));
        text.resize(before + static_cast<std::size_t>(stream.gcount()));
    }
    if (stream.bad()) {
        throw std::runtime_error(path + ": cannot be read");
    }
    if (text.size() > most) {
        throw std::runtime_error(path + ": is larger than "
                                 + (most == aMillion ? "a million" : std::to_string(most))
                                 + " bytes");
    }
    return text;
}

std::string readTextFile(const std::string& path)
{
    return readFile(path, aMillion);
}

} // namespace loadwarden::cli
