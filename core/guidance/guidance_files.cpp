#include "core/guidance/guidance_files.h"

#include "core/exchange/embedded.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <span>
#include <system_error>

namespace loadwarden {

namespace embedded {

std::span<const EmbeddedFile> guidance(); ///< with their folders below resources/guidance

} // namespace embedded

namespace {

constexpr std::uintmax_t mostBytes = 1'000'000;

bool isGuidance(const std::filesystem::path& path)
{
    return path.extension() == ".toml" || path.extension() == ".json";
}

} // namespace

std::vector<GuidanceFile> shippedGuidance()
{
    std::vector<GuidanceFile> files;
    for (const EmbeddedFile& file : embedded::guidance()) {
        files.push_back({std::string(file.name), std::string(file.name), std::string(file.text)});
    }
    return files;
}

std::vector<GuidanceFile> guidanceIn(const std::filesystem::path& folder,
                                     std::vector<TomlError>& errors)
{
    std::vector<std::filesystem::path> paths;
    std::error_code failure;
    for (std::filesystem::recursive_directory_iterator it(folder, failure), end;
         !failure && it != end; it.increment(failure)) {
        if (isGuidance(it->path())) {
            paths.push_back(it->path());
        }
    }
    if (failure) {
        errors.push_back(
            {folder.string(), 0, "", "cannot be read as a folder: " + failure.message()});
        return {};
    }
    std::sort(paths.begin(), paths.end());
    std::vector<GuidanceFile> files;
    for (const std::filesystem::path& path : paths) {
        const std::uintmax_t bytes = std::filesystem::file_size(path, failure);
        std::ifstream stream(path, std::ios::binary);
        if (failure || !stream) {
            errors.push_back({path.string(), 0, "", "cannot be read"});
            continue;
        }
        if (bytes > mostBytes) {
            errors.push_back({path.string(), 0, "", "is larger than a million bytes"});
            continue;
        }
        files.push_back({path.lexically_relative(folder).generic_string(), path.string(),
                         std::string(std::istreambuf_iterator<char>(stream), {})});
    }
    return files;
}

} // namespace loadwarden
