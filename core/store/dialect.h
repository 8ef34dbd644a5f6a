#pragma once

#include "core/store/place.h"
#include "core/store/store_error.h"

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Something said to the engine when a connection begins. When `reads` is not empty the setting is
/// asked for afterwards, and anything but `expect` is an error.
struct Setting {
    std::string set;
    std::string reads;
    std::string expect;
};

/// Everything in which the two engines differ. What stands elsewhere in core/store and in
/// resources/store is SQL that both understand: BIGINT, TEXT and BLOB, no fractions, named binds,
/// INSERT … ON CONFLICT … RETURNING.
class Dialect {
public:
    enum class Engine : std::uint8_t { sqlite, postgres };

    explicit Dialect(Engine engine) : m_engine(engine) {}

    [[nodiscard]] Engine engine() const { return m_engine; }

    /// The name of Qt's driver.
    [[nodiscard]] const char* driver() const;

    /// The Debian package that has the driver.
    [[nodiscard]] const char* driverPackage() const;

    /// What to say to a new connection, in this order.
    [[nodiscard]] std::vector<Setting> settings(const StorePlace& place, Access access,
                                                Syncing syncing,
                                                std::chrono::milliseconds patience) const;

    /// Begins a transaction that nobody else's can overlap; waits for theirs.
    [[nodiscard]] std::vector<std::string> beginWrite() const;

    /// Begins a transaction that sees one state of the database however long it lasts.
    [[nodiscard]] std::vector<std::string> beginRead() const;

    /// One row, one column: how many tables this database has.
    [[nodiscard]] std::string countTables() const;

    /// One row, one column: how many tables of the name bound as :name it has, 0 or 1.
    [[nodiscard]] std::string countTablesNamed() const;

    /// An expression for a TEXT column as its UTF-8 bytes, so that nothing re-encodes them.
    [[nodiscard]] std::string bytesOf(std::string_view expression) const;

    /// An expression for TEXT of a bind of bytes.
    [[nodiscard]] std::string textOf(std::string_view bind) const;

    /// Turns a statement of a migration into the engine's own; see resources/store/README.md.
    [[nodiscard]] std::string translated(std::string statement) const;

    /// Statements that make a table refuse every UPDATE and DELETE.
    [[nodiscard]] std::vector<std::string> appendOnly(std::string_view table) const;

    /// The names of the triggers that those make.
    [[nodiscard]] std::vector<std::string> guards(std::string_view table) const;

    /// One row, one column: how many triggers that are in force the table bound as :table has.
    [[nodiscard]] std::string countGuards() const;

    /// Rows of one TEXT: what is wrong with the database's pages, or "ok". Empty where the engine
    /// has no such query.
    [[nodiscard]] std::string checkPages() const;

    /// What an error code of the engine means: an extended result code in decimal, or an SQLSTATE.
    [[nodiscard]] StoreFault faultOf(std::string_view code) const;

private:
    Engine m_engine;
};

} // namespace loadwarden
