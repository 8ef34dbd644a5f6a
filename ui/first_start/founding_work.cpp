#include "ui/first_start/founding_work.h"

#include "core/words/say_refusal.h"
#include "ui/look/text.h"

#include <QPromise>
#include <QThreadPool>

#include <memory>

namespace loadwarden::ui {
namespace {

Trouble inWords(const Refusal& refusal)
{
    const Told told = say(refusal, {});
    return {text(told.says), text(told.next)};
}

Founded foundNow(const FirstDay& day, const Workplace& place)
{
    try {
        const auto head = foundDepartment(day.file, day.founding, place);
        if (const auto* const refusal = std::get_if<Refusal>(&head)) {
            return inWords(*refusal);
        }
        if (day.sterilizers.empty()) {
            return std::nullopt;
        }
        Office office(day.file, Access::write, place);
        SignIn door(office);
        auto who = door.enter(day.founding.supervisorId, day.founding.supervisorPin);
        if (const auto* const refusal = std::get_if<Refusal>(&who)) {
            return inWords(*refusal);
        }
        auto signature = door.sign(std::get<SignedIn>(who), day.founding.supervisorPin);
        if (const auto* const refusal = std::get_if<Refusal>(&signature)) {
            return inWords(*refusal);
        }
        const auto answer = equip(office, std::get<SignedIn>(who),
                                  std::get<Signature>(std::move(signature)), day.sterilizers);
        if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
            return inWords(*refusal);
        }
    } catch (...) {
        return troubleNow();
    }
    return std::nullopt;
}

} // namespace

QFuture<Founded> found(FirstDay day, Workplace place)
{
    auto promise = std::make_shared<QPromise<Founded>>();
    promise->start();
    QFuture<Founded> future = promise->future();
    QThreadPool::globalInstance()->start([promise, day = std::move(day), place = std::move(place)] {
        promise->addResult(foundNow(day, place));
        promise->finish();
    });
    return future;
}

} // namespace loadwarden::ui
