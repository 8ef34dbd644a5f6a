#include "app/cli/arguments.h"
#include "app/cli/commands.h"
#include "core/exchange/embedded.h"

#include <ostream>

namespace loadwarden::cli {

int schema(std::span<const std::string_view> arguments, Streams streams)
{
    const Arguments given(arguments, {});
    const std::string_view which = given.rest().empty() ? "evidence" : given.rest().front();
    if (given.rest().size() > 1) {
        throw UsageError("schema is used as \"schema evidence\" or \"schema decision\"");
    }
    const std::string file = std::string(which) + ".schema.json";
    for (const EmbeddedFile& schema : embedded::schemas()) {
        if (schema.name == file) {
            streams.out << schema.text;
            return exitDone;
        }
    }
    throw UsageError("there is no schema " + std::string(which)
                     + "; there are: evidence, decision");
}

} // namespace loadwarden::cli
