#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/unit_fields.h"
#include "core/loads/item.h"
#include "core/loads/load_words.h"

// Items, their package checks, devices and the cycles that those allow.

namespace loadwarden::evidence_format {

namespace {

struct ToAllowedCycle {
    static void store(void* owner, Quantity value, std::string_view)
    {
        storeTemperature(*static_cast<AllowedCycle*>(owner), value);
    }
    static Fetched<Number> fetch(const void* owner, Unit unit)
    {
        return fetchTemperature(*static_cast<const AllowedCycle*>(owner), unit);
    }
};

constexpr auto allowedCycle = fields(word<methodWords, &AllowedCycle::method>("method"),
                                     word<airRemovalWords, &AllowedCycle::airRemoval>("airRemoval"),
                                     measured<ToAllowedCycle, Unit::celsius>("celsius"),
                                     measured<ToAllowedCycle, Unit::fahrenheit>("fahrenheit"),
                                     minutesAsMs<&AllowedCycle::leastMs>("leastMinutes"),
                                     minutesAsMs<&AllowedCycle::mostMs>("mostMinutes"),
                                     minutesAsMs<&AllowedCycle::dryingMs>("dryingMinutes"),
                                     id<&AllowedCycle::program>("program"),
                                     id<&AllowedCycle::sterilizerModel>("sterilizerModel"));

constinit const ObjectType allowedCycleType = objectType("an allowed cycle", allowedCycle);

constexpr auto device = fields(id<&Device::name>("name").must(),
                               objects<allowedCycleType, &Device::allowedCycles>("allowedCycles"),
                               whole<&Device::aerationMinutes>("aerationMinutes", 0, 100'000));

constinit const ObjectType deviceType = objectType("a device", device);

constexpr auto check =
    join(fields(flag<&PackageCheck::cooled>("cooled"), flag<&PackageCheck::dry>("dry"),
                flag<&PackageCheck::intact>("intact"), flag<&PackageCheck::sealed>("sealed"),
                flag<&PackageCheck::labelAgrees>("labelAgrees")),
         actFields<&PackageCheck::act>());

constexpr auto peroxide =
    fields(flag<&PeroxideFacts::cellulose>("cellulose"),
           flag<&PeroxideFacts::liquidOrPowder>("liquidOrPowder"),
           flag<&PeroxideFacts::moist>("moist"), word<lumenWords, &PeroxideFacts::lumen>("lumen"));

constinit const ObjectType peroxideType =
    objectType("what hydrogen peroxide must not meet", peroxide);

constexpr auto item =
    fields(id<&Item::label>("label").must(), object<actType, &Item::recorded>("recorded"),
           object<actType, &Item::confirmed>("confirmed"), ids<&Item::alsoInLots>("alsoInLots"),
           word<implantWords, &Item::implant>("implant"), id<&Item::packaging>("packaging"),
           date<&Item::packagingExpires>("packagingExpires"),
           flag<&Item::internalVisible>("internalVisible"),
           objects<packageCheckType, &Item::checks>("checks"),
           object<actType, &Item::checkLost>("checkLost"),
           object<indicatorType, &Item::external>("external"),
           objects<indicatorType, &Item::internals>("internals"),
           objects<deviceType, &Item::devices>("devices"),
           object<peroxideType, &Item::peroxide>("peroxide"));

} // namespace

constinit const ObjectType packageCheckType =
    signedType<&PackageCheck::act>("a package check", check);
constinit const ObjectType itemType = objectType("an item", item);

} // namespace loadwarden::evidence_format
