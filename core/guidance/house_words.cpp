#include "core/guidance/house_words.h"

#include "core/guidance/text_words.h"
#include "core/guidance/toml_lists.h"
#include "core/guidance/topic_place.h"

#include <map>

namespace loadwarden {

std::variant<HouseWords, std::vector<TomlError>> readHouseWords(std::string_view toml,
                                                                const std::string& fileName)
{
    constexpr ListBounds groups{2, 60, 40};
    constexpr ListBounds words{0, 1000, 40};
    if (auto wrong = encodingError(toml, fileName)) {
        return std::vector<TomlError>{std::move(*wrong)};
    }
    TomlErrors errors(fileName);
    const std::optional<toml::table> file = parseToml(toml, errors);
    if (!file) {
        return std::move(errors).sorted();
    }
    TomlTable root(*file, "", errors);
    HouseWords result;
    root.whole("words_version", 1, 1);
    for (PlacedText& word : proseList(root, "ordinary", words, errors)) {
        result.ordinary.push_back(std::move(word.text));
    }
    std::map<std::vector<std::string>, std::size_t> groupOf;
    for (TomlTable& table : tablesOf(root, "same", errors)) {
        const std::size_t group = result.same.size();
        result.same.emplace_back();
        for (PlacedText& word : proseList(table, "words", groups, errors)) {
            const auto [place, fresh] = groupOf.try_emplace(singularWordsOf(word.text), group);
            if (place->second != group) {
                errors.add(word.line, table.fieldOf("words"),
                           "\"" + word.text + "\" stands in another group already");
            }
            result.same[group].push_back(std::move(word.text));
        }
        table.finish();
    }
    root.finish();
    if (!errors.empty()) {
        return std::move(errors).sorted();
    }
    return result;
}

} // namespace loadwarden
