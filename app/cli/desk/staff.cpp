#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "core/desk/people.h"
#include "core/quantities/role_words.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

int list(DeskSession& session)
{
    ReadSnapshot snapshot(session.office().connection());
    for (const Person& person : peopleOf(snapshot)) {
        session.out() << person.id << "  " << person.name << ", " << wordOf(roleWords, person.role)
                      << (person.badge.empty() ? "" : ", badge " + person.badge)
                      << (person.active ? "" : ", not active")
                      << (person.hasPin ? "" : ", no PIN yet") << '\n';
    }
    return exitDone;
}

int recordPerson(DeskSession& session, const Arguments& given)
{
    const auto name = given.value("--name");
    const auto role = given.value("--role");
    if (given.rest().size() != 2 || !name || !role) {
        throw UsageError("staff record is used as \"staff record ID --name NAME --role ROLE\"");
    }
    const std::string id(given.rest()[1]);
    {
        ReadSnapshot snapshot(session.office().connection());
        const auto known = personById(peopleOf(snapshot), id);
        if (known && !given.has("--change")) {
            throw Refused(id + " is " + known->name
                          + " already. Take another id, or say --change to change that entry.");
        }
    }
    const Appended appended =
        session.record(StaffRecorded{.name = std::string(*name),
                                     .role = wordIn(roleWords, *role, "--role"),
                                     .badge = std::string(given.value("--badge").value_or("")),
                                     .active = !given.has("--inactive")},
                       {id});
    session.sayRecorded(appended, std::string(*name) + " is registered.");
    return exitDone;
}

int setPin(DeskSession& session, const Arguments& given)
{
    if (given.rest().size() != 2) {
        throw UsageError("staff pin is used as \"staff pin ID\"");
    }
    const SignedIn& who = session.who();
    Signature signature = session.signature();
    const std::string pin = newSecret("LOADWARDEN_NEW_PIN", "The new PIN: ");
    const Appended appended =
        session.must(SignIn(session.office())
                         .setPin(who, std::move(signature), std::string(given.rest()[1]), pin));
    session.sayRecorded(appended, "The PIN is set.");
    return exitDone;
}

} // namespace

int staff(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--name", true},
                                          {"--role", true},
                                          {"--badge", true},
                                          {"--inactive", false},
                                          {"--change", false}});
    const Arguments given(arguments, options);
    const std::string_view what = given.rest().empty() ? "" : given.rest().front();
    if (what == "list") {
        DeskSession session(given, Access::read, streams);
        return list(session);
    }
    if (what == "record" || what == "pin") {
        DeskSession session(given, Access::write, streams);
        return what == "record" ? recordPerson(session, given) : setPin(session, given);
    }
    throw UsageError("staff is used as \"staff list\", \"staff record ID\" or \"staff pin ID\"");
}

} // namespace loadwarden::cli
