#include "core/acts/fold/subject_facts.h"

#include <algorithm>
#include <cstring>

namespace loadwarden {

namespace {

/// Of all bytes, eight at a time: ids are short, and there are many of them.
std::size_t hashOfSubject(std::string_view text)
{
    constexpr std::uint64_t factor = 0x9E37'79B9'7F4A'7C15; // 2^64 over the golden ratio, odd
    std::uint64_t hash = text.size();
    while (!text.empty()) {
        std::uint64_t part = 0;
        const std::size_t length = std::min(sizeof part, text.size());
        std::memcpy(&part, text.data(), length);
        hash = (hash ^ part) * factor;
        hash ^= hash >> 32U;
        text.remove_prefix(length);
    }
    return static_cast<std::size_t>(hash);
}

} // namespace

std::size_t SubjectFacts::placeOf(std::string_view subject, std::size_t hash) const
{
    const std::size_t mask = m_places.size() - 1;
    std::size_t place = hash & mask;
    while (m_places[place] != 0) {
        const Subject& there = m_subjects[m_places[place] - 1];
        if (there.hash == hash && there.id == subject) {
            break;
        }
        place = (place + 1) & mask;
    }
    return place;
}

void SubjectFacts::grow()
{
    constexpr std::size_t least = 64;
    const std::size_t size = std::max(least, m_places.size() * 2);
    m_places.assign(size, 0);
    for (std::uint32_t i = 0; i < m_subjects.size(); ++i) {
        m_places[placeOf(m_subjects[i].id, m_subjects[i].hash)] = i + 1;
    }
}

void SubjectFacts::add(std::string_view subject, std::uint32_t fact)
{
    if (2 * (m_subjects.size() + 1) > m_places.size()) {
        grow();
    }
    const std::size_t hash = hashOfSubject(subject);
    std::uint32_t& place = m_places[placeOf(subject, hash)];
    if (place == 0) {
        m_subjects.push_back({.id = subject, .hash = hash});
        place = static_cast<std::uint32_t>(m_subjects.size());
    }
    Subject& known = m_subjects[place - 1];
    if (known.count != 0 && known.newest == fact) {
        return;
    }
    known.newest = fact;
    ++known.count;
    m_mentions.push_back({place - 1, fact});
}

void SubjectFacts::makeReady()
{
    std::uint32_t from = 0;
    for (Subject& subject : m_subjects) {
        subject.from = from;
        from += subject.count;
        subject.count = 0;
    }
    m_facts.resize(from);
    for (const Mention& mention : m_mentions) {
        Subject& subject = m_subjects[mention.subject];
        m_facts[subject.from + subject.count++] = mention.fact;
    }
    m_mentions = {};
}

std::span<const std::uint32_t> SubjectFacts::of(std::string_view subject) const
{
    if (m_places.empty()) {
        return {};
    }
    const std::uint32_t place = m_places[placeOf(subject, hashOfSubject(subject))];
    if (place == 0) {
        return {};
    }
    const Subject& found = m_subjects[place - 1];
    return std::span(m_facts).subspan(found.from, found.count);
}

} // namespace loadwarden
