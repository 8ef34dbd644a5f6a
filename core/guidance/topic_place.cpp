#include "core/guidance/topic_place.h"

#include "core/quantities/utf8.h"

namespace loadwarden {

namespace {

std::string_view lastPartOf(std::string_view fileName)
{
    const std::size_t slash = fileName.rfind('/');
    return slash == std::string_view::npos ? fileName : fileName.substr(slash + 1);
}

} // namespace

std::string topicIdOf(std::string_view fileName)
{
    std::string_view name = lastPartOf(fileName);
    for (const std::string_view suffix : {".toml", ".note"}) {
        if (name.ends_with(suffix)) {
            name.remove_suffix(suffix.size());
        }
    }
    return std::string(name);
}

std::string languageOf(std::string_view fileName)
{
    const std::string_view name = lastPartOf(fileName);
    if (name.size() == fileName.size()) {
        return "";
    }
    return std::string(lastPartOf(fileName.substr(0, fileName.size() - name.size() - 1)));
}

std::optional<TomlError> encodingError(std::string_view text, const std::string& fileName)
{
    int line = 1;
    while (!text.empty()) {
        const std::size_t bytes = utf8::characterLength(text);
        if (bytes == 0 || text.front() == '\0') {
            return TomlError{fileName, line, "",
                             "is not UTF-8 from here on; save the file as UTF-8 text"};
        }
        line += text.front() == '\n' ? 1 : 0;
        text.remove_prefix(bytes);
    }
    return std::nullopt;
}

} // namespace loadwarden
