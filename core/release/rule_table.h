#pragma once

#include "core/release/finding.h"

#include <cstddef>
#include <span>

namespace loadwarden {

class FindingSink;
class View;

/// A rule of the load: says what it finds, nothing where it holds.
struct LoadRule {
    RuleId id;
    void (*apply)(const View& view, FindingSink& sink);
};

/// A rule of one item, given by its index. Not asked for the items of a load that it does not
/// concern.
struct ItemRule {
    RuleId id;
    void (*apply)(const View& view, std::size_t item, FindingSink& sink);
    bool (*concerns)(const View& view) = nullptr; ///< null: every load
};

/// The rules of a decision, in the order in which they speak.
struct RuleTable {
    std::span<const LoadRule> load;
    std::span<const ItemRule> items;
};

/// Every rule of RULES.md.
[[nodiscard]] RuleTable allRules();

} // namespace loadwarden
