#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/desk/indicator_answer.h"
#include "core/desk/recalled_loads.h"

#include <nlohmann/json.hpp>

#include <ostream>

namespace loadwarden::cli {
namespace {

constexpr std::string_view lotUsage =
    "it is used as \"lot recall NUMBER --why TEXT\" or \"lot loads NUMBER\"";

std::vector<ReadableLot> lotsNamed(ReadSnapshot& snapshot, std::string_view number)
{
    std::vector<ReadableLot> lots = readableLots(snapshot, number);
    if (lots.empty()) {
        throw Refused("No lot " + oneLine(std::string(number)) + " is registered.");
    }
    return lots;
}

int recall(DeskSession& session, const std::string& number, const std::string& why)
{
    std::vector<ReadableLot> lots;
    {
        ReadSnapshot snapshot(session.office().connection());
        lots = lotsNamed(snapshot, number);
    }
    if (lots.size() > 1) {
        std::string ids;
        for (const ReadableLot& each : lots) {
            ids += (ids.empty() ? "" : ", ") + each.lot + " (" + each.name + ")";
        }
        throw Refused("Several lots bear that number. Name the one by its id: " + ids + ".");
    }
    session.sayRecorded(
        session.record(LotRecalled{why}, {lots.front().lot, lots.front().product.id}),
        "Recalled: nothing of lot " + lots.front().number.number + " of " + lots.front().name
            + " counts. \"lot loads\" names the loads in which it was.");
    return exitDone;
}

int listLoads(DeskSession& session, const std::string& number)
{
    Office& office = session.office();
    ReadSnapshot snapshot(office.connection());
    std::vector<std::string> ids;
    for (const ReadableLot& each : lotsNamed(snapshot, number)) {
        ids.push_back(each.lot);
    }
    const std::vector<LoadWithLot> loads =
        loadsWithLots(snapshot, office.entries(), office.zone(), ids, office.now());
    bool isAnyWorse = false;
    for (const LoadWithLot& each : loads) {
        isAnyWorse = isAnyWorse || each.isWorse;
        if (session.wantsJson()) {
            nlohmann::ordered_json one;
            one["load"] = each.lot;
            one["cycle"] = each.cycle;
            one["at"] = formatUtc(each.at);
            if (each.signedAs) {
                one["signed"] = textOf(*each.signedAs);
            }
            if (each.decided) {
                one["decided"] = textOf(*each.decided);
            }
            one["worse"] = each.isWorse;
            session.out() << one.dump() << '\n';
            continue;
        }
        session.out() << (each.lot.empty() ? each.cycle : each.lot) << "  "
                      << sayTime(each.at, session.style()) << "  "
                      << (each.signedAs ? "signed as " + say(*each.signedAs) : "not signed")
                      << (each.decided ? ", decided now: " + say(*each.decided) : "")
                      << (each.isWorse ? "  WORSE THAN SIGNED" : "") << '\n';
    }
    if (!session.wantsJson()) {
        std::string text;
        appendParagraph(text, 0, "",
                        loads.empty() ? "No load or test has an indicator of it." : caution(), 0);
        session.out() << text;
    }
    return isAnyWorse ? exitWithheld : exitDone;
}

} // namespace

int productLot(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--why", true}});
    const Arguments given(arguments, options);
    const auto& rest = given.rest();
    if (rest.size() == 2 && rest[0] == "loads") {
        DeskSession session(given, Access::read, streams);
        return listLoads(session, std::string(rest[1]));
    }
    if (rest.size() == 2 && rest[0] == "recall") {
        const std::string why = given.needed("--why");
        DeskSession session(given, Access::write, streams);
        return recall(session, std::string(rest[1]), why);
    }
    throw UsageError(std::string(lotUsage));
}

} // namespace loadwarden::cli
