#include "guidance_support.h"

#include <algorithm>
#include <fstream>
#include <stdexcept>

namespace loadwarden::testing {

std::vector<GuidanceFile> guidanceFiles()
{
    std::vector<TomlError> errors;
    auto files =
        guidanceIn(std::filesystem::path(LOADWARDEN_SOURCE_DIR) / "resources/guidance", errors);
    if (!errors.empty()) {
        throw std::runtime_error(textOf(errors.front()));
    }
    return files;
}

const TopicLibrary& shippedTopics()
{
    static const TopicLibrary library = [] {
        TopicLibrary read;
        const auto errors = read.add(guidanceFiles(), false);
        if (!errors.empty()) {
            std::string all;
            for (const TomlError& error : errors) {
                all += textOf(error) + '\n';
            }
            throw std::runtime_error(all);
        }
        return read;
    }();
    return library;
}

GuidanceFile fileAt(const std::string& place)
{
    for (GuidanceFile& file : guidanceFiles()) {
        if (file.place == place) {
            return std::move(file);
        }
    }
    throw std::invalid_argument("no such file: " + place);
}

std::string replaced(std::string text, std::string_view what, std::string_view with)
{
    const std::size_t at = text.find(what);
    if (at == std::string::npos) {
        throw std::invalid_argument("not in the text: " + std::string(what));
    }
    return text.replace(at, what.size(), with);
}

int lineOf(std::string_view text, std::string_view what)
{
    const std::size_t at = text.find(what);
    if (at == std::string_view::npos) {
        throw std::invalid_argument("not in the text: " + std::string(what));
    }
    const std::string_view before = text.substr(0, at);
    return 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
}

std::string houseTopic(const std::string& id)
{
    return "topic_version = 1\n"
           "id = \""
           + id
           + "\"\n"
             "question = \"Where is the spare "
           + id
           + " kept?\"\n"
             "also_asked = [\n"
             "    \"Who has the key of the "
           + id
           + "?\",\n"
             "    \"Cupboard of "
           + id
           + "\",\n"
             "]\n"
             "short_answer = \"In the cupboard beside the door.\"\n"
             "do_now = [\"Ask at the desk.\"]\n"
             "why = \"It is the house's own.\"\n"
             "caution = \"None but the usual.\"\n"
             "owner = \"the desk\"\n"
             "review_by = 2031-03-04\n"
             "related = [\"wet-packs\"]\n"
             "\n"
             "[[source]]\n"
             "text = \"common practice, no source\"\n"
             "confidence = \"common-practice\"\n";
}

std::vector<TomlError> errorsOf(const std::vector<GuidanceFile>& files)
{
    TopicLibrary library = shippedTopics();
    return library.add(files, true);
}

std::vector<AskedQuestion> questionsOf(const std::string& pathBelowRoot)
{
    std::ifstream file(std::filesystem::path(LOADWARDEN_SOURCE_DIR) / pathBelowRoot);
    std::vector<AskedQuestion> questions;
    for (std::string line; std::getline(file, line);) {
        const std::size_t tab = line.find('\t');
        if (line.starts_with('#') || tab == std::string::npos) {
            continue;
        }
        questions.push_back({line.substr(0, tab), line.substr(tab + 1)});
    }
    if (questions.empty()) {
        throw std::runtime_error("no questions in " + pathBelowRoot);
    }
    return questions;
}

} // namespace loadwarden::testing
