#include "app/cli/arguments.h"
#include "app/cli/commands.h"
#include "app/cli/decide_stream.h"
#include "app/cli/paragraph.h"
#include "app/cli/text_file.h"
#include "core/exchange/policy_reader.h"
#include "core/quantities/clock.h"
#include "core/words/say.h"

#include <array>
#include <filesystem>
#include <fstream>
#include <ostream>
#include <system_error>

namespace loadwarden::cli {

namespace {

constexpr std::array options = {Option{"--policy", true}, Option{"--at", true},
                                Option{"--specifications", true}, Option{"--json", false},
                                Option{"--planned", false}};

/// Says what is wrong in files; true when nothing is.
bool noneOf(const std::vector<TomlError>& errors, Streams streams)
{
    for (const TomlError& error : errors) {
        streams.err << textOf(error) << '\n';
    }
    return errors.empty();
}

std::optional<Policy> policyFrom(std::optional<std::string_view> file, Streams streams)
{
    if (!file) {
        return defaultPolicy();
    }
    const std::string name(*file);
    auto read = readPolicy(readTextFile(name), name);
    if (const auto* errors = std::get_if<std::vector<PolicyError>>(&read)) {
        noneOf(*errors, streams);
        return std::nullopt;
    }
    return std::get<Policy>(std::move(read));
}

std::optional<DecideSettings> settingsFrom(const Arguments& given, Streams streams)
{
    DecideSettings settings;
    settings.json = given.has("--json");
    settings.planned = given.has("--planned");
    if (const auto at = given.value("--at")) {
        settings.at = parseInstant(*at);
        if (!settings.at) {
            throw UsageError("--at needs a moment with its offset, as 2031-03-04T07:14-06:00, not "
                             + std::string(*at));
        }
    }
    auto policy = policyFrom(given.value("--policy"), streams);
    if (!policy) {
        return std::nullopt;
    }
    settings.policy = std::move(*policy);
    settings.specifications = SpecificationLibrary::builtIn();
    if (const auto directory = given.value("--specifications")) {
        const std::filesystem::path path(*directory);
        if (!noneOf(settings.specifications.addDirectory(path), streams)) {
            return std::nullopt;
        }
    }
    return settings;
}

/// Decides on one source; a source that cannot be read is said and does not stop the others.
void decideSource(std::string_view source, const DecideSettings& settings, Streams streams,
                  DecideTally& tally)
{
    const SystemClock clock;
    if (source == "-") {
        decideStream(streams.in, "standard input", settings, clock, streams, tally);
        return;
    }
    const std::string name(source);
    std::error_code failure;
    std::ifstream file(name, std::ios::binary);
    if (!file || std::filesystem::is_directory(name, failure)) {
        ++tally.badSources;
        streams.err << oneLine(name) << ": cannot be opened as a file\n";
        return;
    }
    decideStream(file, name, settings, clock, streams, tally);
}

template <class Result, std::size_t count>
void appendCounts(std::string& out, std::string_view what,
                  const std::array<std::int64_t, count>& counts)
{
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        if (counts[i] != 0) {
            text += text.empty() ? " " : ", ";
            text += say(static_cast<Result>(i)) + " " + std::to_string(counts[i]);
        }
    }
    if (!text.empty()) {
        appendParagraph(out, 0, "", std::string(what) + text + ".", 0);
    }
}

/// What stands below the decisions: how many of each, the policy, the caution.
std::string footText(const DecideTally& tally, const Policy& policy)
{
    std::string text;
    if (tally.decided() + tally.badRecords > 1) {
        appendCounts<Verdict>(text, "Loads:", tally.loads);
        if (tally.apart != 0) {
            appendParagraph(text, 0, "",
                            "Of these with items whose verdict is worse than their load's: "
                                + std::to_string(tally.apart) + ".",
                            0);
        }
        appendCounts<TestResult>(text, "Tests:", tally.tests);
    }
    if (tally.badRecords + tally.badSources != 0) {
        appendParagraph(text, 0, "",
                        "Could not be read, and are not decided: records "
                            + std::to_string(tally.badRecords) + ", files "
                            + std::to_string(tally.badSources) + ".",
                        0);
    }
    appendParagraph(text, 0, "",
                    "Decided by policy " + policy.id + ", revision "
                        + std::to_string(policy.revision) + ", SHA-256 " + policy.digest + ".",
                    0);
    appendParagraph(text, 0, "", caution(), 0);
    return text;
}

} // namespace

int decide(std::span<const std::string_view> arguments, Streams streams)
{
    const Arguments given(arguments, options);
    const auto settings = settingsFrom(given, streams);
    if (!settings) {
        return exitBad;
    }
    std::vector<std::string_view> sources = given.rest();
    if (sources.empty()) {
        sources.push_back("-");
    }
    DecideTally tally;
    for (const std::string_view source : sources) {
        decideSource(source, *settings, streams, tally);
    }
    if (!settings->json && tally.decided() != 0) {
        streams.out << footText(tally, settings->policy);
    }
    if (tally.badRecords + tally.badSources != 0) {
        return exitBad;
    }
    return tally.withheld == 0 ? exitDone : exitWithheld;
}

} // namespace loadwarden::cli
