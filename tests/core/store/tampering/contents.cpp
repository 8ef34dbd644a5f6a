#include "tests/core/store/tampering/contents.h"

#include "core/store/read_snapshot.h"
#include "core/store/write_transaction.h"
#include "tests/core/store/test_journal.h"

namespace loadwarden::testing {

Contents Contents::of(Connection& connection)
{
    Contents contents;
    ReadSnapshot snapshot(connection);
    Statement entries =
        snapshot.statement("SELECT seq, hash, kind, bytes FROM j_entry ORDER BY seq");
    while (entries.step()) {
        contents.entries.push_back(
            {entries.integer(0), entries.text(1), entries.text(2), entries.text(3)});
    }
    Statement subjects =
        snapshot.statement("SELECT seq, ordinal, subject FROM p_subject ORDER BY seq, ordinal");
    while (subjects.step()) {
        contents.subjects.push_back({subjects.integer(0), subjects.integer(1), subjects.text(2)});
    }
    Statement head = snapshot.statement("SELECT seq, hash FROM p_head");
    if (head.step()) {
        contents.headSeq = head.integer(0);
        contents.headHash = head.text(1);
    }
    Statement seals = snapshot.statement("SELECT number, line FROM j_seal ORDER BY number");
    while (seals.step()) {
        contents.seals.emplace_back(seals.integer(0), seals.text(1));
    }
    return contents;
}

void Contents::putInto(Connection& connection) const
{
    dropGuards(connection, "j_entry");
    dropGuards(connection, "j_seal");
    tamper(connection, {"DELETE FROM j_entry", "DELETE FROM p_subject", "DELETE FROM p_head",
                        "DELETE FROM j_seal"});
    WriteTransaction transaction(connection);
    Statement entry = transaction.statement(
        "INSERT INTO j_entry (seq, hash, kind, bytes) VALUES (:seq, :hash, :kind, :bytes)");
    for (const Entry& each : entries) {
        entry.bind(":seq", each.seq)
            .bind(":hash", each.hash)
            .bind(":kind", each.kind)
            .bind(":bytes", each.bytes)
            .run();
    }
    Statement subject = transaction.statement(
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (:seq, :ordinal, :subject)");
    for (const Subject& each : subjects) {
        subject.bind(":seq", each.seq)
            .bind(":ordinal", each.ordinal)
            .bind(":subject", each.subject)
            .run();
    }
    transaction.statement("INSERT INTO p_head (one, seq, hash) VALUES (1, :seq, :hash)")
        .bind(":seq", headSeq)
        .bind(":hash", headHash)
        .run();
    Statement seal =
        transaction.statement("INSERT INTO j_seal (number, line) VALUES (:number, :line)");
    for (const auto& [number, line] : seals) {
        seal.bind(":number", number).bind(":line", line).run();
    }
    if (guarded) {
        for (const char* table : {"j_entry", "j_seal"}) {
            for (const std::string& sql : transaction.dialect().appendOnly(table)) {
                transaction.define(sql);
            }
        }
    }
    transaction.commit();
}

Envelope Contents::envelope(std::size_t at) const
{
    return std::get<Envelope>(readEnvelope(entries[at].bytes));
}

void Contents::forge(std::size_t at, const Envelope& envelope)
{
    entries[at].bytes = writeEnvelope(envelope);
    entries[at].hash = hexOf(hashOf(entries[at].bytes));
    entries[at].kind = envelope.kind;
}

void Contents::chainFrom(std::size_t at)
{
    for (std::size_t i = at; i < entries.size(); ++i) {
        Envelope next = envelope(i);
        next.seq = static_cast<std::int64_t>(i) + 1;
        next.prev = i == 0 ? Hash{} : hashOf(entries[i - 1].bytes);
        entries[i].seq = next.seq;
        forge(i, next);
    }
    indexAnew();
}

void Contents::indexAnew()
{
    subjects.clear();
    for (std::size_t i = 0; i < entries.size(); ++i) {
        std::int64_t ordinal = 0;
        for (const std::string& subject : envelope(i).subjects) {
            subjects.push_back({entries[i].seq, ordinal++, subject});
        }
    }
    headSeq = entries.back().seq;
    headHash = entries.back().hash;
}

} // namespace loadwarden::testing
