#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "core/indicators/indicator_words.h"
#include "core/quantities/decimal.h"

namespace loadwarden::cli {

namespace {

std::optional<TypedNumber> number(const Arguments& given, std::string_view option)
{
    const auto text = given.value(option);
    if (!text) {
        return std::nullopt;
    }
    const auto thousandths = parseDecimal(*text, 3);
    if (!thousandths) {
        throw UsageError(std::string(option) + " needs a number, not \"" + std::string(*text)
                         + '"');
    }
    return TypedNumber{std::string(*text), *thousandths};
}

std::optional<bool> flag(const Arguments& given, std::string_view option)
{
    const auto text = given.value(option);
    return text ? std::optional(yesOrNo(*text, option)) : std::nullopt;
}

/// The sheet of a Bowie-Dick test, where it has one chemical indicator and no other.
std::string sheetOf(DeskSession& session, const std::string& cycle)
{
    ReadSnapshot snapshot(session.office().connection());
    std::string sheet;
    for (const Part& each : partsOf(snapshot, cycle)) {
        if (!hasPrefix(each.id, "ci")) {
            continue;
        }
        if (!sheet.empty()) {
            throw Refused("This test has more than one indicator. Say which was read: load read "
                          "TEST c1 SEEN; \"load show\" lists them.");
        }
        sheet = each.id;
    }
    if (sheet.empty()) {
        throw Refused("This test has no sheet. Record it first: load sheet TEST.");
    }
    return sheet;
}

int read(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "test read TEST SEEN, or test read TEST leak --settled "
                                       "MINUTES --minutes MINUTES --rise-mbar NUMBER";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string_view seen = argument(given, 2, usage);
    if (seen == "leak") {
        const LeakRead leak{.settledMinutes = number(given, "--settled"),
                            .minutes = number(given, "--minutes"),
                            .riseMbar = number(given, "--rise-mbar")};
        session.sayRecorded(session.record(leak, {cycle}), "Leak test read.");
        return exitDone;
    }
    session.sayRecorded(
        session.record(ChemicalRead{wordIn(chemicalSeenWords, seen, "what was seen")},
                       {sheetOf(session, cycle), cycle}),
        std::string(seen) + '.');
    return exitDone;
}

int conditions(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(
        argument(given, 1,
                 "test conditions TEST [--chamber-empty yes] [--drying-run no] [--minutes NUMBER] "
                 "[--celsius NUMBER]"));
    const TestConditionsRecorded recorded{.chamberEmpty = flag(given, "--chamber-empty"),
                                          .dryingRun = flag(given, "--drying-run"),
                                          .exposureMinutes = number(given, "--minutes"),
                                          .exposureCelsius = number(given, "--celsius")};
    session.sayRecorded(session.record(recorded, {cycle}), "Conditions of the test.");
    return exitDone;
}

} // namespace

int test(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--settled", true},
                                          {"--minutes", true},
                                          {"--rise-mbar", true},
                                          {"--chamber-empty", true},
                                          {"--drying-run", true},
                                          {"--celsius", true}});
    const Arguments given(arguments, options);
    const std::string_view word = given.rest().empty() ? "" : given.rest().front();
    if (word != "read" && word != "conditions") {
        throw UsageError("behind test stands read or conditions");
    }
    DeskSession session(given, Access::write, streams);
    return word == "read" ? read(session, given) : conditions(session, given);
}

} // namespace loadwarden::cli
