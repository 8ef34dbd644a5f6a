#include "app/cli/arguments.h"
#include "app/cli/commands.h"
#include "core/exchange/specification_library.h"

#include <array>
#include <ostream>

namespace loadwarden::cli {

int specifications(std::span<const std::string_view> arguments, Streams streams)
{
    constexpr std::array known = {Option{"--specifications", true}};
    const Arguments given(arguments, known);
    if (!given.rest().empty()) {
        throw UsageError("specifications takes no file; it lists what is stored");
    }
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    if (const auto directory = given.value("--specifications")) {
        const auto errors = library.addDirectory(std::filesystem::path(*directory));
        for (const SpecificationError& error : errors) {
            streams.err << textOf(error) << '\n';
        }
        if (!errors.empty()) {
            return exitBad;
        }
    }
    for (const std::string& name : library.names()) {
        streams.out << name << '\n';
    }
    return exitDone;
}

} // namespace loadwarden::cli
