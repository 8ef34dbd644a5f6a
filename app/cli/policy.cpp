#include "app/cli/arguments.h"
#include "app/cli/commands.h"
#include "app/cli/text_file.h"
#include "core/exchange/milder_values.h"
#include "core/exchange/policy_reader.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

void sayMilder(const std::string& file, const std::vector<MilderValue>& milder, std::ostream& out)
{
    if (milder.empty()) {
        out << "No value is milder than the default policy's.\n";
        return;
    }
    out << "Milder than the default policy:\n";
    for (const MilderValue& each : milder) {
        out << file << ':' << each.line << ": " << each.field << ": \"" << each.value
            << "\"; the default is \"" << each.defaultValue << "\"\n";
    }
}

int check(const std::string& file, Streams streams)
{
    const std::string text = readTextFile(file);
    const auto read = readPolicy(text, file);
    if (const auto* errors = std::get_if<std::vector<PolicyError>>(&read)) {
        for (const PolicyError& error : *errors) {
            streams.err << textOf(error) << '\n';
        }
        return exitBad;
    }
    const auto& policy = std::get<Policy>(read);
    streams.out << file << ": " << policy.id << ", revision " << policy.revision << '\n'
                << "SHA-256 " << policy.digest << '\n';
    sayMilder(file, milderValues(text), streams.out);
    return exitDone;
}

} // namespace

int policy(std::span<const std::string_view> arguments, Streams streams)
{
    const Arguments given(arguments, {});
    const auto& rest = given.rest();
    if (rest.size() == 1 && rest[0] == "show") {
        streams.out << defaultPolicyText();
        return exitDone;
    }
    if (rest.size() == 2 && rest[0] == "check") {
        return check(std::string(rest[1]), streams);
    }
    throw UsageError("policy is used as \"policy check FILE\" or \"policy show\"");
}

} // namespace loadwarden::cli
