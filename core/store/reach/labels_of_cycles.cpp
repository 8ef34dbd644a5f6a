#include "core/store/reach/labels_of_cycles.h"

#include "core/store/journal_reader.h"
#include "core/store/reach/some_binds.h"

#include <algorithm>

namespace loadwarden {

void LabelsOfCycles::find(std::span<const std::string> cycles)
{
    std::vector<std::string_view> missing;
    for (const std::string& cycle : cycles) {
        if (m_labels.try_emplace(cycle).second) {
            missing.emplace_back(cycle);
        }
    }
    forSome(std::span<const std::string_view>(missing), [this](auto some) {
        const bool all = m_upTo == toTheEnd;
        Statement rows = m_snapshot.statement(
            sqlOf(all ? Query::labelsOfSome : Query::labelsOfSomeUpTo, m_snapshot.dialect()));
        bindEach(rows, some);
        if (!all) {
            rows.bind(":seq", m_upTo);
        }
        while (rows.step()) {
            m_labels[rows.text(0)].push_back(rows.text(1));
        }
    });
    for (const std::string_view cycle : missing) {
        std::ranges::sort(m_labels[std::string(cycle)]);
    }
}

bool LabelsOfCycles::share(const std::string& a, const std::string& b) const
{
    const std::vector<std::string>& of = m_labels.at(a);
    const std::vector<std::string>& others = m_labels.at(b);
    return std::ranges::any_of(of, [&others](const std::string& label) {
        return std::ranges::binary_search(others, label);
    });
}

} // namespace loadwarden
