// No query of the store reads a table that grows from its beginning to its end.
#include "core/store/queries.h"
#include "core/store/write_transaction.h"
#include "tests/core/store/reach/stored_weeks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using loadwarden::testing::BulkWriter;
using loadwarden::testing::TempFolder;
using loadwarden::tests::at;

TEST(ThePlan, OfEveryQuerySearchesAndDoesNotScan)
{
    const TempFolder folder;
    const BulkWriter made(SqliteFile{folder / "a.lw"}, at(4, 0), 1);
    Connection connection(SqliteFile{folder / "a.lw"});
    WriteTransaction transaction(connection);
    EXPECT_FALSE(namedQueries().empty());
    for (const NamedQuery& query : namedQueries()) {
        Statement plan =
            transaction.statement("EXPLAIN QUERY PLAN " + sqlOf(query.query, connection.dialect()));
        while (plan.step()) {
            const std::string line = plan.text(3);
            // An index in whose order the rows are wanted is scanned as far as LIMIT goes.
            const bool isListing = line.find("USING INDEX p_cycle_open") != std::string::npos
                                   || line.find("USING INDEX p_vial_open") != std::string::npos;
            EXPECT_TRUE(isListing || !line.starts_with("SCAN")) << query.name << ": " << line;
            EXPECT_EQ(line.find("TEMP B-TREE FOR ORDER BY"), std::string::npos)
                << query.name << ": " << line;
        }
    }
}

} // namespace
} // namespace loadwarden
