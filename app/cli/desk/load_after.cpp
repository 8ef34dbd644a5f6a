#include "app/cli/desk/load_commands.h"

#include <ostream>

// What becomes of items after their load.

namespace loadwarden::cli {

namespace {

struct NamedItem {
    std::string cycle;
    std::string item;
};

NamedItem itemOf(DeskSession& session, const Arguments& given, std::string_view usage)
{
    const std::string cycle = session.cycle(argument(given, 1, usage));
    return {cycle, part(session, cycle, argument(given, 2, usage))};
}

} // namespace

int distributeItem(DeskSession& session, const Arguments& given)
{
    const auto [cycle, item] = itemOf(session, given, "load distribute LOT LABEL --to NAME");
    session.sayRecorded(session.record(ItemDistributed{given.needed("--to")}, {item, cycle}),
                        "Handed out.");
    return exitDone;
}

int useItem(DeskSession& session, const Arguments& given)
{
    const auto [cycle, item] = itemOf(session, given, "load use LOT LABEL --case REFERENCE");
    session.sayRecorded(session.record(ItemUsed{given.needed("--case")}, {item, cycle}), "Used.");
    return exitDone;
}

int returnItem(DeskSession& session, const Arguments& given)
{
    const auto [cycle, item] = itemOf(session, given, "load return LOT LABEL --why TEXT");
    session.sayRecorded(session.record(ItemReturned{given.needed("--why")}, {item, cycle}),
                        "Returned.");
    return exitDone;
}

} // namespace loadwarden::cli
