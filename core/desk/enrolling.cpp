#include "core/desk/enrolling.h"

#include "core/desk/act_checks.h"
#include "core/desk/people.h"
#include "core/desk/recorder.h"

#include <vector>

namespace loadwarden {

OrRefusal<Appended> enrol(Office& office, const SignedIn& who, const Signature& signature,
                          const std::string& id, const StaffRecorded& person, std::string_view pin)
{
    if (auto refusal = whyNoPin(pin)) {
        return *std::move(refusal);
    }
    const std::string hash = hashOfPin(pin, office.place().pinCost);
    const std::vector<ToRecord> acts{{.act = person, .subjects = {id}},
                                     {.act = StaffPinSet{}, .subjects = {id}}};
    return office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        if (personById(peopleOf(snapshot), id)) {
            return Refusal{.why = RefusalWhy::alreadyThere, .subject = id};
        }
        Author author;
        for (const Task task : {Task::setOthersPin, Task::StaffRecorded}) {
            auto asked = authorFor(snapshot, who, task, &signature, office.now());
            if (auto* const refusal = std::get_if<Refusal>(&asked)) {
                return std::move(*refusal);
            }
            author = std::get<Author>(std::move(asked));
        }
        if (auto refusal = office.whyNoEntries(acts, author)) {
            return *std::move(refusal);
        }
        if (auto refusal = checkActs(snapshot, acts, author, office.now())) {
            return *std::move(refusal);
        }
        return Plan{.author = std::move(author),
                    .acts = acts,
                    .inside = [&hash, &id](WriteTransaction& transaction, std::vector<ToRecord>&) {
                        PinBook::set(transaction, id, hash);
                    }};
    });
}

} // namespace loadwarden
