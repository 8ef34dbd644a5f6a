#include "core/guidance/spelling.h"

#include <algorithm>
#include <array>

namespace loadwarden {

namespace {

constexpr std::size_t longestWord = 40; // longer ones are compared by no more

} // namespace

std::size_t editsBetween(std::string_view a, std::string_view b, std::size_t most)
{
    a = a.substr(0, longestWord);
    b = b.substr(0, longestWord);
    std::array<std::array<std::size_t, longestWord + 1>, 3> rows{};
    auto* beforeLast = &rows[0];
    auto* last = &rows[1];
    auto* row = &rows[2];
    for (std::size_t j = 0; j <= b.size(); ++j) {
        (*last)[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        (*row)[0] = i;
        std::size_t least = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = (*last)[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            std::size_t edits = std::min({(*last)[j] + 1, (*row)[j - 1] + 1, replaced});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                edits = std::min(edits, (*beforeLast)[j - 2] + 1);
            }
            (*row)[j] = edits;
            least = std::min(least, edits);
        }
        if (least > most) {
            return least;
        }
        auto* const oldest = beforeLast;
        beforeLast = last;
        last = row;
        row = oldest;
    }
    return (*last)[b.size()];
}

void Spelling::learn(const std::string& word)
{
    if (!m_words.insert(word).second) {
        return;
    }
    if (m_byLength.size() <= word.size()) {
        m_byLength.resize(word.size() + 1);
    }
    m_byLength[word.size()].push_back(word);
}

std::vector<std::string> Spelling::nearest(const std::string& word, std::size_t mostWords) const
{
    // Below four letters any word is near to any other; of three one may have been left out.
    const bool isShort = word.size() == 3;
    const std::size_t allowed = isShort ? 1 : std::min<std::size_t>(word.size() / 4, 2);
    std::size_t best = allowed;
    std::vector<std::string> words;
    for (std::size_t length = isShort ? 4 : word.size() - allowed;
         allowed > 0 && length <= word.size() + allowed && length < m_byLength.size(); ++length) {
        for (const std::string& known : m_byLength[length]) {
            const std::size_t edits = editsBetween(word, known, best);
            if (edits > best) {
                continue;
            }
            if (edits < best) {
                best = edits;
                words.clear();
            }
            words.push_back(known);
        }
    }
    std::sort(words.begin(), words.end());
    // Who mistypes a word mostly has its first letter right.
    std::stable_partition(words.begin(), words.end(),
                          [&](const std::string& known) { return known.front() == word.front(); });
    words.resize(std::min(words.size(), mostWords));
    return words;
}

} // namespace loadwarden
