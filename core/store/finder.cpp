#include "core/store/finder.h"

#include "core/quantities/person.h"
#include "core/store/queries.h"

#include <algorithm>
#include <functional>
#include <tuple>
#include <utility>

namespace loadwarden {
namespace {

Statement select(ReadSnapshot& snapshot, Query query)
{
    return snapshot.statement(sqlOf(query, snapshot.dialect()));
}

std::vector<FoundCycle> cyclesOf(Statement rows)
{
    std::vector<FoundCycle> cycles;
    while (rows.step()) {
        cycles.push_back({.id = rows.text(0),
                          .sterilizer = rows.text(1),
                          .lot = rows.text(2),
                          .purpose = rows.text(3),
                          .at = rows.integer(4),
                          .counter = rows.integer(5),
                          .hasVials = rows.integer(6) != 0,
                          .hasTrouble = rows.integer(7) != 0,
                          .hasEnded = rows.integer(8) != 0,
                          .disposed = rows.integer(9),
                          .newest = rows.integer(10)});
    }
    return cycles;
}

std::vector<FoundVial> vialsOfRows(Statement rows)
{
    std::vector<FoundVial> vials;
    while (rows.step()) {
        vials.push_back({.id = rows.text(0),
                         .cycle = rows.text(1),
                         .product = rows.text(2),
                         .incubator = rows.text(3),
                         .incubated = rows.integer(4),
                         .newest = rows.integer(5)});
    }
    return vials;
}

/// Binds the texts from a beginning on up to behind all that begin so.
Statement& bindBeginning(Statement& rows, std::string_view beginning)
{
    // No text has U+10FFFF, which is no character.
    const std::string end = behindAllFrom(beginning);
    return rows.bind(":from", beginning)
        .bind(":end", end.empty() ? std::string_view("\xF4\x8F\xBF\xBF") : std::string_view(end));
}

constexpr std::uint32_t firstSurrogate = 0xD800;
constexpr std::uint32_t behindSurrogates = 0xE000;
constexpr std::uint32_t lastCharacter = 0x10FFFF;

/// The character that ends a text, and how many bytes it has there.
std::pair<std::uint32_t, std::size_t> lastOf(std::string_view text)
{
    std::size_t length = 1;
    while (length < text.size() && length < 4
           && (static_cast<unsigned char>(text[text.size() - length]) & 0xC0U) == 0x80U) {
        ++length;
    }
    const std::string_view bytes = text.substr(text.size() - length);
    const auto byte = [&](std::size_t i) {
        return static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[i]));
    };
    constexpr std::uint32_t leading[]{0x7F, 0x1F, 0x0F, 0x07};
    std::uint32_t character = byte(0) & leading[length - 1];
    for (std::size_t i = 1; i < length; ++i) {
        character = character << 6U | (byte(i) & 0x3FU);
    }
    return {character, length};
}

std::string utf8Of(std::uint32_t character)
{
    const auto low = [character](unsigned shift) {
        return static_cast<char>(0x80U | (character >> shift & 0x3FU));
    };
    if (character < 0x80) {
        return {static_cast<char>(character)};
    }
    if (character < 0x800) {
        return {static_cast<char>(0xC0U | character >> 6U), low(0)};
    }
    if (character < 0x10000) {
        return {static_cast<char>(0xE0U | character >> 12U), low(6), low(0)};
    }
    return {static_cast<char>(0xF0U | character >> 18U), low(12), low(6), low(0)};
}

} // namespace

std::string behindAllFrom(std::string_view beginning)
{
    // The order of UTF-8's bytes is that of its characters.
    while (!beginning.empty()) {
        const auto [character, length] = lastOf(beginning);
        beginning.remove_suffix(length);
        if (character != lastCharacter) {
            const std::uint32_t next = character + 1;
            return std::string(beginning)
                   + utf8Of(next == firstSurrogate ? behindSurrogates : next);
        }
    }
    return {};
}

std::vector<FoundLot> Finder::lotsFrom(std::string_view beginning, std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::cyclesByLot);
    bindBeginning(rows, beginning).bind(":limit", most);
    std::vector<FoundLot> lots;
    while (rows.step()) {
        lots.push_back({rows.text(0), rows.text(1)});
    }
    return lots;
}

std::vector<FoundLabel> Finder::labelled(std::string_view label, std::size_t most)
{
    Statement rows = select(m_snapshot, Query::itemsOfLabel);
    rows.bind(":label", foldedPerson(label));
    // Put in order here: the engine would build a table to sort them by another one's column.
    std::vector<std::tuple<std::int64_t, std::string, std::string, std::string>> found;
    while (rows.step()) {
        found.emplace_back(rows.integer(3), rows.text(1), rows.text(0), rows.text(2));
    }
    std::ranges::sort(found, std::greater());
    std::vector<FoundLabel> labels;
    for (const auto& [at, cycle, item, said] : found) {
        if (labels.size() == most) {
            break;
        }
        labels.push_back({said, item, cycle});
    }
    return labels;
}

std::vector<FoundLabel> Finder::labelsFrom(std::string_view beginning, std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::itemsByLabel);
    bindBeginning(rows, foldedPerson(beginning)).bind(":limit", most);
    std::vector<FoundLabel> labels;
    while (rows.step()) {
        labels.push_back({rows.text(3), rows.text(1), rows.text(2)});
    }
    return labels;
}

std::optional<FoundCycle> Finder::cycle(std::string_view id)
{
    Statement rows = select(m_snapshot, Query::cycleRow);
    rows.bind(":cycle", id);
    std::vector<FoundCycle> found = cyclesOf(std::move(rows));
    return found.empty() ? std::nullopt : std::optional(std::move(found.front()));
}

std::vector<FoundCycle> Finder::openCycles(std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::openCycles);
    rows.bind(":limit", most);
    return cyclesOf(std::move(rows));
}

std::vector<FoundCycle> Finder::openLoads(std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::openLoads);
    rows.bind(":limit", most);
    return cyclesOf(std::move(rows));
}

std::vector<FoundCycle> Finder::saidAfterDisposition(std::int64_t from, std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::saidAfterDisposition);
    rows.bind(":from", from).bind(":limit", most);
    return cyclesOf(std::move(rows));
}

std::vector<FoundCycle> Finder::cyclesBetween(std::string_view sterilizer, std::int64_t from,
                                              std::int64_t to, std::int64_t most)
{
    Statement rows =
        select(m_snapshot, sterilizer.empty() ? Query::cyclesBetween : Query::cyclesOfSterilizer);
    if (!sterilizer.empty()) {
        rows.bind(":sterilizer", sterilizer);
    }
    rows.bind(":from", from).bind(":to", to).bind(":limit", most);
    return cyclesOf(std::move(rows));
}

std::vector<FoundCycle> Finder::newestBehind(std::string_view sterilizer, const CyclePlace& place,
                                             std::int64_t from, std::int64_t most)
{
    Statement rows =
        select(m_snapshot, sterilizer.empty() ? Query::newestCycles : Query::newestOfSterilizer);
    if (!sterilizer.empty()) {
        rows.bind(":sterilizer", sterilizer);
    }
    rows.bind(":from", from).bind(":at", place.at).bind(":cycle", place.cycle).bind(":limit", most);
    return cyclesOf(std::move(rows));
}

bool Finder::hasLabel(std::string_view cycle, std::string_view beginning)
{
    Statement rows = select(m_snapshot, Query::labelInCycle);
    bindBeginning(rows, foldedPerson(beginning)).bind(":cycle", cycle);
    return rows.step();
}

std::vector<FoundVial> Finder::openVials(std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::openVials);
    rows.bind(":limit", most);
    return vialsOfRows(std::move(rows));
}

std::vector<FoundVial> Finder::vialsOf(std::string_view cycle)
{
    Statement rows = select(m_snapshot, Query::vialsOfCycle);
    rows.bind(":cycle", cycle);
    return vialsOfRows(std::move(rows));
}

std::vector<std::string> Finder::controlsOf(std::string_view reason, std::int64_t most)
{
    Statement rows = select(m_snapshot, Query::controlsOf);
    rows.bind(":reason", reason).bind(":limit", most);
    std::vector<std::string> controls;
    while (rows.step()) {
        controls.push_back(rows.text(0));
    }
    return controls;
}

} // namespace loadwarden
