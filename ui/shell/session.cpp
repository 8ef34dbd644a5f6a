#include "ui/shell/session.h"

namespace loadwarden::ui {
namespace {

struct Entered {
    SignedIn who;
    Person person;
};

OrRefusal<Entered> enterOffice(Office& office, const std::string& who, const std::string& pin)
{
    auto signedIn = SignIn(office).enter(who, pin);
    if (auto* const refusal = std::get_if<Refusal>(&signedIn)) {
        return std::move(*refusal);
    }
    SignedIn in = std::get<SignedIn>(std::move(signedIn));
    ReadSnapshot snapshot(office.connection());
    Person person = personById(peopleOf(snapshot), in.id()).value_or(Person{});
    return Entered{std::move(in), std::move(person)};
}

} // namespace

void Session::enter(const std::string& who, const std::string& pin,
                    std::function<void(const Refusal&)> refused)
{
    m_desk.ask(
        this, [who, pin](Office& office) { return enterOffice(office, who, pin); },
        [this, refused](OrRefusal<Entered> answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refused(*refusal);
                return;
            }
            Entered& in = std::get<Entered>(answer);
            m_who = std::move(in.who);
            m_person = std::move(in.person);
            m_isLocked = false;
            emit entered();
        });
}

void Session::lock()
{
    if (m_who && !m_isLocked) {
        m_isLocked = true;
        emit locked();
    }
}

void Session::sign(QObject* context, const std::string& pin, Signing signing,
                   std::function<void(OrRefusal<Appended>)> done, std::function<void()> failed)
{
    if (!m_who) {
        done(Refusal{.why = RefusalWhy::pinNeeded});
        return;
    }
    m_desk.record(
        context,
        [who = *m_who, pin, signing = std::move(signing)](Office& office) -> OrRefusal<Appended> {
            auto signature = SignIn(office).sign(who, pin);
            if (auto* const refusal = std::get_if<Refusal>(&signature)) {
                return std::move(*refusal);
            }
            return signing(office, who, std::get<Signature>(std::move(signature)));
        },
        std::move(done), std::move(failed));
}

void Session::signTwice(QObject* context, const std::string& pin, SigningTwice signing,
                        std::function<void(OrRefusal<Appended>)> done,
                        std::function<void()> failed)
{
    sign(
        context, pin,
        [pin, signing = std::move(signing)](Office& office, const SignedIn& who,
                                            Signature first) -> OrRefusal<Appended> {
            auto second = SignIn(office).sign(who, pin);
            if (auto* const refusal = std::get_if<Refusal>(&second)) {
                return std::move(*refusal);
            }
            return signing(office, who, std::move(first), std::get<Signature>(std::move(second)));
        },
        std::move(done), std::move(failed));
}

} // namespace loadwarden::ui
