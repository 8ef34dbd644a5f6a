#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "core/desk/founding.h"

#include <QCoreApplication>

#include <ostream>

namespace loadwarden::cli {

int init(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--facility", true},
                                          {"--zone", true},
                                          {"--atmosphere", true},
                                          {"--supervisor", true},
                                          {"--badge", true},
                                          {"--id", true}});
    const Arguments given(arguments, options);
    const auto application = makeApplication();
    const SystemClock clock;
    RandomIdSource ids;
    Founding founding{.facility = given.needed("--facility"),
                      .timeZone = given.needed("--zone"),
                      .atmosphereKPa = std::string(given.value("--atmosphere").value_or("")),
                      .supervisorId = std::string(given.value("--id").value_or("")),
                      .supervisorName = given.needed("--supervisor"),
                      .supervisorBadge = std::string(given.value("--badge").value_or("")),
                      .supervisorPin = newSecret("LOADWARDEN_PIN", "A PIN for the supervisor: ")};
    if (founding.supervisorId.empty()) {
        founding.supervisorId = ids.next("st");
    }
    const std::string file = journalFile(given);
    const auto head = foundDepartment(file, founding, workplace(clock, ids));
    if (const auto* const refusal = std::get_if<Refusal>(&head)) {
        const Told told = say(*refusal, {});
        throw Refused(told.says + ' ' + told.next);
    }
    const Head& made = std::get<Head>(head);
    if (given.has("--json")) {
        streams.out << "{\"supervisor\":\"" << founding.supervisorId << "\",\"head\":\"" << made.seq
                    << ':' << hexOf(made.hash) << "\"}\n";
        return exitDone;
    }
    streams.out << "The journal " << file << " has begun. " << founding.supervisorName << " ("
                << founding.supervisorId << ") is its first supervisor.\n"
                << "Its newest entry, to be kept on paper: " << made.seq << ':' << hexOf(made.hash)
                << "\n\n"
                << caution() << '\n';
    return exitDone;
}

} // namespace loadwarden::cli
