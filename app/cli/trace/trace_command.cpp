#include "app/cli/trace/trace_command.h"

#include "app/cli/arguments.h"
#include "app/cli/paragraph.h"
#include "app/cli/trace/trace_files.h"
#include "app/cli/trace/trace_report.h"
#include "core/cycle/simulation/trace_text.h"
#include "core/cycle/trace/asked_by.h"
#include "core/exchange/specification_library.h"
#include "core/exchange/trace_mapping_json.h"
#include "core/words/say_trace.h"

#include <algorithm>
#include <array>
#include <exception>
#include <new>
#include <ostream>

namespace loadwarden::cli {

namespace {

std::optional<CycleSpecification> specificationGiven(const Arguments& given, Streams streams)
{
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    if (const auto directory = given.value("--specifications")) {
        const auto errors = library.addDirectory(std::filesystem::path(*directory));
        for (const SpecificationError& error : errors) {
            streams.err << textOf(error) << '\n';
        }
        if (!errors.empty()) {
            return std::nullopt;
        }
    }
    const std::string name = given.needed("--cycle");
    const CycleSpecification* const found = library.find(name);
    if (found == nullptr) {
        throw UsageError("there is no specification " + name
                         + "; loadwarden-cli specifications lists them");
    }
    return *found;
}

TraceReport reportOf(std::string_view name, const std::string& bytes,
                     const CycleSpecification& specification,
                     const std::optional<TraceMapping>& mapping,
                     const std::optional<AbsolutePressure>& atmosphere)
{
    TraceReport report{.name = name == "-" ? "standard input" : std::string(name),
                       .isSimulated = simulation::saysSimulated(bytes),
                       .specification = specification};
    if (mapping) {
        report.mapping = *mapping;
    } else {
        MappingProposal proposal = proposeMapping(bytes);
        report.mapping = std::move(proposal.mapping);
        report.notes = std::move(proposal.notes);
        report.isProposed = true;
    }
    report.reading = readTrace(bytes, report.mapping, atmosphere);
    report.asked = askedBy(specification, report.mapping, atmosphere);
    report.evaluation = evaluate(report.reading.trace, report.asked);
    return report;
}

} // namespace

int evaluateTraces(std::span<const std::string_view> arguments, Streams streams)
{
    constexpr std::array options = {Option{"--cycle", true}, Option{"--map", true},
                                    Option{"--atmosphere", true}, Option{"--specifications", true},
                                    Option{"--json", false}};
    const Arguments given(arguments, options);
    if (given.rest().empty()) {
        throw UsageError("trace needs a file, or attach, --propose or --simulate");
    }
    const auto specification = specificationGiven(given, streams);
    if (!specification) {
        return exitBad;
    }
    const auto mapping = mappingGiven(given);
    const auto atmosphere = atmosphereGiven(given);
    int worst = exitDone;
    for (const std::string_view name : given.rest()) {
        std::string bytes;
        try {
            bytes = readTraceFile(name, streams);
        } catch (const std::bad_alloc&) {
            throw;
        } catch (const std::exception& error) {
            // A file that cannot be read does not stop the others.
            streams.err << oneLine(error.what()) << '\n';
            worst = exitBad;
            continue;
        }
        const TraceReport report = reportOf(name, bytes, *specification, mapping, atmosphere);
        worst = std::max(worst, exitCodeOf(report));
        std::string text;
        if (given.has("--json")) {
            appendReportJson(text, report);
        } else {
            appendReport(text, report);
        }
        streams.out << text;
    }
    if (!given.has("--json")) {
        streams.out << traceCautions();
    }
    return worst;
}

int proposeTraceMapping(std::span<const std::string_view> arguments, Streams streams)
{
    constexpr std::array options = {Option{"--propose", false}};
    const Arguments given(arguments, options);
    if (given.rest().size() != 1) {
        throw UsageError("trace --propose needs one file");
    }
    const std::string bytes = readTraceFile(given.rest().front(), streams);
    const MappingProposal proposal = proposeMapping(bytes);
    streams.out << writeTraceMapping(proposal.mapping);
    for (const ProposalNote& note : proposal.notes) {
        streams.err << (note.column == 0 ? "" : "Column " + std::to_string(note.column) + ", ")
                    << say(note.item) << ": " << oneLine(say(note)) << '\n';
    }
    if (const MappingFault fault = faultOf(proposal.mapping); fault != MappingFault::none) {
        streams.err << say(fault) << '\n';
        return exitBad;
    }
    return exitDone;
}

int trace(std::span<const std::string_view> arguments, Streams streams)
{
    const auto end = std::ranges::find(arguments, "--");
    const auto asks = [&](std::string_view option) {
        return std::find(arguments.begin(), end, option) != end;
    };
    if (!arguments.empty() && arguments.front() == "attach") {
        return attachTrace(arguments, streams);
    }
    if (asks("--simulate")) {
        return simulateTrace(arguments, streams);
    }
    return asks("--propose") ? proposeTraceMapping(arguments, streams)
                             : evaluateTraces(arguments, streams);
}

} // namespace loadwarden::cli
