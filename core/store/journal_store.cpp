#include "core/store/journal_store.h"

#include "core/store/queries.h"

#include <QString>

#include <algorithm>
#include <set>
#include <utility>

namespace loadwarden {
namespace {

StoreError noDraft(const EntryDraft& draft, const std::string& why)
{
    return engineError(StoreFault::misuse, "a draft of kind \"" + draft.kind + "\": " + why);
}

StoreError headChanged(const std::string& why)
{
    return engineError(StoreFault::headChanged, why);
}

void check(const EntryDraft& draft, std::int64_t newestSeq)
{
    if (!isPlainWord(draft.kind)) {
        throw noDraft(draft, "its kind is not a word");
    }
    std::set<std::string_view> seen;
    for (const std::string& subject : draft.subjects) {
        if (!isPlainWord(subject) || !seen.insert(subject).second) {
            throw noDraft(draft, "a subject is not a word, or is named twice");
        }
    }
    if (draft.supersedes < 0 || draft.supersedes > newestSeq || draft.basedOn < 0
        || draft.basedOn > newestSeq) {
        throw noDraft(draft, "it names an entry that is not there yet");
    }
}

/// Unicode normalization form C.
bool isComposed(std::string_view bytes)
{
    if (std::ranges::all_of(bytes, [](char c) { return static_cast<unsigned char>(c) < 0x80; })) {
        return true;
    }
    const QString text = QString::fromUtf8(bytes.data(), static_cast<qsizetype>(bytes.size()));
    return text.normalized(QString::NormalizationForm_C) == text;
}

Envelope envelopeOf(const EntryDraft& draft, const Head& before, const JournalTime& recordedAt)
{
    return {.seq = before.seq + 1,
            .prev = before.hash,
            .recordedAt = recordedAt,
            .happenedAt = draft.happenedAt,
            .happenedFrom = draft.happenedFrom,
            .actor = draft.actor,
            .role = draft.role,
            .workstation = draft.workstation,
            .kind = draft.kind,
            .version = draft.version,
            .subjects = draft.subjects,
            .reason = draft.reason,
            .supersedes = draft.supersedes,
            .basedOn = draft.basedOn,
            .body = draft.body};
}

} // namespace

/// The newest entry, which everything in the database agrees upon.
struct JournalStore::Newest {
    Head head; ///< {} in a new journal
    Instant recordedAt{};
};

JournalStore::JournalStore(Connection& connection, const Clock& clock, Zone zone,
                           std::vector<JournalIndex*> further, HeadWitness* witness)
    : m_connection(connection),
      m_clock(clock),
      m_zone(std::move(zone)),
      m_further(std::move(further)),
      m_witness(witness)
{
}

JournalStore::Newest JournalStore::newest(WriteTransaction& transaction)
{
    Statement row = transaction.statement(sqlOf(Query::newestEntry, transaction.dialect()));
    if (!row.step()) {
        Statement head = transaction.statement("SELECT seq FROM p_head");
        if (head.step()) {
            throw headChanged("the journal has no entry, but p_head names entry "
                              + std::to_string(head.integer(0)));
        }
        return {};
    }
    const std::int64_t seq = row.integer(0);
    const std::string bytes = row.bytes(2);
    const std::string hash = row.text(1);
    if (row.isNull(3) || row.integer(3) != seq || row.text(4) != hash) {
        throw headChanged("the newest entry is " + std::to_string(seq) + ", but p_head names "
                          + (row.isNull(3) ? "none" : "entry " + std::to_string(row.integer(3))));
    }
    EntryHeader header;
    if (!readHeader(bytes, header) || header.seq != seq || hexOf(hashOf(bytes)) != hash) {
        throw headChanged("entry " + std::to_string(seq) + " does not have its hash");
    }
    if (row.isNull(5) || row.integer(5) != indexRules) {
        throw engineError(StoreFault::older, "its index tables must be filled anew");
    }
    return {{seq, hashOf(bytes)}, header.recordedAt.at};
}

void JournalStore::checkKnown(WriteTransaction& transaction, const Newest& newest)
{
    if (newest.head == m_known || m_known.seq == 0) {
        return;
    }
    Statement row = transaction.statement(sqlOf(Query::hashOfEntry, transaction.dialect()));
    row.bind(":seq", m_known.seq);
    if (!row.step() || row.text(0) != hexOf(m_known.hash)) {
        throw headChanged("entry " + std::to_string(m_known.seq)
                          + " was there before and is gone or another");
    }
}

StaleSight JournalStore::changesSince(WriteTransaction& transaction,
                                      std::span<const EntryDraft> drafts)
{
    std::set<std::int64_t> newer;
    for (const EntryDraft& draft : drafts) {
        for (const std::string& subject : draft.unchanged) {
            Statement rows = transaction.statement(sqlOf(Query::newerAbout, transaction.dialect()));
            rows.bind(":subject", subject).bind(":seq", draft.basedOn);
            while (rows.step()) {
                newer.insert(rows.integer(0));
            }
        }
    }
    StaleSight stale;
    for (const std::int64_t seq : newer) {
        Statement row = transaction.statement(sqlOf(Query::oneEntry, transaction.dialect()));
        row.bind(":seq", seq);
        if (!row.step()) {
            throw engineError(StoreFault::damaged, "p_subject names entry " + std::to_string(seq)
                                                       + ", which is not there");
        }
        stale.since.push_back({seq, parseHash(row.text(0)).value_or(Hash{}), row.bytes(1)});
    }
    return stale;
}

Head JournalStore::writeOne(WriteTransaction& transaction, const Envelope& envelope)
{
    const std::string bytes = writeEnvelope(envelope);
    const auto read = readEnvelope(bytes);
    EntryHeader header;
    if (const auto* const fault = std::get_if<EnvelopeFault>(&read);
        fault != nullptr || !readHeader(bytes, header)) {
        throw engineError(StoreFault::misuse, "an entry of kind \"" + envelope.kind + "\": "
                                                  + (fault != nullptr ? fault->what : "no header"));
    }
    if (!isComposed(bytes)) {
        throw engineError(StoreFault::misuse, "an entry of kind \"" + envelope.kind
                                                  + "\": a text is not in normalization form C");
    }
    const Hash hash = hashOf(bytes);
    transaction
        .statement("INSERT INTO j_entry (seq, hash, kind, bytes) VALUES (:seq, :hash, :kind, "
                   + transaction.dialect().textOf(":bytes") + ")")
        .bind(":seq", envelope.seq)
        .bind(":hash", hexOf(hash))
        .bind(":kind", envelope.kind)
        .bindBytes(":bytes", bytes)
        .run();
    const TakenEntry taken{header, bytes};
    m_subjects.take(transaction, std::span(&taken, 1));
    m_acts.take(transaction, std::span(&taken, 1));
    for (JournalIndex* const index : m_further) {
        index->take(transaction, std::span(&taken, 1));
    }
    return {envelope.seq, hash};
}

Appended JournalStore::write(WriteTransaction& transaction, std::span<const EntryDraft> drafts,
                             const Newest& newest)
{
    Appended appended;
    appended.firstSeq = newest.head.seq + 1;
    appended.head = newest.head;
    appended.recordedAt = journalTime(m_clock.now(), m_zone);
    const Duration behind = newest.recordedAt - appended.recordedAt.at;
    if (newest.head.seq != 0 && behind > clockTolerance) {
        appended.clockBehind = behind;
    }
    for (const EntryDraft& draft : drafts) {
        check(draft, appended.head.seq);
        appended.head =
            writeOne(transaction, envelopeOf(draft, appended.head, appended.recordedAt));
    }
    transaction
        .statement("INSERT INTO p_head (one, seq, hash) VALUES (1, :seq, :hash) "
                   "ON CONFLICT (one) DO UPDATE SET seq = excluded.seq, hash = excluded.hash")
        .bind(":seq", appended.head.seq)
        .bind(":hash", hexOf(appended.head.hash))
        .run();
    return appended;
}

std::variant<Appended, StaleSight> JournalStore::append(WriteTransaction& transaction,
                                                        std::span<const EntryDraft> drafts)
{
    const Newest before = newest(transaction);
    checkKnown(transaction, before);
    if (before.head.seq == 0) {
        throw engineError(StoreFault::misuse, "the journal has not been begun");
    }
    m_known = before.head;
    if (StaleSight stale = changesSince(transaction, drafts); !stale.since.empty()) {
        return stale;
    }
    return write(transaction, drafts, before);
}

std::variant<Appended, StaleSight> JournalStore::append(std::span<const EntryDraft> drafts)
{
    WriteTransaction transaction(m_connection);
    auto result = append(transaction, drafts);
    if (const auto* const appended = std::get_if<Appended>(&result)) {
        transaction.commit();
        confirm(*appended);
    }
    return result;
}

void JournalStore::confirm(const Appended& appended)
{
    m_known = appended.head;
    if (m_witness == nullptr) {
        return;
    }
    try {
        m_witness->note(m_known);
    } catch (const StoreError&) {
        // What was recorded is recorded. A witness that stays behind shows less, but nothing wrong.
        return;
    }
}

Head JournalStore::checkedHead(WriteTransaction& transaction)
{
    const Newest now = newest(transaction);
    checkKnown(transaction, now);
    return now.head;
}

Appended JournalStore::begin(const JournalIdentity& identity, const std::string& workstation)
{
    WriteTransaction transaction(m_connection);
    if (newest(transaction).head.seq != 0) {
        throw engineError(StoreFault::exists, "the journal has been begun already");
    }
    EntryDraft draft;
    draft.happenedAt = journalTime(m_clock.now(), m_zone);
    draft.workstation = workstation;
    draft.kind = openingKind;
    draft.subjects = {openingSubject};
    draft.body = writeIdentity(identity);
    transaction
        .statement("INSERT INTO s_index_rules (one, rules) VALUES (1, :rules) "
                   "ON CONFLICT (one) DO UPDATE SET rules = excluded.rules")
        .bind(":rules", indexRules)
        .run();
    const Appended appended = write(transaction, std::span(&draft, 1), {});
    transaction.commit();
    confirm(appended);
    return appended;
}

} // namespace loadwarden
