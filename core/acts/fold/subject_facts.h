#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Which facts are about what: indices of facts by subject, in order. It is filled, made ready, and
/// asked. Subjects outlive it.
class SubjectFacts {
public:
    /// A fact is about something; facts come in order, and a subject of one may come twice.
    void add(std::string_view subject, std::uint32_t fact);
    /// Ends the filling.
    void makeReady();

    [[nodiscard]] std::span<const std::uint32_t> of(std::string_view subject) const;

private:
    struct Subject {
        std::string_view id;
        std::size_t hash = 0;
        std::uint32_t newest = 0; ///< the fact that was added last
        std::uint32_t count = 0;
        std::uint32_t from = 0; ///< in m_facts
    };
    struct Mention {
        std::uint32_t subject = 0; ///< in m_subjects
        std::uint32_t fact = 0;
    };

    [[nodiscard]] std::size_t placeOf(std::string_view subject, std::size_t hash) const;
    void grow();

    std::vector<Subject> m_subjects;
    std::vector<std::uint32_t> m_places; ///< a hash table: 1 + the place in m_subjects; 0: free
    std::vector<Mention> m_mentions;
    std::vector<std::uint32_t> m_facts; ///< of one subject after the other
};

} // namespace loadwarden
