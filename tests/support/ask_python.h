#pragma once

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <unistd.h>
#include <utility>
#include <vector>

namespace loadwarden::support {

/// What a script of tests/core, run by the system's Python, answers to a text, line by line. Throws
/// std::runtime_error where it fails.
inline std::vector<std::string> askPython(const std::string& script, const std::string& input)
{
    std::string path = std::filesystem::temp_directory_path().string() + "/loadwarden-ask-XXXXXX";
    const int file = mkstemp(path.data());
    if (file < 0) {
        throw std::runtime_error("no temporary file");
    }
    close(file);
    std::ofstream(path) << input;
    const std::string command =
        LOADWARDEN_PYTHON " '" LOADWARDEN_SOURCE_DIR "/tests/core/" + script + "' < '" + path + "'";
    std::vector<std::string> lines;
    std::string line;
    FILE* pipe = popen(command.c_str(), "r");
    std::array<char, 4096> buffer{};
    while (std::fgets(buffer.data(), static_cast<int>(buffer.size()), pipe) != nullptr) {
        line += buffer.data();
        if (line.back() == '\n') {
            line.pop_back();
            lines.push_back(std::exchange(line, {}));
        }
    }
    const int status = pclose(pipe);
    std::filesystem::remove(path);
    if (status != 0) {
        throw std::runtime_error(script + " failed");
    }
    return lines;
}

} // namespace loadwarden::support
