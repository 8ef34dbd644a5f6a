#include "core/exchange/specification_library.h"

#include "core/exchange/embedded.h"
#include "core/exchange/toml_table.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

namespace loadwarden {

namespace {

constexpr std::uintmax_t mostBytes = 1'000'000;

SpecificationError errorOf(std::string file, std::string message)
{
    return {std::move(file), 0, "", std::move(message)};
}

} // namespace

SpecificationLibrary SpecificationLibrary::builtIn()
{
    SpecificationLibrary library;
    for (const EmbeddedFile& file : embedded::specifications()) {
        const auto errors = library.add(file.text, std::string(file.name));
        if (!errors.empty()) {
            throw std::logic_error("a stored specification is not valid: "
                                   + textOf(errors.front()));
        }
    }
    return library;
}

std::vector<SpecificationError>
SpecificationLibrary::addDirectory(const std::filesystem::path& directory)
{
    std::vector<std::filesystem::path> files;
    std::error_code failure;
    for (std::filesystem::directory_iterator it(directory, failure), end; !failure && it != end;
         it.increment(failure)) {
        if (it->path().extension() == ".toml") {
            files.push_back(it->path());
        }
    }
    if (failure) {
        return {errorOf(directory.string(), "cannot be read as a directory: " + failure.message())};
    }
    std::sort(files.begin(), files.end());

    SpecificationLibrary extended = *this;
    std::vector<SpecificationError> errors;
    for (const std::filesystem::path& path : files) {
        const std::uintmax_t bytes = std::filesystem::file_size(path, failure);
        std::ifstream stream(path, std::ios::binary);
        if (failure || !stream) {
            errors.push_back(errorOf(path.string(), "cannot be read"));
            continue;
        }
        if (bytes > mostBytes) {
            errors.push_back(errorOf(path.string(), "is too large for a specification"));
            continue;
        }
        const std::string text(std::istreambuf_iterator<char>(stream), {});
        auto added = extended.add(text, path.string());
        std::move(added.begin(), added.end(), std::back_inserter(errors));
    }
    if (errors.empty()) {
        *this = std::move(extended);
    }
    return errors;
}

std::vector<SpecificationError> SpecificationLibrary::add(std::string_view toml,
                                                          const std::string& fileName)
{
    auto read = readSpecification(toml, fileName);
    if (auto* errors = std::get_if<std::vector<SpecificationError>>(&read)) {
        return std::move(*errors);
    }
    auto& specification = std::get<CycleSpecification>(read);
    std::string name = specification.id + "@" + std::to_string(specification.revision);
    const auto [place, fresh] =
        m_specifications.try_emplace(std::move(name), std::move(specification));
    if (!fresh) {
        return {{fileName, lineOf(toml, "id"), "id",
                 place->first + " is there already; give it an id or a revision of its own"}};
    }
    return {};
}

const CycleSpecification* SpecificationLibrary::find(std::string_view nameAtRevision) const
{
    const auto found = m_specifications.find(nameAtRevision);
    return found == m_specifications.end() ? nullptr : &found->second;
}

std::vector<std::string> SpecificationLibrary::names() const
{
    std::vector<std::string> names;
    names.reserve(m_specifications.size());
    for (const auto& [name, specification] : m_specifications) {
        names.push_back(name);
    }
    return names;
}

} // namespace loadwarden
