#include "app/cli/guidance/topic_files.h"

#include "app/cli/paragraph.h"
#include "app/cli/text_file.h"
#include "core/exchange/policy_reader.h"

#include <ostream>
#include <variant>
#include <vector>

namespace loadwarden::cli {

namespace {

/// Says what is wrong in files; true when nothing is.
bool noneOf(const std::vector<TomlError>& errors, Streams streams)
{
    for (const TomlError& error : errors) {
        streams.err << textOf(error) << '\n';
    }
    return errors.empty();
}

} // namespace

std::optional<Policy> policyGiven(const Arguments& given, Streams streams)
{
    const auto file = given.value("--policy");
    if (!file) {
        return defaultPolicy();
    }
    auto read = readPolicy(readTextFile(std::string(*file)), std::string(*file));
    if (const auto* errors = std::get_if<std::vector<PolicyError>>(&read)) {
        noneOf(*errors, streams);
        return std::nullopt;
    }
    return std::get<Policy>(std::move(read));
}

std::optional<TopicLibrary> topicsGiven(const Arguments& given, Streams streams)
{
    TopicLibrary library = TopicLibrary::builtIn();
    const auto folder = given.value("--topics");
    if (folder && !noneOf(library.addFolder(std::string(*folder)), streams)) {
        return std::nullopt;
    }
    return library;
}

std::string languageGiven(const Arguments& given)
{
    return std::string(given.value("--language").value_or(fallbackLanguage));
}

const Topic& topicNamed(const TopicLibrary& library, const std::string& id,
                        const std::string& language)
{
    const Topic* const topic = library.find(id, language);
    if (topic == nullptr) {
        throw UsageError("there is no topic " + oneLine(id) + "; ask --list shows all");
    }
    return *topic;
}

} // namespace loadwarden::cli
