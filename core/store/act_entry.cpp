#include "core/store/act_entry.h"

#include "core/store/store_error.h"

#include <variant>

namespace loadwarden {

Entry understand(std::string_view bytes, const Hash& hash)
{
    auto read = readEnvelope(bytes);
    if (const auto* const fault = std::get_if<EnvelopeFault>(&read)) {
        throw engineError(StoreFault::damaged, "an entry cannot be read: " + fault->what);
    }
    auto entry = readEntry(std::move(std::get<Envelope>(read)), hash);
    if (auto* const understood = std::get_if<Entry>(&entry)) {
        return std::move(*understood);
    }
    read = readEnvelope(bytes); // anew: what was understood of it was taken from it
    auto& envelope = std::get<Envelope>(read);
    return {.seq = envelope.seq,
            .hash = hash,
            .recordedAt = envelope.recordedAt,
            .happenedAt = envelope.happenedAt,
            .happenedFrom = envelope.happenedFrom,
            .actor = std::move(envelope.actor),
            .role = Role::viewer,
            .workstation = std::move(envelope.workstation),
            .subjects = std::move(envelope.subjects),
            .reason = std::move(envelope.reason),
            .supersedes = envelope.supersedes,
            .basedOn = envelope.basedOn,
            .act =
                NotUnderstood{std::move(envelope.kind), envelope.version, std::move(envelope.body)},
            .paper = {}};
}

} // namespace loadwarden
