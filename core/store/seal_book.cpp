#include "core/store/seal_book.h"

#include "core/store/journal_reader.h"
#include "core/store/posix_file.h"

#include <fstream>
#include <utility>

namespace loadwarden {
namespace {

std::string journalId(WriteTransaction& transaction)
{
    Statement row = transaction.statement("SELECT " + transaction.dialect().bytesOf("bytes")
                                          + " FROM j_entry WHERE seq = 1");
    const auto identity = row.step() ? readIdentity(row.bytes(0)) : std::nullopt;
    if (!identity) {
        throw engineError(StoreFault::headChanged, "entry 1 does not open a journal");
    }
    return identity->id;
}

/// Whether a file's last line has no end.
bool endsInTheMiddle(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary | std::ios::ate);
    if (!file || file.tellg() <= 0) {
        return false;
    }
    file.seekg(-1, std::ios::end);
    return file.get() != '\n';
}

std::int64_t nextNumber(WriteTransaction& transaction)
{
    Statement row = transaction.statement("SELECT COALESCE(MAX(number), 0) + 1 FROM j_seal");
    return row.step() ? row.integer(0) : 1;
}

} // namespace

SealBook::SealBook(Connection& connection, JournalStore& store, const Clock& clock, Zone zone,
                   SealKey key, std::filesystem::path outside)
    : m_connection(connection),
      m_store(store),
      m_clock(clock),
      m_zone(std::move(zone)),
      m_key(std::move(key)),
      m_outside(std::move(outside))
{
}

Seal SealBook::seal()
{
    WriteTransaction transaction(m_connection);
    const Head head = m_store.checkedHead(transaction);
    if (head.seq == 0) {
        throw engineError(StoreFault::misuse, "a journal that has not been begun is not sealed");
    }
    Seal made = makeSeal(journalId(transaction), head, journalTime(m_clock.now(), m_zone), m_key);
    const std::string line = writeSeal(made);
    transaction.statement("INSERT INTO j_seal (number, line) VALUES (:number, :line)")
        .bind(":number", nextNumber(transaction))
        .bind(":line", line)
        .run();
    transaction.commit();
    makePrivateFolder(m_outside.parent_path());
    PosixFile outside(m_outside, PosixFile::Mode::append);
    // A line that a power cut tore does not take this one with it.
    outside.write((endsInTheMiddle(m_outside) ? "\n" : "") + line + '\n');
    outside.sync();
    return made;
}

std::optional<Seal> SealBook::sealDaily()
{
    std::optional<Seal> last;
    Head head;
    {
        ReadSnapshot snapshot(m_connection);
        head = JournalReader(snapshot).head();
        Statement lines = snapshot.statement("SELECT line FROM j_seal ORDER BY number DESC");
        while (!last && lines.step()) {
            auto seal = readSeal(lines.text(0));
            if (seal && seal->key == m_key.publicKey()) {
                last = std::move(seal);
            }
        }
    }
    const bool today = last && m_zone.dateOf(last->at.at) == m_zone.dateOf(m_clock.now());
    if (today || head.seq == 0 || (last && last->head == head)) {
        return std::nullopt;
    }
    return seal();
}

std::vector<Seal> sealsOutside(const std::filesystem::path& file, const std::string& journalId)
{
    std::vector<Seal> seals;
    std::ifstream lines(file, std::ios::binary);
    for (std::string line; std::getline(lines, line);) {
        if (auto seal = readSeal(line); seal && seal->journal == journalId) {
            seals.push_back(*std::move(seal));
        }
    }
    return seals;
}

} // namespace loadwarden
