#include "core/journal/chain.h"

#include <charconv>

namespace loadwarden {

std::optional<Place> placeOf(std::string_view bytes) noexcept
{
    constexpr std::string_view opening = R"({"seq":)";
    constexpr std::string_view between = R"(,"prev":")";
    constexpr std::size_t hexDigits = 64;
    if (!bytes.starts_with(opening)) {
        return std::nullopt;
    }
    bytes.remove_prefix(opening.size());
    Place place;
    const auto [end, error] = std::from_chars(bytes.data(), bytes.data() + bytes.size(), place.seq);
    if (error != std::errc{} || place.seq < 1 || bytes.front() == '0') {
        return std::nullopt;
    }
    bytes.remove_prefix(static_cast<std::size_t>(end - bytes.data()));
    if (!bytes.starts_with(between) || bytes.size() < between.size() + hexDigits + 1
        || bytes[between.size() + hexDigits] != '"') {
        return std::nullopt;
    }
    const auto prev = parseHash(bytes.substr(between.size(), hexDigits));
    if (!prev) {
        return std::nullopt;
    }
    place.prev = *prev;
    return place;
}

void ChainWalk::take(std::string_view bytes, const Hash& stored)
{
    const std::int64_t seq = m_head.seq + 1;
    const auto place = placeOf(bytes);
    if (!place) {
        m_faults.push_back({seq, ChainFaultKind::unreadable});
    } else {
        if (place->seq != seq) {
            m_faults.push_back({seq, ChainFaultKind::number});
        }
        if (place->prev != m_head.hash) {
            m_faults.push_back({seq, ChainFaultKind::unlinked});
        }
    }
    if (hashOf(bytes) != stored) {
        m_faults.push_back({seq, ChainFaultKind::edited});
    }
    m_head = {seq, stored};
}

} // namespace loadwarden
