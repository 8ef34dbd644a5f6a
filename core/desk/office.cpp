#include "core/desk/office.h"

#include "core/acts/fold/facility.h"
#include "core/desk/journal_entries.h"
#include "core/store/indexes/act_indexes.h"
#include "core/store/journal_reader.h"
#include "core/store/migration.h"
#include "core/store/queries.h"
#include "core/store/rebuild.h"
#include "core/store/store_error.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr int mostTries = 20; ///< each fails only because somebody else got on

JournalIdentity identityOr(Connection& connection, const JournalIdentity& otherwise)
{
    ReadSnapshot snapshot(connection);
    JournalReader reader(snapshot);
    const auto first = reader.entry(1);
    return first ? readIdentity(first->bytes).value_or(otherwise) : otherwise;
}

JournalIdentity identityOf(Connection& connection)
{
    JournalIdentity identity = identityOr(connection, {});
    if (identity.id.empty()) {
        throw StoreError(StoreFault::damaged, "The journal does not begin as a journal does.",
                         "Stop working in it, and restore the newest backup to a new file.");
    }
    return identity;
}

/// Whether the index tables were filled by the rules of this program.
bool hasCurrentTables(Connection& connection)
{
    ReadSnapshot snapshot(connection);
    Statement row = snapshot.statement(sqlOf(Query::indexRulesOf, snapshot.dialect()));
    return row.step() && row.integer(0) == indexRules;
}

Zone zoneOf(Connection& connection)
{
    ReadSnapshot snapshot(connection);
    const std::vector<Entry> entries = registerEntries(snapshot, "fa");
    const FactBook book(entries);
    Folding folding(book);
    return foldFacility(folding).zone;
}

Head headOf(ReadSnapshot& snapshot)
{
    JournalReader reader(snapshot);
    return reader.head();
}

} // namespace

Office::Office(const std::filesystem::path& file, Access access, const Workplace& place,
               Trust trust)
    : m_file(file),
      m_place(place),
      m_lock(access == Access::read ? nullptr : std::make_unique<DesktopLock>(file)),
      m_connection(std::make_unique<Connection>(
          SqliteFile{file}, ConnectionOptions{.access = access, .syncing = place.syncing})),
      m_zone(*Zone::find("UTC"))
{
    if (access == Access::read) {
        checkSchema(*m_connection, migrations());
    } else {
        migrate(*m_connection, migrations(), place.clock);
        if (!hasCurrentTables(*m_connection)) {
            NoProgress progress;
            (void)rebuildIndexes(*m_connection, {}, Rebuild::replace, progress);
        }
    }
    if (trust == Trust::none) {
        m_identity = identityOr(*m_connection, {});
    } else {
        m_identity = identityOf(*m_connection);
        m_zone = zoneOf(*m_connection);
    }
    m_witness = std::make_unique<HeadWitness>(place.keep / "heads", m_identity.id);
    if (trust == Trust::checked) {
        ReadSnapshot snapshot(*m_connection);
        m_witness->check(snapshot);
    }
    m_store = std::make_unique<JournalStore>(*m_connection, place.clock, m_zone,
                                             std::vector<JournalIndex*>{},
                                             access == Access::read ? nullptr : m_witness.get());
}

Office::~Office() = default;

void Office::found(const std::filesystem::path& file, const JournalIdentity& identity,
                   const Workplace& place)
{
    const std::optional<Zone> zone = Zone::find(identity.timeZone);
    if (!zone) {
        throw StoreError(StoreFault::misuse,
                         "\"" + identity.timeZone + "\" is no time zone that this computer knows.",
                         "Write it as the IANA database does, for example America/Chicago.");
    }
    const DesktopLock lock(file);
    Connection connection(SqliteFile{file}, {.access = Access::create, .syncing = place.syncing});
    migrate(connection, migrations(), place.clock);
    HeadWitness witness(place.keep / "heads", identity.id);
    JournalStore store(connection, place.clock, *zone, {}, &witness);
    store.begin(identity, place.workstation);
}

std::optional<std::string> Office::staleLock() const
{
    return m_lock == nullptr ? std::nullopt : m_lock->stale();
}

std::optional<Head> Office::seenHere() const
{
    return m_witness->seen();
}

std::optional<Refusal> Office::whyNoEntries(std::span<const ToRecord> acts, const Author& author)
{
    for (const ToRecord& act : acts) {
        // Whether what it supersedes is there is asked elsewhere.
        auto draft = draftOf(act, author, std::max<std::int64_t>(act.supersedes, 0) + 1);
        if (auto* const refusal = std::get_if<Refusal>(&draft)) {
            return std::move(*refusal);
        }
    }
    return std::nullopt;
}

OrRefusal<EntryDraft> Office::draftOf(const ToRecord& act, const Author& author,
                                      std::int64_t seq) const
{
    const Envelope envelope = envelopeOf(
        asEntry(act, author, seq, journalTime(m_place.clock.now(), m_zone), m_place.workstation));
    const auto read = readEntry(envelope, {});
    if (const auto* const fault = std::get_if<ActFault>(&read)) {
        return Refusal{
            .why = RefusalWhy::malformed, .subject = envelope.kind, .detail = fault->what};
    }
    return EntryDraft{.happenedAt = envelope.happenedAt,
                      .happenedFrom = envelope.happenedFrom,
                      .actor = envelope.actor,
                      .role = envelope.role,
                      .workstation = envelope.workstation,
                      .kind = envelope.kind,
                      .version = envelope.version,
                      .subjects = envelope.subjects,
                      .reason = envelope.reason,
                      .supersedes = envelope.supersedes,
                      .basedOn = envelope.basedOn,
                      .body = envelope.body};
}

OrRefusal<Appended> Office::record(const std::function<OrRefusal<Plan>(ReadSnapshot&)>& plan)
{
    for (int tries = 0; tries < mostTries; ++tries) {
        Head head;
        std::optional<Plan> planned;
        {
            ReadSnapshot snapshot(*m_connection);
            head = headOf(snapshot);
            auto answer = plan(snapshot);
            if (auto* const refusal = std::get_if<Refusal>(&answer)) {
                return std::move(*refusal);
            }
            planned = std::get<Plan>(std::move(answer));
        }
        WriteTransaction transaction(*m_connection);
        if (m_store->checkedHead(transaction) != head) {
            continue;
        }
        if (planned->inside) {
            planned->inside(transaction, planned->acts);
        }
        std::vector<EntryDraft> drafts;
        for (const ToRecord& act : planned->acts) {
            const auto before = static_cast<std::int64_t>(drafts.size());
            auto draft = draftOf(act, planned->author, head.seq + 1 + before);
            if (auto* const refusal = std::get_if<Refusal>(&draft)) {
                return std::move(*refusal);
            }
            drafts.push_back(std::get<EntryDraft>(std::move(draft)));
        }
        // Nobody can have come between: the head is the snapshot's.
        const Appended appended = std::get<Appended>(m_store->append(transaction, drafts));
        transaction.commit();
        m_store->confirm(appended);
        return appended;
    }
    throw StoreError(StoreFault::busy, "Others keep recording in this journal.",
                     "Nothing was recorded of this. Try again.");
}

} // namespace loadwarden
