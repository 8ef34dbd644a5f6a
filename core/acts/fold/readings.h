#pragma once

#include "core/acts/fold/folding.h"
#include "core/indicators/indicator.h"

#include <cstdint>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The readings of an indicator: what counts, and what was struck or amended away as voided
/// (ACTS.md, 5).
class Readings {
public:
    /// Takes them all.
    Readings(Folding& folding, std::string_view id, bool own);

    /// The entry of the first; `newest` where there is none.
    [[nodiscard]] std::int64_t firstRead() const;

    [[nodiscard]] std::vector<IndicatorReading> take() const;

private:
    [[nodiscard]] IndicatorReading readingOf(const Fact& fact, const Entry& entry) const;
    [[nodiscard]] bool spokeElsewhere(std::string_view person, const Fact& fact) const;
    [[nodiscard]] bool needsAnotherReader(const Fact& fact) const;

    std::vector<const Fact*> m_facts;
};

} // namespace loadwarden
