#include "core/desk/upkeep.h"
#include "core/store/indexes/act_indexes.h"
#include "core/store/write_transaction.h"
#include "tests/core/desk/day_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>

#include <iostream>
#include <map>
#include <random>

// What somebody with the file in his hands may do to the tables beside the journal.

namespace loadwarden::testing {
namespace {

enum class Kind : std::uint8_t { wrongRow, missingRow, extraRow };

constexpr std::array<std::pair<Kind, const char*>, 3> kinds = {{{Kind::wrongRow, "a wrong row"},
                                                                {Kind::missingRow, "a missing row"},
                                                                {Kind::extraRow, "an extra row"}}};

struct Table {
    std::string name;
    std::vector<std::string> columns;
};

std::vector<std::string> split(std::string_view columns)
{
    std::vector<std::string> names;
    while (!columns.empty()) {
        const std::size_t comma = std::min(columns.find(','), columns.size());
        names.emplace_back(columns.substr(0, comma));
        columns.remove_prefix(std::min(comma + 2, columns.size()));
    }
    return names;
}

std::vector<Table> everyTable()
{
    std::vector<Table> tables = {{"p_head", {"one", "seq", "hash"}},
                                 {"s_pin", {"staff", "hash", "wrong_tries", "wait_until"}}};
    const SubjectIndex subjects;
    const ActIndexes acts;
    for (const JournalIndex* const index :
         std::initializer_list<const JournalIndex*>{&subjects, &acts}) {
        for (const IndexTable& table : index->tables()) {
            tables.push_back({std::string(table.name), split(table.columns)});
        }
    }
    return tables;
}

/// The tables that a migration makes and that say what entries say, or for whom there is a PIN.
std::set<std::string> tablesOfMigrations()
{
    std::set<std::string> tables;
    for (const Migration& migration : migrations()) {
        constexpr std::string_view create = "CREATE TABLE ";
        for (std::size_t at = migration.sql.find(create); at != std::string_view::npos;
             at = migration.sql.find(create, at + 1)) {
            const std::string_view rest = migration.sql.substr(at + create.size());
            const std::string name(rest.substr(0, rest.find(' ')));
            if (name.starts_with("p_") || name == "s_pin") {
                tables.insert(name);
            }
        }
    }
    return tables;
}

class TamperedTables : public ::testing::Test {
protected:
    TamperedTables()
    {
        department.passBowieDick();
        const std::string load = department.runLoad(Implant::no);
        department.readLoad(load);
        department.incubate(load);
        department.close();
    }

    [[nodiscard]] std::filesystem::path copy() const
    {
        return department.folder() / "tampered.lwj";
    }

    RebuildReport compared()
    {
        NoProgress progress;
        return compareTables(copy(), progress);
    }

    /// One of the rows, a literal of SQL for each column.
    static std::vector<std::string> pickRow(Connection& connection, const Table& table,
                                            std::mt19937_64& random)
    {
        std::string quoted;
        for (const std::string& column : table.columns) {
            quoted += (quoted.empty() ? "quote(" : ", quote(") + column + ')';
        }
        ReadSnapshot snapshot(connection);
        Statement rows = snapshot.statement("SELECT " + quoted + " FROM " + table.name);
        std::vector<std::vector<std::string>> all;
        while (rows.step()) {
            std::vector<std::string>& row = all.emplace_back();
            for (std::size_t i = 0; i < table.columns.size(); ++i) {
                row.push_back(rows.text(static_cast<int>(i)));
            }
        }
        if (all.empty()) {
            ADD_FAILURE() << table.name << " has no rows";
            return {};
        }
        return all[random() % all.size()];
    }

    /// The same column with something else in it.
    static std::string other(const Table& table, std::size_t column,
                             const std::vector<std::string>& row)
    {
        // Whose hash or wait it is follows from no entry, so that only nonsense is seen there.
        if (table.columns[column] == "hash" && table.name == "s_pin") {
            return "'no hash'";
        }
        if (table.columns[column] == "wrong_tries") {
            return "-1";
        }
        const std::string& literal = row[column];
        return literal.starts_with("'") ? literal.substr(0, literal.size() - 1) + "x'"
                                        : std::to_string(std::stoll(literal) + 1'000'003);
    }

    static std::string join(const std::vector<std::string>& list, const std::string& between)
    {
        std::string text;
        for (const std::string& each : list) {
            text += (text.empty() ? "" : between) + each;
        }
        return text;
    }

    /// Does it to a copy.
    void tamperWith(const Table& table, Kind kind, std::mt19937_64& random)
    {
        std::filesystem::copy_file(department.file(), copy(),
                                   std::filesystem::copy_options::overwrite_existing);
        Connection connection(SqliteFile{copy()}, {.syncing = Syncing::off});
        std::vector<std::string> row = pickRow(connection, table, random);
        std::vector<std::string> where;
        for (std::size_t i = 0; i < row.size(); ++i) {
            where.push_back(table.columns[i] + " = " + row[i]);
        }
        const std::string which = " WHERE " + join(where, " AND ");
        switch (kind) {
        case Kind::missingRow: tamper(connection, {"DELETE FROM " + table.name + which}); break;
        case Kind::wrongRow: {
            // The head has one row, and a time to wait may be any.
            const std::size_t first = table.name == "p_head" ? 1 : 0;
            const std::size_t last = row.size() - (table.name == "s_pin" ? 2 : 1);
            const std::size_t column = first + random() % (last - first + 1);
            tamper(connection, {"UPDATE " + table.name + " SET " + table.columns[column] + " = "
                                + other(table, column, row) + which});
            break;
        }
        case Kind::extraRow:
            row[0] = other(table, 0, row);
            tamper(connection, {"INSERT INTO " + table.name + " (" + join(table.columns, ", ")
                                + ") VALUES (" + join(row, ", ") + ")"});
            break;
        }
    }

    WorkingDepartment department;
};

TEST_F(TamperedTables, AreAsTheEntriesSayWhereNobodyTampered)
{
    std::filesystem::copy_file(department.file(), copy());
    EXPECT_EQ(compared().differenceCount, 0);
}

TEST_F(TamperedTables, AreFoundAndNamed)
{
    constexpr int rounds = 4;
    std::mt19937_64 random(20310304);
    std::map<std::string, std::pair<int, int>> counts; // named, done
    std::set<std::string> looked;
    for (const Table& table : everyTable()) {
        looked.insert(table.name);
        for (const auto& [kind, words] : kinds) {
            if (kind == Kind::extraRow && table.name == "p_head") {
                continue; // its own rule allows one row only
            }
            auto& [named, done] = counts[table.name + ": " + words];
            for (int round = 0; round < rounds; ++round) {
                tamperWith(table, kind, random);
                const RebuildReport report = compared();
                bool lacks = false;
                bool hasTooMuch = false;
                bool ofOthers = false;
                for (const IndexDifference& each : report.differences) {
                    ofOthers = ofOthers || each.table != table.name;
                    (each.missing ? lacks : hasTooMuch) = true;
                }
                // A person under another name is both; a hash that is none is too much.
                const bool isNamed = kind == Kind::missingRow ? lacks
                                     : kind == Kind::extraRow
                                         ? hasTooMuch
                                         : hasTooMuch && (lacks || table.name == "s_pin");
                EXPECT_TRUE(isNamed) << table.name << ", " << words << ", round " << round;
                EXPECT_FALSE(ofOthers) << table.name << ", " << words << ", round " << round;
                ++done;
                named += isNamed ? 1 : 0;
            }
        }
    }
    EXPECT_EQ(looked, tablesOfMigrations());
    for (const auto& [what, count] : counts) {
        std::cout << count.first << " of " << count.second << " named: " << what << '\n';
        EXPECT_EQ(count.first, count.second) << what;
    }
}

/// What README.md says of PINs: one hash in the place of another shows nowhere.
TEST_F(TamperedTables, AnotherHashInThePlaceOfOneIsNotSeen)
{
    std::filesystem::copy_file(department.file(), copy());
    Connection connection(SqliteFile{copy()}, {.syncing = Syncing::off});
    tamper(connection, {"UPDATE s_pin SET hash = '" + hashOfPin("999333", PinCost::least())
                        + "' WHERE staff = 'st-sup'"});
    EXPECT_EQ(compared().differenceCount, 0);
}

} // namespace
} // namespace loadwarden::testing
