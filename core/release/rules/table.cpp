#include "core/release/rule_table.h"
#include "core/release/rules/rules.h"
#include "core/release/view.h"

#include <array>

namespace loadwarden {
namespace {

bool hasSpecification(const View& view)
{
    return view.specification != nullptr;
}

bool hasImplant(const View& view)
{
    return view.evidence.hasImplant;
}

bool isPeroxide(const View& view)
{
    return view.method == Method::hydrogenPeroxide;
}

bool hasItemInTest(const View& view)
{
    return view.evidence.hasItemInTest;
}

} // namespace

RuleTable allRules()
{
    static constexpr std::array load{
        LoadRule{RuleId::order, rules::order},
        LoadRule{RuleId::acts, rules::acts},
        LoadRule{RuleId::record, rules::record},
        LoadRule{RuleId::printout, rules::printout},
        LoadRule{RuleId::cycleEnd, rules::cycleEnd},
        LoadRule{RuleId::sterilizer, rules::sterilizer},
        LoadRule{RuleId::processFailure, rules::processFailure},
        LoadRule{RuleId::scope, rules::scope},
        LoadRule{RuleId::airRemoval, rules::airRemoval},
        LoadRule{RuleId::physical, rules::physical},
        LoadRule{RuleId::trace, rules::trace},
        LoadRule{RuleId::verification, rules::verification},
        LoadRule{RuleId::pcd, rules::pcd},
        LoadRule{RuleId::implant, rules::implant},
        LoadRule{RuleId::bi, rules::bi},
        LoadRule{RuleId::routineBi, rules::routineBi},
        LoadRule{RuleId::packages, rules::packages},
        LoadRule{RuleId::aeration, rules::aeration},
        LoadRule{RuleId::peroxide, rules::peroxide},
        LoadRule{RuleId::immediate, rules::immediate},
        LoadRule{RuleId::reviews, rules::reviews},
        LoadRule{RuleId::voiding, rules::voiding},
    };
    static constexpr std::array items{
        ItemRule{RuleId::wasInside, rules::wasInside},
        ItemRule{RuleId::external, rules::external},
        ItemRule{RuleId::package, rules::package},
        ItemRule{RuleId::internal, rules::internal},
        ItemRule{RuleId::cycleAllowed, rules::cycleAllowed, hasSpecification},
        ItemRule{RuleId::itemImplant, rules::itemImplant, hasImplant},
        ItemRule{RuleId::itemPeroxide, rules::itemPeroxide, isPeroxide},
        ItemRule{RuleId::inTest, rules::inTest, hasItemInTest},
    };
    return {load, items};
}

} // namespace loadwarden
