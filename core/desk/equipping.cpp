#include "core/desk/equipping.h"

#include "core/desk/recorder.h"
#include "core/exchange/specification_library.h"

#include <set>
#include <utility>

namespace loadwarden {

OrRefusal<Appended> equip(Office& office, const SignedIn& who, Signature signature,
                          std::span<const FirstSterilizer> sterilizers)
{
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    IdSource& ids = office.place().ids;
    std::vector<ToRecord> acts;
    std::set<std::pair<std::string, std::string>> copied;
    for (const FirstSterilizer& each : sterilizers) {
        const std::string id = ids.next("sz");
        acts.push_back({.act = SterilizerRecorded{.name = each.name,
                                                  .model = each.model,
                                                  .testMinute = each.testMinute},
                        .subjects = {id}});
        if (each.isInService) {
            acts.push_back(
                {.act = SterilizerReturned{"stated to be qualified and in service when the journal "
                                           "was begun"},
                 .subjects = {id}});
        }
        if (each.specification.empty()
            || !copied.emplace(each.specification, each.program).second) {
            continue;
        }
        const CycleSpecification* const found = library.find(each.specification);
        if (found == nullptr) {
            return Refusal{.why = RefusalWhy::unknown, .subject = each.specification};
        }
        CycleSpecification copy = *found;
        copy.program = each.program;
        acts.push_back({.act = SpecificationRecorded{copy}, .subjects = {ids.next("sp")}});
    }
    return Recorder(office).record(who, acts, std::move(signature));
}

} // namespace loadwarden
