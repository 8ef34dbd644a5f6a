#pragma once

#include "core/desk/refusal.h"
#include "core/desk/to_record.h"
#include "core/store/read_snapshot.h"

#include <map>
#include <optional>
#include <string>

namespace loadwarden {

/// Whether products are of the kind that belongs where they are placed.
class ProductChecks {
public:
    explicit ProductChecks(ReadSnapshot& snapshot) : m_snapshot(snapshot) {}

    /// Why not; a product that is not known is not asked for.
    [[nodiscard]] std::optional<Refusal> check(const AnyAct& act);

    /// What an act before this one registers.
    void note(const ToRecord& act);

private:
    [[nodiscard]] std::optional<Refusal> checkOne(const std::string& product,
                                                  const std::string& lot, ProductPlace place);
    [[nodiscard]] std::optional<ProductPlace> placeOf(const std::string& product);
    [[nodiscard]] std::string productOf(const std::string& lot);

    ReadSnapshot& m_snapshot;
    std::map<std::string, std::optional<ProductPlace>> m_places; ///< by product
    std::map<std::string, std::string> m_products;               ///< by lot
};

} // namespace loadwarden
