#include "app/cli/desk/load_commands.h"
#include "core/cycle/cycle_words.h"
#include "core/indicators/indicator_words.h"
#include "core/quantities/decimal.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

std::optional<bool> flag(const Arguments& given, std::string_view option)
{
    const auto text = given.value(option);
    return text ? std::optional(yesOrNo(*text, option)) : std::nullopt;
}

std::optional<JournalTime> timeOf(const Arguments& given, std::string_view option)
{
    const auto text = given.value(option);
    return text ? std::optional(DeskSession::time(*text, option)) : std::nullopt;
}

TypedQuantity typed(std::string_view text, std::string_view unit)
{
    const auto thousandths = parseDecimal(text, 3);
    if (!thousandths) {
        throw UsageError("a reading is a number with at most 3 decimals, not \"" + std::string(text)
                         + '"');
    }
    return {std::string(text), {wordIn(unitWords, unit, "the unit"), *thousandths}};
}

} // namespace

int recordPrintout(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(
        argument(given, 1,
                 "load printout LOT [--program NAME] [--sterilizer NAME] [--counter N] "
                 "[--start-shown TIME] [--end-shown TIME]"));
    PrintoutRecorded printout{.program = std::string(given.value("--program").value_or("")),
                              .sterilizer = std::string(given.value("--sterilizer").value_or("")),
                              .counter = {},
                              .start = timeOf(given, "--start-shown"),
                              .end = timeOf(given, "--end-shown")};
    if (const auto counter = given.value("--counter")) {
        printout.counter = whole(*counter, "--counter");
    }
    session.sayRecorded(session.record(printout, {cycle}), "Printout.");
    return exitDone;
}

int answerPrintout(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load printout-answer LOT ANSWER [--field FIELD]";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    PrintoutAnswered answered{
        .answer = wordIn(printoutAnswerWords, argument(given, 2, usage), "the answer"),
        .field = {}};
    if (const auto field = given.value("--field")) {
        answered.field = wordIn(printoutFieldWords, *field, "--field");
    }
    session.sayRecorded(session.record(answered, {cycle}), "Printout answered.");
    return exitDone;
}

int readLoad(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage =
        "load read LOT PARAMETER NUMBER UNIT, or load read LOT INDICATOR SEEN";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string_view what = argument(given, 2, usage);
    const std::string_view value = argument(given, 3, usage);
    if (const auto parameter = valueOf(parameterWords, what)) {
        const PhysicalRead read{*parameter, typed(value, argument(given, 4, usage))};
        session.sayRecorded(session.record(read, {cycle}),
                            std::string(what) + ' ' + sayQuantity(read.value.value) + '.');
        return exitDone;
    }
    const std::string id = part(session, cycle, what);
    const Seen seen = wordIn(chemicalSeenWords, value, "what was seen");
    session.sayRecorded(session.record(ChemicalRead{seen}, {id, cycle}),
                        std::string(what) + ": " + std::string(value) + '.');
    return exitDone;
}

int checkPackage(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load check LOT LABEL [--cooled yes] [--dry yes] [--intact "
                                       "yes] [--sealed yes] [--label-agrees yes]";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string item = part(session, cycle, argument(given, 2, usage));
    const PackageChecked checked{.cooled = flag(given, "--cooled"),
                                 .dry = flag(given, "--dry"),
                                 .intact = flag(given, "--intact"),
                                 .sealed = flag(given, "--sealed"),
                                 .labelAgrees = flag(given, "--label-agrees")};
    session.sayRecorded(session.record(checked, {item, cycle}), "Package checked.");
    return exitDone;
}

int verifyLoad(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(argument(given, 1, "load verify LOT"));
    session.sayRecorded(session.record(PhysicalVerified{}, {cycle}),
                        "The physical record is verified.");
    return exitDone;
}

} // namespace loadwarden::cli
