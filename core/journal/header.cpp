#include "core/journal/header.h"

#include "core/journal/chain.h"

#include <algorithm>
#include <charconv>

namespace loadwarden {
namespace {

/// Takes text from the front; every step says whether what it wanted was there.
class Scanner {
public:
    explicit Scanner(std::string_view text) : m_rest(text) {}

    bool take(std::string_view wanted)
    {
        if (!m_rest.starts_with(wanted)) {
            return false;
        }
        m_rest.remove_prefix(wanted.size());
        return true;
    }

    template <class Integer>
    bool takeInteger(Integer& value)
    {
        const auto [end, error] =
            std::from_chars(m_rest.data(), m_rest.data() + m_rest.size(), value);
        m_rest.remove_prefix(static_cast<std::size_t>(end - m_rest.data()));
        return error == std::errc{};
    }

    /// A string with whatever in it.
    bool skipString()
    {
        if (!take("\"")) {
            return false;
        }
        std::size_t at = m_rest.find_first_of("\"\\");
        while (at != std::string_view::npos && m_rest[at] == '\\') {
            at = m_rest.find_first_of("\"\\", std::min(at + 2, m_rest.size()));
        }
        m_rest.remove_prefix(std::min(at, m_rest.size()));
        return take("\"");
    }

    /// A string that stands as it is.
    bool takeWord(std::string_view& word)
    {
        if (!take("\"")) {
            return false;
        }
        word = m_rest.substr(0, std::min(m_rest.find('"'), m_rest.size()));
        m_rest.remove_prefix(word.size());
        return isPlainWord(word) && take("\"");
    }

private:
    std::string_view m_rest;
};

bool takeTime(Scanner& scanner, JournalTime& time)
{
    return scanner.take("[") && scanner.takeInteger(time.at.ms) && scanner.take(",")
           && scanner.takeInteger(time.offsetMinutes);
}

bool takeSubjects(Scanner& scanner, std::vector<std::string_view>& subjects)
{
    subjects.clear();
    if (scanner.take("]")) {
        return true;
    }
    do {
        if (!scanner.takeWord(subjects.emplace_back())) {
            return false;
        }
    } while (scanner.take(","));
    return scanner.take("]");
}

} // namespace

bool isPlainWord(std::string_view text) noexcept
{
    return !text.empty() && std::ranges::none_of(text, [](char c) {
        return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20;
    });
}

bool readHeader(std::string_view bytes, EntryHeader& out)
{
    constexpr std::size_t hexDigits = 64;
    const auto place = placeOf(bytes);
    if (!place) {
        return false;
    }
    out.seq = place->seq;
    out.prev = place->prev;
    constexpr std::string_view prev = R"("prev":")";
    Scanner scanner(bytes.substr(bytes.find(prev) + prev.size() + hexDigits));
    JournalTime happenedAt;
    std::int32_t version = 0;
    return scanner.take(R"(","recordedAt":)") && takeTime(scanner, out.recordedAt)
           && scanner.take(R"(],"happenedAt":)") && takeTime(scanner, happenedAt)
           && scanner.take(",") && scanner.skipString() && scanner.take(R"(],"actor":[)")
           && scanner.skipString() && scanner.take(",") && scanner.skipString()
           && scanner.take(R"(],"workstation":)") && scanner.skipString()
           && scanner.take(R"(,"kind":)") && scanner.takeWord(out.kind) && scanner.take(R"(,"v":)")
           && scanner.takeInteger(version) && scanner.take(R"(,"subjects":[)")
           && takeSubjects(scanner, out.subjects) && scanner.take(R"(,"reason":)");
}

} // namespace loadwarden
