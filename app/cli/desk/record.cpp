#include "app/cli/desk/acts_file.h"
#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "core/exchange/specification_library.h"

#include <fstream>
#include <ostream>

namespace loadwarden::cli {

namespace {

int recordFile(const Arguments& given, Streams streams)
{
    const std::string name(given.rest().front());
    std::vector<ToRecord> acts;
    if (name == "-") {
        acts = readActs(streams.in, "standard input");
    } else {
        std::ifstream file(name, std::ios::binary);
        if (!file) {
            throw std::runtime_error(name + ": cannot be opened as a file");
        }
        acts = readActs(file, name);
    }
    DeskSession session(given, Access::write, streams);
    const std::size_t count = acts.size();
    session.sayRecorded(session.record(std::move(acts)), std::to_string(count) + " acts.");
    return exitDone;
}

} // namespace

int record(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({});
    const Arguments given(arguments, options);
    if (given.rest().size() != 1) {
        throw UsageError("record is used as \"record FILE\": acts as JSON, one on each line");
    }
    return recordFile(given, streams);
}

int specification(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--specifications", true}, {"--program", true}});
    const Arguments given(arguments, options);
    const auto& rest = given.rest();
    if (rest.size() != 3 || rest[0] != "record") {
        throw UsageError("specification is used as \"specification record ID NAME@REVISION "
                         "[--program NAME]\"");
    }
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    if (const auto directory = given.value("--specifications")) {
        for (const SpecificationError& error :
             library.addDirectory(std::filesystem::path(*directory))) {
            throw std::runtime_error(textOf(error));
        }
    }
    const CycleSpecification* const found = library.find(rest[2]);
    if (found == nullptr) {
        throw UsageError("there is no stored cycle specification " + std::string(rest[2])
                         + "; \"loadwarden-cli specifications\" lists them");
    }
    SpecificationRecorded recorded{*found};
    if (const auto program = given.value("--program")) {
        recorded.specification.program = *program;
    }
    DeskSession session(given, Access::write, streams);
    session.sayRecorded(session.record(recorded, {std::string(rest[1])}),
                        "Cycle specification " + std::string(rest[1]) + ".");
    return exitDone;
}

} // namespace loadwarden::cli
