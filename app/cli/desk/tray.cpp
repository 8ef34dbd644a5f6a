#include "core/desk/tray.h"

#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/words/say_tray.h"

#include <nlohmann/json.hpp>

#include <ostream>

namespace loadwarden::cli {
namespace {

std::string_view wordOf(TrayAnswer answer)
{
    switch (answer) {
    case TrayAnswer::mayBeUsed: return "may-be-used";
    case TrayAnswer::askLead: return "ask-lead";
    case TrayAnswer::mayNot: return "may-not-be-used";
    }
    return "may-not-be-used";
}

void sayPlain(std::ostream& out, const std::string& label, const TraySaid& said)
{
    std::string text;
    appendParagraph(text, 0, "", oneLine(label) + ": " + said.answer, 2);
    appendParagraph(text, 2, "", oneLine(said.why), 2);
    appendParagraph(text, 2, "Now: ", said.next, 2);
    for (const std::string& check : said.checks) {
        appendParagraph(text, 2, "- ", check, 4);
    }
    appendParagraph(text, 0, "", caution(), 0);
    out << text;
}

void sayJson(std::ostream& out, const std::string& label, const TraySaid& said,
             const std::optional<TraySheet>& tray)
{
    nlohmann::ordered_json all;
    all["label"] = label;
    all["answer"] = wordOf(tray ? tray->answer() : TrayAnswer::mayNot);
    all["known"] = tray.has_value();
    if (tray) {
        all["item"] = tray->item;
        all["load"] = tray->lot;
        all["cycle"] = tray->cycle;
        if (tray->signature) {
            all["signed"] = {{"by", tray->signature->name},
                             {"at", formatUtc(tray->signature->at)},
                             {"as", textOf(tray->signature->meaning)}};
        }
        all["findings"] = nlohmann::ordered_json::array();
        for (const Finding& finding : tray->findings) {
            all["findings"].push_back(textOf(finding.key));
        }
    }
    all["why"] = said.why;
    all["now"] = said.next;
    all["checks"] = said.checks;
    all["caution"] = caution();
    out << all.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << '\n';
}

} // namespace

int tray(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({});
    const Arguments given(arguments, options);
    if (given.rest().size() != 1) {
        throw UsageError("it is used as \"tray LABEL\"");
    }
    if (given.has("--at")) {
        throw UsageError("tray answers for now; load decide LOT --at TIME answers for another "
                         "moment");
    }
    DeskSession session(given, Access::read, streams);
    Office& office = session.office();
    ReadSnapshot snapshot(office.connection());
    const std::string label(given.rest().front());
    const auto found = trayOf(snapshot, office.entries(), label, office.now());
    const TraySaid said = found ? say(*found, session.style()) : sayUnknownTray();
    if (session.wantsJson()) {
        sayJson(session.out(), found ? found->label : label, said, found);
    } else {
        sayPlain(session.out(), found ? found->label : label, said);
    }
    return found && found->answer() == TrayAnswer::mayBeUsed ? exitDone : exitWithheld;
}

} // namespace loadwarden::cli
