#include "core/guidance/text_words.h"

#include <QString>

#include <libstemmer.h>

namespace loadwarden {

std::string singularOf(const std::string& word)
{
    const bool isPlural = word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's'
                          && word[word.size() - 2] != 'u' && word[word.size() - 2] != 'i';
    return isPlural ? word.substr(0, word.size() - 1) : word;
}

std::vector<std::string> wordsOf(std::string_view text)
{
    // Compatibility decomposition makes ² a 2 and takes accents off their letters.
    const QString plain = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
                              .normalized(QString::NormalizationForm_KD)
                              .toCaseFolded();
    std::vector<std::string> words;
    QString word;
    const auto take = [&] {
        if (!word.isEmpty()) {
            words.push_back(word.toStdString());
            word.clear();
        }
    };
    for (qsizetype i = 0; i < plain.size(); ++i) {
        const QChar c = plain[i];
        if (c.isMark()) {
            continue;
        }
        if (c.isLetterOrNumber() || c.isSurrogate()) {
            word += c;
        } else if ((c == u'\'' || c == u'\u2019') && !word.isEmpty()) {
            const bool possessive = i + 1 < plain.size() && plain[i + 1] == u's'
                                    && (i + 2 == plain.size() || !plain[i + 2].isLetterOrNumber());
            if (possessive) {
                ++i; // "maker's" is "maker"
            }
        } else {
            take();
        }
    }
    take();
    return words;
}

std::vector<std::string> singularWordsOf(std::string_view text)
{
    std::vector<std::string> words = wordsOf(text);
    for (std::string& word : words) {
        word = singularOf(word);
    }
    return words;
}

Stemmer::Stemmer(const std::string& language) : m_stemmer(sb_stemmer_new(language.c_str(), "UTF_8"))
{
}

Stemmer::~Stemmer()
{
    sb_stemmer_delete(m_stemmer); // takes nullptr
}

std::string Stemmer::stemOf(const std::string& word) const
{
    if (m_stemmer == nullptr) {
        return word;
    }
    const auto* const symbols = reinterpret_cast<const sb_symbol*>(word.data());
    const sb_symbol* stem = sb_stemmer_stem(m_stemmer, symbols, static_cast<int>(word.size()));
    if (stem == nullptr) {
        return word; // out of memory in the library
    }
    return {reinterpret_cast<const char*>(stem),
            static_cast<std::size_t>(sb_stemmer_length(m_stemmer))};
}

} // namespace loadwarden
