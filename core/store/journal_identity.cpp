#include "core/store/journal_identity.h"

#include "core/journal/canonical_json.h"
#include "core/journal/envelope.h"

#include <nlohmann/json.hpp>

namespace loadwarden {

using nlohmann::json;

std::string writeIdentity(const JournalIdentity& identity)
{
    return canonicalJson({{"facility", identity.facility},
                          {"journal", identity.id},
                          {"timeZone", identity.timeZone}});
}

std::optional<JournalIdentity> readIdentity(std::string_view bytes)
{
    const auto read = readEnvelope(bytes);
    const auto* const envelope = std::get_if<Envelope>(&read);
    if (envelope == nullptr || envelope->kind != openingKind) {
        return std::nullopt;
    }
    try {
        const json body = json::parse(envelope->body);
        return JournalIdentity{body.at("journal").get<std::string>(),
                               body.at("facility").get<std::string>(),
                               body.at("timeZone").get<std::string>()};
    } catch (const json::exception&) {
        return std::nullopt;
    }
}

} // namespace loadwarden
