#include "core/store/migration.h"
#include "core/store/read_snapshot.h"
#include "core/store/write_transaction.h"
#include "tests/core/store/store_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace loadwarden {
namespace {

using loadwarden::testing::faultOf;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

const FixedClock clockAt5(Instant{5});

void run(Connection& connection, std::string_view sql)
{
    WriteTransaction transaction(connection);
    transaction.define(sql);
    transaction.commit();
}

class AMigration : public loadwarden::testing::OnBothEngines {};

INSTANTIATE_TEST_SUITE_P(Store, AMigration, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(AMigration, MakesANewDatabase)
{
    Connection connection(place(), {.access = Access::create});
    EXPECT_EQ(schemaOf(connection), 0);
    migrate(connection, migrations(), clockAt5);
    EXPECT_EQ(schemaOf(connection), migrations().back().version);
    migrate(connection, migrations(), clockAt5);
    Connection reader(place(), {.access = Access::read});
    EXPECT_EQ(faultOf([&] { checkSchema(reader, migrations()); }), std::nullopt);
}

TEST_P(AMigration, GoesForwardOnly)
{
    const std::array<Migration, 2> two{{{1, "CREATE TABLE s_schema (version BIGINT NOT NULL,\n"
                                            "applied_at BIGINT NOT NULL);\n"},
                                        {2, "CREATE TABLE c_t (n BIGINT);\n"
                                            "INSERT INTO c_t VALUES (1);\n"}}};
    Connection connection(place(), {.access = Access::create});
    migrate(connection, std::span(two).first(1), clockAt5);
    EXPECT_EQ(schemaOf(connection), 1);
    EXPECT_EQ(faultOf([&] { checkSchema(connection, two); }), StoreFault::older);
    migrate(connection, two, clockAt5);
    EXPECT_EQ(schemaOf(connection), 2);
    EXPECT_EQ(faultOf([&] { checkSchema(connection, std::span(two).first(1)); }),
              StoreFault::newer);
    try {
        migrate(connection, std::span(two).first(1), clockAt5);
        FAIL() << "a newer schema was taken";
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::newer);
        EXPECT_THAT(error.says(), HasSubstr("schema 2"));
    }
}

TEST_P(AMigration, IsWholeOrNotAtAll)
{
    const std::array<Migration, 2> broken{
        {{1, "CREATE TABLE s_schema (version BIGINT NOT NULL,\napplied_at BIGINT NOT NULL);\n"},
         {2, "CREATE TABLE c_t (n BIGINT);\nCREATE TABLE c_t (n BIGINT);\n"}}};
    Connection connection(place(), {.access = Access::create});
    EXPECT_EQ(faultOf([&] { migrate(connection, broken, clockAt5); }), StoreFault::misuse);
    EXPECT_EQ(schemaOf(connection), 1);
    run(connection, "CREATE TABLE c_t (n BIGINT)");
}

TEST_P(AMigration, RefusesATableOfSomebodyElse)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE other (n BIGINT)");
    EXPECT_EQ(faultOf([&] { migrate(connection, migrations(), clockAt5); }), StoreFault::foreign);
}

TEST_P(AMigration, LetsTheJournalOnlyGrow)
{
    Connection connection(place(), {.access = Access::create});
    migrate(connection, migrations(), clockAt5);
    const std::string blob = connection.dialect().bytesOf("'b'");
    const std::string attach =
        "INSERT INTO j_attachment (content, size, bytes) VALUES ('h', 1, " + blob + ")";
    const std::array<std::array<const char*, 3>, 4> tables{{
        {attach.c_str(), "UPDATE j_attachment SET size = 2", "DELETE FROM j_attachment"},
        {"INSERT INTO j_entry (seq, hash, kind, bytes) VALUES (1, 'h', 'k', 'b')",
         "UPDATE j_entry SET kind = 'l'", "DELETE FROM j_entry"},
        {"INSERT INTO j_seal (number, line) VALUES (1, 'l')", "UPDATE j_seal SET line = ''",
         "DELETE FROM j_seal"},
        {"INSERT INTO j_lot (sterilizer, day, sequence) VALUES ('s', 1, 1)",
         "UPDATE j_lot SET sequence = 2", "DELETE FROM j_lot"},
    }};
    for (const auto& [insert, update, erase] : tables) {
        run(connection, insert);
        EXPECT_EQ(faultOf([&, sql = update] { run(connection, sql); }), StoreFault::refused);
        EXPECT_EQ(faultOf([&, sql = erase] { run(connection, sql); }), StoreFault::refused);
        EXPECT_EQ(faultOf([&, sql = insert] { run(connection, sql); }), StoreFault::refused);
    }
    if (GetParam() == Dialect::Engine::sqlite) {
        EXPECT_EQ(faultOf([&] {
                      run(connection, "INSERT OR REPLACE INTO j_entry (seq, hash, kind, bytes)"
                                      " VALUES (1, 'h', 'other', 'b')");
                  }),
                  StoreFault::refused);
    } else {
        EXPECT_EQ(faultOf([&] { run(connection, "TRUNCATE j_entry"); }), StoreFault::refused);
    }
}

TEST(Migrations, AreNumberedWithoutGaps)
{
    const auto all = migrations();
    ASSERT_FALSE(all.empty());
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_EQ(all[i].version, static_cast<std::int64_t>(i) + 1);
    }
}

TEST(Migrations, AreCutIntoStatements)
{
    const std::string_view sql = "-- a comment;\n"
                                 "CREATE TABLE j_a (\n"
                                 "    n BIGINT -- a number\n"
                                 ") /*rows*/;\n"
                                 "\n"
                                 "CREATE INDEX i ON j_a (n);\n";
    EXPECT_THAT(statementsOf(sql, Dialect(Dialect::Engine::postgres)),
                ElementsAre("CREATE TABLE j_a (\n    n BIGINT -- a number\n) ",
                            "CREATE INDEX i ON j_a (n)"));
    EXPECT_THAT(statementsOf(sql, Dialect(Dialect::Engine::sqlite)),
                ElementsAre("CREATE TABLE j_a (\n    n INTEGER -- a number\n) STRICT",
                            "CREATE INDEX i ON j_a (n)"));
}

} // namespace
} // namespace loadwarden
