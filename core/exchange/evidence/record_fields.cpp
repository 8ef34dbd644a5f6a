#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/record_checks.h"
#include "core/exchange/evidence/record_draft.h"
#include "core/exchange/specification_library.h"

// The record as a whole.

namespace loadwarden::evidence_format {

namespace {

bool storeZone(void* owner, std::string_view text, const SpecificationLibrary*,
               std::string& message)
{
    const std::optional<Zone> zone = Zone::find(text);
    if (!zone) {
        message =
            quoted(text)
            + " is no time zone that this computer knows; write it as the IANA database does, "
              "for example America/Chicago";
        return false;
    }
    auto& draft = static_cast<RecordDraft&>(*static_cast<EvidenceRecord*>(owner));
    draft.zone = *zone;
    draft.zoneIsKnown = true;
    return true;
}

Fetched<std::string> fetchZone(const void* owner)
{
    return {Stated::yes, static_cast<const EvidenceRecord*>(owner)->zone.name()};
}

constexpr Field atmosphere{
    "atmosphereKPa",
    NumberRule{3, 50'000, 110'000,
               [](void* owner, std::int64_t value, std::string_view) {
                   static_cast<EvidenceRecord*>(owner)->atmosphere =
                       AbsolutePressure::fromKPaThousandths(value);
               },
               [](const void* owner) {
                   return fetched<&EvidenceRecord::atmosphere>(owner, [](AbsolutePressure value) {
                       return numberOf(value.micropascals(), pressure_units::thousandthKPa);
                   });
               }}};

constexpr auto facility =
    fields(Field{"timeZone", FormRule{storeZone, fetchZone}}.must(), atmosphere);

constinit const ObjectType facilityType = objectType("the facility", facility);

/// "name@revision": 1 to 60 small letters, digits and hyphens; a revision of 1 to 5 digits.
bool isStoredName(std::string_view text)
{
    const std::size_t at = text.find('@');
    if (at == 0 || at > 60 || at == std::string_view::npos) {
        return false;
    }
    for (const char c : text.substr(0, at)) {
        if ((c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '-') {
            return false;
        }
    }
    const std::string_view revision = text.substr(at + 1);
    if (revision.empty() || revision.size() > 5 || revision.front() == '0') {
        return false;
    }
    return revision.find_first_not_of("0123456789") == std::string_view::npos;
}

bool storeNamedSpecification(void* owner, std::string_view text,
                             const SpecificationLibrary* library, std::string& message)
{
    if (!isStoredName(text)) {
        message = "must name a stored cycle specification with its revision, for example "
                  "steam-prevacuum-132-wrapped@1, not "
                  + quoted(text);
        return false;
    }
    const CycleSpecification* const found = library == nullptr ? nullptr : library->find(text);
    if (found == nullptr) {
        message = "there is no stored cycle specification " + quoted(text)
                  + "; correct its name, name the folder that holds it (--specifications DIR), or "
                    "write the specification out as an object";
        return false;
    }
    auto& draft = static_cast<RecordDraft&>(*static_cast<EvidenceRecord*>(owner));
    draft.specification = *found;
    draft.specificationIsNamed = true;
    return true;
}

constexpr Field specification{
    "specification",
    TextOrObjectRule{
        storeNamedSpecification,
        std::get<ObjectRule>(object<specificationType, &EvidenceRecord::specification>("").rule)}};

constexpr Field version{"evidenceVersion",
                        NumberRule{0, 1, 1, [](void*, std::int64_t, std::string_view) {},
                                   [](const void*) {
                                       return Fetched<Number>{Stated::yes, {.scaled = 1}};
                                   }},
                        true};

/// The load of a record, which a record of a test has not.
constexpr Field load{
    "load", ObjectRule{&loadType,
                       [](void* owner) -> void* { return &memberAt<&EvidenceRecord::load>(owner); },
                       [](const void* owner) -> Fetched<const void*> {
                           const auto& record = *static_cast<const EvidenceRecord*>(owner);
                           return {record.test ? Stated::no : Stated::yes, &record.load};
                       }}};

constexpr auto recordFields = fields(
    version, text<&EvidenceRecord::comment>("comment"), time<&EvidenceRecord::decideAt>("decideAt"),
    objectSpread<facilityType>("facility").must(),
    object<sterilizerType, &EvidenceRecord::sterilizer>("sterilizer"), specification,
    objects<productType, &EvidenceRecord::products>("products"),
    objects<lotType, &EvidenceRecord::lots>("lots"),
    objects<packagingType, &EvidenceRecord::packagings>("packagings"),
    objects<controlType, &EvidenceRecord::controls>("controls"),
    objects<incubatorType, &EvidenceRecord::incubators>("incubators"), load,
    object<cycleType, &EvidenceRecord::test>("test"));

bool checkRecord(void* object, FieldSet present, Complaint& complaint)
{
    const bool hasLoad = (present & bitOf(recordFields, "load")) != 0;
    const bool hasTest = (present & bitOf(recordFields, "test")) != 0;
    if (hasLoad == hasTest) {
        complaint.message = hasLoad ? "a record is of a load or of a test, not of both; make two "
                                      "records of it"
                                    : "a record needs the field \"load\" or the field \"test\"";
        return false;
    }
    const auto& record = *static_cast<const EvidenceRecord*>(object);
    return checkAcross(static_cast<const RecordDraft&>(record), complaint);
}

} // namespace

constinit const ObjectType recordType = objectType("a record", recordFields, checkRecord);

} // namespace loadwarden::evidence_format
