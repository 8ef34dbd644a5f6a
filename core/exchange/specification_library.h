#pragma once

#include "core/cycle/specification.h"
#include "core/exchange/specification_reader.h"

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Stored cycle specifications by name and revision, "steam-prevacuum-132-wrapped@1". Those built
/// in are templates: the program of the facility's sterilizer and the instructions for use rule.
class SpecificationLibrary {
public:
    /// What resources/specifications holds.
    static SpecificationLibrary builtIn();

    /// Adds every *.toml of a directory, in the order of their names. What is wrong in any of them
    /// comes back and then none was added; a name and revision that is there already is wrong too.
    std::vector<SpecificationError> addDirectory(const std::filesystem::path& directory);

    /// nullptr when there is none. Valid until the library changes.
    [[nodiscard]] const CycleSpecification* find(std::string_view nameAtRevision) const;

    /// All of them, in the order of the alphabet.
    [[nodiscard]] std::vector<std::string> names() const;

private:
    std::vector<SpecificationError> add(std::string_view toml, const std::string& fileName);

    std::map<std::string, CycleSpecification, std::less<>> m_specifications;
};

} // namespace loadwarden
