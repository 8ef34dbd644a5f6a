#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "core/quantities/decimal.h"

#include <algorithm>
#include <array>

namespace loadwarden::cli {

namespace {

struct Word {
    std::string_view name;
    Access access;
    int (*run)(DeskSession&, const Arguments&);
};

constexpr std::array words = {Word{"reserve", Access::write, reserveLoad},
                              Word{"add", Access::write, addItem},
                              Word{"remove", Access::write, removeItem},
                              Word{"move", Access::write, moveItem},
                              Word{"pcd", Access::write, placePcd},
                              Word{"sheet", Access::write, placeSheet},
                              Word{"start", Access::write, startLoad},
                              Word{"end", Access::write, endLoad},
                              Word{"unload", Access::write, unloadLoad},
                              Word{"printout", Access::write, recordPrintout},
                              Word{"printout-answer", Access::write, answerPrintout},
                              Word{"read", Access::write, readLoad},
                              Word{"check", Access::write, checkPackage},
                              Word{"verify", Access::write, verifyLoad},
                              Word{"decide", Access::read, decideLoad},
                              Word{"review", Access::write, reviewLoad},
                              Word{"sign", Access::write, signLoad},
                              Word{"emergency", Access::write, releaseInEmergency},
                              Word{"distribute", Access::write, distributeItem},
                              Word{"use", Access::write, useItem},
                              Word{"return", Access::write, returnItem},
                              Word{"show", Access::read, showLoad},
                              Word{"list", Access::read, listLoads},
                              Word{"history", Access::read, showHistory}};

std::vector<Option> loadOptions()
{
    return withDeskOptions({{"--sterilizer", true},   {"--specification", true},
                            {"--purpose", true},      {"--method", true},
                            {"--cycle-type", true},   {"--implant", true},
                            {"--packaging", true},    {"--packaging-expires", true},
                            {"--devices", true},      {"--external", true},
                            {"--internal", true},     {"--internal-visible", false},
                            {"--mark", true},         {"--indicators", true},
                            {"--vials", true},        {"--product", true},
                            {"--lot", true},          {"--counter", true},
                            {"--clock", true},        {"--shown", true},
                            {"--aborted", true},      {"--program", true},
                            {"--start-shown", true},  {"--end-shown", true},
                            {"--cooled", true},       {"--dry", true},
                            {"--intact", true},       {"--sealed", true},
                            {"--label-agrees", true}, {"--subject", true},
                            {"--answer", true},       {"--why", true},
                            {"--seen", true},         {"--case", true},
                            {"--demanded-by", true},  {"--would-have-prevented", true},
                            {"--day", true},          {"--open", false},
                            {"--field", true},        {"--to", true}});
}

} // namespace

std::string_view argument(const Arguments& given, std::size_t at, std::string_view usage)
{
    if (given.rest().size() <= at) {
        throw UsageError("it is used as \"" + std::string(usage) + '"');
    }
    return given.rest()[at];
}

std::vector<std::string> listOf(std::optional<std::string_view> text)
{
    std::vector<std::string> list;
    std::string_view left = text.value_or("");
    while (!left.empty()) {
        const std::size_t comma = left.find(',');
        list.emplace_back(left.substr(0, comma));
        left = comma == std::string_view::npos ? "" : left.substr(comma + 1);
    }
    return list;
}

bool yesOrNo(std::string_view text, std::string_view option)
{
    if (text != "yes" && text != "no") {
        throw UsageError(std::string(option) + " is yes or no, not \"" + std::string(text) + '"');
    }
    return text == "yes";
}

std::int64_t whole(std::string_view text, std::string_view option)
{
    const auto number = parseDecimal(text, 0);
    if (!number) {
        throw UsageError(std::string(option) + " needs a whole number, not \"" + std::string(text)
                         + '"');
    }
    return *number;
}

std::string part(DeskSession& session, const std::string& cycle, std::string_view name)
{
    std::string id;
    {
        ReadSnapshot snapshot(session.office().connection());
        id = findPart(partsOf(snapshot, cycle), name);
    }
    if (id.empty()) {
        session.refuse({.why = RefusalWhy::notPlaced,
                        .subject = std::string(name),
                        .detail = std::string(cycle)});
    }
    return id;
}

int load(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = loadOptions();
    const Arguments given(arguments, options);
    const std::string_view name = given.rest().empty() ? "" : given.rest().front();
    const auto word = std::ranges::find(words, name, &Word::name);
    if (word == words.end()) {
        std::string known;
        for (const Word& each : words) {
            known += (known.empty() ? "" : ", ") + std::string(each.name);
        }
        throw UsageError("behind load stands one of: " + known);
    }
    DeskSession session(given, word->access, streams);
    return word->run(session, given);
}

} // namespace loadwarden::cli
