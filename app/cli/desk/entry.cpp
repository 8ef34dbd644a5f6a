#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "core/acts/codec.h"
#include "core/journal/canonical_json.h"
#include "core/store/act_entry.h"
#include "core/store/journal_reader.h"

#include <nlohmann/json.hpp>

namespace loadwarden::cli {

namespace {

constexpr std::string_view usage = "entry void SEQ --reason TEXT, entry annotate SEQ --note TEXT "
                                   "--reason TEXT, or entry amend SEQ "
                                   "--body JSON [--at TIME] --reason TEXT";

loadwarden::Entry entryOf(DeskSession& session, std::int64_t seq)
{
    ReadSnapshot snapshot(session.office().connection());
    const auto stored = JournalReader(snapshot).entry(seq);
    if (!stored) {
        session.refuse({.why = RefusalWhy::noSuchEntry, .seq = seq});
    }
    return understand(stored->bytes, stored->hash);
}

/// The act of the same kind with another body.
AnyAct amended(const loadwarden::Entry& entry, const std::string& body)
{
    const KindOfAct kind = kindOf(entry.act);
    std::string canonical;
    try {
        canonical = canonicalJson(nlohmann::json::parse(body));
    } catch (const nlohmann::json::exception&) {
        throw UsageError("--body is no JSON object");
    }
    auto decoded = decodeBody(kind.kind, kind.version, canonical);
    if (const auto* const fault = std::get_if<ActFault>(&decoded)) {
        throw UsageError("--body: " + fault->what);
    }
    return std::get<ActBody>(std::move(decoded)).act;
}

} // namespace

int entry(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--note", true}, {"--body", true}});
    const Arguments given(arguments, options);
    const std::string_view word = argument(given, 0, usage);
    const std::int64_t seq = whole(argument(given, 1, usage), "the entry");
    if (!given.has("--reason") || (word == "annotate") != given.has("--note")
        || (word == "amend") != given.has("--body")) {
        throw UsageError("it is used as \"" + std::string(usage) + '"');
    }
    DeskSession session(given, Access::write, streams);
    const loadwarden::Entry old = entryOf(session, seq);
    ToRecord act{.act = EntryVoided{}, .subjects = old.subjects, .supersedes = seq};
    if (word == "annotate") {
        act.act = EntryAnnotated{std::string(*given.value("--note"))};
    } else if (word == "amend") {
        act.act = amended(old, std::string(*given.value("--body")));
        // What was typed wrongly is mostly not the time.
        act.happenedAt = given.has("--at") ? session.happenedAt() : std::optional(old.happenedAt);
        act.happenedFrom = old.happenedFrom;
    } else if (word != "void") {
        throw UsageError("it is used as \"" + std::string(usage) + '"');
    }
    session.sayRecorded(session.record(std::vector{std::move(act)}),
                        "Entry " + std::to_string(seq) + ": " + std::string(word) + '.');
    return exitDone;
}

} // namespace loadwarden::cli
