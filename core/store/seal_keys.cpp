#include "core/store/seal_keys.h"

#include "core/journal/hex.h"
#include "core/store/act_entry.h"
#include "core/store/journal_identity.h"
#include "core/store/queries.h"
#include "core/store/store_error.h"

#include <algorithm>

namespace loadwarden {
namespace {

void addFirst(ReadSnapshot& snapshot, std::vector<JournalKey>& keys)
{
    Statement lines = snapshot.statement("SELECT line FROM j_seal ORDER BY number");
    while (lines.step()) {
        if (const auto seal = readSeal(lines.text(0)); seal && isGenuine(*seal)) {
            keys.push_back({seal->key, 0});
            return;
        }
    }
}

} // namespace

std::vector<JournalKey> sealKeysOf(ReadSnapshot& snapshot)
{
    std::vector<JournalKey> keys;
    addFirst(snapshot, keys);
    Statement rows = snapshot.statement(sqlOf(Query::ofKindAbout, snapshot.dialect()));
    rows.bind(":subject", openingSubject).bind(":kind", "seal-key.recorded");
    while (rows.step()) {
        try {
            const Entry entry = understand(rows.bytes(1), {});
            const auto* const recorded = std::get_if<SealKeyRecorded>(&entry.act);
            SealPublicKey key;
            if (recorded != nullptr && parseHex(recorded->key, key.bytes)) {
                keys.push_back({key, entry.seq});
            }
        } catch (const StoreError&) {
            // The bytes are no entry, which verification says; they name no key.
            continue;
        }
    }
    return keys;
}

bool isAmong(const std::vector<JournalKey>& keys, const SealPublicKey& key)
{
    return std::ranges::any_of(keys, [&](const JournalKey& each) { return each.key == key; });
}

std::string hexOf(const SealPublicKey& key)
{
    std::string hex;
    appendHex(hex, key.bytes);
    return hex;
}

} // namespace loadwarden
