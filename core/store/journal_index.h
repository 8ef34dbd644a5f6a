#pragma once

#include "core/journal/header.h"
#include "core/store/write_transaction.h"

#include <span>
#include <string_view>

namespace loadwarden {

/// A table of a JournalIndex. Both texts are SQL.
struct IndexTable {
    std::string_view name;    ///< begins with p_
    std::string_view columns; ///< all of them, "a, b, c"
};

/// An entry that is to be found by an index.
struct TakenEntry {
    const EntryHeader& header;
    std::string_view bytes;
};

/// Tables that are filled from the entries alone, so that they can be filled anew and compared.
/// What is put into them depends on the entries and their order and on nothing else: no clock, no
/// ids drawn at random.
class JournalIndex {
public:
    virtual ~JournalIndex() = default;

    [[nodiscard]] virtual std::span<const IndexTable> tables() const = 0;

    /// Takes the next entries, one after the other or together: what is then in the tables is the
    /// same. The entries before them have been taken, in this transaction or an earlier one.
    virtual void take(WriteTransaction& transaction, std::span<const TakenEntry> entries) = 0;

protected:
    JournalIndex() = default;
    JournalIndex(const JournalIndex&) = default;
    JournalIndex& operator=(const JournalIndex&) = default;
};

/// p_subject: what each entry is about.
class SubjectIndex final : public JournalIndex {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const TakenEntry> entries) override;
};

} // namespace loadwarden
