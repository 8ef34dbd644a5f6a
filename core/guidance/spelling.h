#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace loadwarden {

/// How many letters must be put in, left out, replaced, or exchanged with the one beside (each
/// letter at most once: optimal string alignment) to make one word of the other, in bytes; above
/// `most` only that it is above.
[[nodiscard]] std::size_t editsBetween(std::string_view a, std::string_view b, std::size_t most);

/// The words that are known, to find what somebody meant who mistyped one.
class Spelling {
public:
    void learn(const std::string& word);

    [[nodiscard]] bool knows(const std::string& word) const { return m_words.contains(word); }

    /// The known words nearest to one that is not known, at most `mostWords` of equal distance, by
    /// the alphabet; none where all are farther than one edit for every four letters or more than
    /// two.
    [[nodiscard]] std::vector<std::string> nearest(const std::string& word,
                                                   std::size_t mostWords) const;

private:
    std::unordered_set<std::string> m_words;
    std::vector<std::vector<std::string>> m_byLength; ///< index: bytes
};

} // namespace loadwarden
