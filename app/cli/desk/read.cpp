#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/desk/policy_now.h"
#include "core/indicators/indicator_words.h"
#include "core/quantities/decimal.h"
#include "core/quantities/method_words.h"
#include "core/words/say_indicator_answer.h"

#include <nlohmann/json.hpp>

#include <ostream>

namespace loadwarden::cli {
namespace {

constexpr std::string_view usage = "it is used as \"read LOT SEEN\" or \"read LOT --front MM\"";

constexpr Word<IndicatorUsedAt> usedAtWords[] = {{"pcd", IndicatorUsedAt::pcd},
                                                 {"inside", IndicatorUsedAt::inside},
                                                 {"outside", IndicatorUsedAt::outside}};

std::string_view wordOf(ChemicalState state)
{
    switch (state) {
    case ChemicalState::accepted: return "accept";
    case ChemicalState::rejected: return "reject";
    case ChemicalState::unclear: return "unclear";
    case ChemicalState::invalid:
    case ChemicalState::unread: break;
    }
    return "does-not-count";
}

/// The one chemical indicator's lot that an argument names; throws Refused.
ReadableLot lotNamed(ReadSnapshot& snapshot, std::string_view number)
{
    std::vector<ReadableLot> lots = readableLots(snapshot, number);
    if (lots.empty()) {
        throw Refused("No lot " + oneLine(std::string(number))
                      + " is registered. Register its product and the lot first, from the "
                        "package.");
    }
    if (lots.size() > 1) {
        std::string ids;
        for (const ReadableLot& each : lots) {
            ids += (ids.empty() ? "" : ", ") + each.lot + " (" + each.name + ")";
        }
        throw Refused("Several products have a lot of that number. Name one by its id: " + ids
                      + ".");
    }
    if (lots.front().product.kind != IndicatorKind::chemical) {
        throw Refused("That is a lot of biological indicators: they count only in their load, with "
                      "their time and control. Use \"bi read\" and \"load decide\".");
    }
    return std::move(lots.front());
}

Seen seenOf(const Arguments& given, const ReadableLot& lot)
{
    const auto front = given.value("--front");
    if (!front) {
        if (given.rest().size() != 2) {
            throw UsageError(std::string(usage));
        }
        return wordIn(chemicalSeenWords, given.rest()[1], "what is seen");
    }
    const auto tenths = parseDecimal(*front, 1);
    if (given.rest().size() != 1 || !tenths) {
        throw UsageError(std::string(usage) + ", MM with at most one decimal");
    }
    if (!lot.directions || !lot.directions->boundaryTenthsMm) {
        throw Refused("The directions of " + lot.name
                      + " do not state where its accept zone begins. Say what is seen instead.");
    }
    const auto seen = seenAt(*lot.directions, *tenths);
    if (!seen) {
        throw Refused("A front at " + oneLine(std::string(*front))
                      + " mm is not on the strip of this product. Measure from where the front "
                        "starts.");
    }
    return *seen;
}

} // namespace

int readOne(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--front", true}, {"--method", true}, {"--used", true}});
    const Arguments given(arguments, options);
    if (given.rest().empty()) {
        throw UsageError(std::string(usage));
    }
    DeskSession session(given, Access::read, streams);
    Office& office = session.office();
    ReadSnapshot snapshot(office.connection());
    const ReadableLot lot = lotNamed(snapshot, given.rest().front());
    const Seen seen = seenOf(given, lot);
    const auto method = given.value("--method");
    const auto used = given.value("--used");
    const auto place =
        used ? std::optional(wordIn(usedAtWords, *used, "where it was used")) : std::nullopt;
    const IndicatorAnswer answer = answerIndicator(
        lot, seen, method ? wordIn(methodWords, *method, "a method") : Method::unknown, place,
        policyNow(snapshot), office.zone().dateOf(session.moment()));
    const IndicatorSaid said = say(answer, seen, place, session.style());
    if (session.wantsJson()) {
        nlohmann::ordered_json all;
        all["lot"] = lot.number.number;
        all["product"] = lot.name;
        all["seen"] = loadwarden::wordOf(chemicalSeenWords, seen);
        all["answer"] = wordOf(answer.state);
        if (answer.cause != Cause::none) {
            all["because"] = textOf(answer.cause);
        }
        all["why"] = said.why;
        all["now"] = said.next;
        all["source"] = said.source;
        all["caution"] = caution();
        session.out() << all.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace)
                      << '\n';
    } else {
        std::string text;
        appendParagraph(text, 0, "", lot.name + ", lot " + lot.number.number + ": " + said.answer,
                        2);
        appendParagraph(text, 2, "", said.why, 2);
        appendParagraph(text, 2, "Now: ", said.next, 2);
        appendParagraph(text, 2, "Source: ", said.source, 2);
        appendParagraph(text, 0, "", caution(), 0);
        session.out() << text;
    }
    return answer.state == ChemicalState::accepted ? exitDone : exitWithheld;
}

} // namespace loadwarden::cli
