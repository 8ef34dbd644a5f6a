#include "core/desk/sign_in.h"

#include "core/desk/people.h"

namespace loadwarden {
namespace {

constexpr Duration signatureLasts = Duration::minutes(2);

std::optional<Person> personOf(Office& office, std::string_view who)
{
    ReadSnapshot snapshot(office.connection());
    return findPerson(peopleOf(snapshot), who);
}

std::optional<Person> byId(Office& office, std::string_view id)
{
    ReadSnapshot snapshot(office.connection());
    return personById(peopleOf(snapshot), id);
}

} // namespace

bool Signature::isGood(Instant now) const
{
    return now >= m_at && now - m_at <= signatureLasts;
}

std::optional<Refusal> SignIn::check(const Person& person, std::string_view pin)
{
    if (!person.active) {
        return Refusal{.why = RefusalWhy::personInactive, .subject = person.name};
    }
    PinBook pins(m_office.connection(), m_office.place().clock);
    auto refusal = pins.check(person.id, pin);
    if (refusal) {
        refusal->subject = person.name;
    }
    return refusal;
}

OrRefusal<SignedIn> SignIn::enter(std::string_view who, std::string_view pin)
{
    const auto person = personOf(m_office, who);
    if (!person) {
        return Refusal{.why = RefusalWhy::personUnknown, .subject = std::string(who)};
    }
    if (auto refusal = check(*person, pin)) {
        return *std::move(refusal);
    }
    return SignedIn(person->id);
}

OrRefusal<Signature> SignIn::sign(const SignedIn& who, std::string_view pin)
{
    const auto person = byId(m_office, who.id());
    if (!person) {
        return Refusal{.why = RefusalWhy::personUnknown, .subject = who.id()};
    }
    if (auto refusal = check(*person, pin)) {
        return *std::move(refusal);
    }
    return Signature(person->id, m_office.now());
}

OrRefusal<Appended> SignIn::setPin(const SignedIn& who, Signature signature,
                                   const std::string& person, std::string_view pin)
{
    if (signature.id() != who.id() || !signature.isGood(m_office.now())) {
        return Refusal{.why = RefusalWhy::pinNeeded};
    }
    if (auto refusal = whyNoPin(pin)) {
        return *std::move(refusal);
    }
    const std::string hash = hashOfPin(pin, m_office.place().pinCost);
    return m_office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        const auto people = peopleOf(snapshot);
        const auto self = personById(people, who.id());
        const auto other = personById(people, person);
        if (!self || !other) {
            return Refusal{.why = RefusalWhy::personUnknown, .subject = person};
        }
        const Task task = self->id == other->id ? Task::setOwnPin : Task::setOthersPin;
        if (!self->active || !mayDo(self->role, task)) {
            return Refusal{.why = RefusalWhy::roleTooLow, .task = task};
        }
        return Plan{.author = {self->id, self->role},
                    .acts = {{.act = StaffPinSet{}, .subjects = {other->id}}},
                    .inside = [&hash, id = other->id](WriteTransaction& transaction,
                                                      std::vector<ToRecord>&) {
                        PinBook::set(transaction, id, hash);
                    }};
    });
}

} // namespace loadwarden
