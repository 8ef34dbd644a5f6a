#include "core/release/settings.h"

namespace loadwarden {

BiologicalSettings biologicalSettings(const Policy& policy)
{
    return {.useLastReadout = policy.readout == BiReadout::last,
            .controlReach = policy.controlPer,
            .controlWindow = policy.controlWindow};
}

TypeSet pcdTypes(const Policy& policy, Method method, const std::vector<Vial>& vials,
                 const IndicatorRegister& known)
{
    TypeSet types = method == Method::steam ? policy.pcdTypesSteam : policy.pcdTypesOther;
    for (const Vial& vial : vials) {
        const IndicatorProduct* product = known.productOf(vial.link);
        if (product != nullptr && product->kind == IndicatorKind::biological) {
            for (int type : product->implantIndicatorTypes) {
                types.add(type);
            }
        }
    }
    return types;
}

} // namespace loadwarden
