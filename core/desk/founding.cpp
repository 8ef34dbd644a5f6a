#include "core/desk/founding.h"

#include "core/desk/pin_book.h"
#include "core/desk/sealing.h"
#include "core/exchange/policy_reader.h"
#include "core/quantities/decimal.h"
#include "core/store/posix_file.h"
#include "core/store/store_error.h"

#include <system_error>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

/// The file under a name that nobody else has until it is whole; nothing of it stays when it is
/// not.
class Draft {
public:
    Draft(const fs::path& target, const std::string& id) : m_path(target.string() + '.' + id) {}
    ~Draft() { clear(); }
    Draft(const Draft&) = delete;
    Draft& operator=(const Draft&) = delete;

    [[nodiscard]] const fs::path& path() const { return m_path; }

private:
    void clear() const
    {
        for (const char* const end : {"", "-wal", "-shm", ".lock"}) {
            std::error_code ignored;
            fs::remove(m_path.string() + end, ignored);
        }
    }

    fs::path m_path;
};

PolicyRecorded defaultPolicyRecorded()
{
    const std::string text(defaultPolicyText());
    return {.name = defaultPolicy().id,
            .revision = defaultPolicy().revision,
            .digest = hexOf(hashOf(text)),
            .toml = text};
}

std::optional<TypedNumber> typedKPa(const std::string& text)
{
    if (text.empty()) {
        return std::nullopt;
    }
    const auto thousandths = parseDecimal(text, 3);
    return TypedNumber{text, thousandths.value_or(0)};
}

} // namespace

OrRefusal<Head> foundDepartment(const fs::path& file, const Founding& founding,
                                const Workplace& place)
{
    if (auto refusal = whyNoPin(founding.supervisorPin)) {
        return *std::move(refusal);
    }
    if (!Zone::find(founding.timeZone)) {
        return Refusal{.why = RefusalWhy::malformed,
                       .subject = founding.timeZone,
                       .detail = "is no time zone that this computer knows; write it as the IANA "
                                 "database does, for example America/Chicago"};
    }
    std::error_code failure;
    if (fs::exists(file, failure) || failure) {
        throw StoreError(StoreFault::exists, "There is something at " + file.string() + " already.",
                         "Choose another place for a new journal.");
    }
    const std::string hash = hashOfPin(founding.supervisorPin, place.pinCost);
    makeKeyIfNone(place);
    const Draft draft(fs::absolute(file), RandomIdSource().next("new"));
    Office::found(draft.path(), {place.ids.next("jn"), founding.facility, founding.timeZone},
                  place);
    Head head;
    {
        Office office(draft.path(), Access::write, place);
        const Author supervisor{founding.supervisorId, Role::supervisor};
        auto recorded = office.record([&](ReadSnapshot&) -> OrRefusal<Plan> {
            return Plan{
                .author = supervisor,
                .acts = {{.act = StaffRecorded{.name = founding.supervisorName,
                                               .role = Role::supervisor,
                                               .badge = founding.supervisorBadge},
                          .subjects = {founding.supervisorId}},
                         {.act = StaffPinSet{}, .subjects = {founding.supervisorId}},
                         {.act =
                              FacilityRecorded{.name = founding.facility,
                                               .timeZone = founding.timeZone,
                                               .atmosphereKPa = typedKPa(founding.atmosphereKPa)},
                          .subjects = {openingSubject}},
                         {.act = defaultPolicyRecorded(), .subjects = {place.ids.next("po")}}},
                .inside = [&](WriteTransaction& transaction, std::vector<ToRecord>&) {
                    PinBook::set(transaction, founding.supervisorId, hash);
                }};
        });
        if (auto* const refusal = std::get_if<Refusal>(&recorded)) {
            return std::move(*refusal);
        }
        head = std::get<Appended>(recorded).head;
        sealNow(office);
    }
    // Hashes of PINs stand in it.
    fs::permissions(draft.path(), fs::perms::owner_read | fs::perms::owner_write);
    publish(draft.path(), fs::absolute(file));
    return head;
}

} // namespace loadwarden
