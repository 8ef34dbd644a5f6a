#include "core/store/connection.h"
#include "core/store/read_snapshot.h"
#include "core/store/write_transaction.h"
#include "tests/core/store/store_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

namespace loadwarden {
namespace {

using namespace std::chrono_literals;
using loadwarden::testing::faultOf;
using loadwarden::testing::TempFolder;
using ::testing::HasSubstr;

void run(Connection& connection, std::string_view sql)
{
    WriteTransaction transaction(connection);
    transaction.define(sql);
    transaction.commit();
}

std::int64_t number(ReadSnapshot& snapshot, std::string_view sql)
{
    Statement statement = snapshot.statement(sql);
    EXPECT_TRUE(statement.step());
    return statement.integer(0);
}

std::int64_t number(Connection& connection, std::string_view sql)
{
    ReadSnapshot snapshot(connection);
    return number(snapshot, sql);
}

class AConnection : public loadwarden::testing::OnBothEngines {};

INSTANTIATE_TEST_SUITE_P(Store, AConnection, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(AConnection, GivesBackWhatWasBound)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE c_t (n BIGINT, t TEXT, b TEXT)");
    const std::string text = "grün 鋼 \"' :x ? $1";
    const std::int64_t greatest = INT64_MAX;
    {
        WriteTransaction transaction(connection);
        transaction
            .statement("INSERT INTO c_t (n, t, b) VALUES (:n, :t, "
                       + transaction.dialect().textOf(":b") + ")")
            .bind(":n", greatest)
            .bind(":t", text)
            .bindBytes(":b", text)
            .run();
        transaction.commit();
    }
    ReadSnapshot snapshot(connection);
    Statement read = snapshot.statement("SELECT n, t, b, " + snapshot.dialect().bytesOf("b")
                                        + ", NULL FROM c_t");
    ASSERT_TRUE(read.step());
    EXPECT_EQ(read.integer(0), greatest);
    EXPECT_EQ(read.text(1), text);
    EXPECT_EQ(read.text(2), text);
    EXPECT_EQ(read.bytes(3), text);
    EXPECT_TRUE(read.isNull(4));
    EXPECT_EQ(faultOf([&read] { (void)read.integer(1); }), StoreFault::damaged);
    EXPECT_EQ(faultOf([&read] { (void)read.integer(4); }), StoreFault::damaged);
    EXPECT_EQ(faultOf([&read] { (void)read.text(0); }), StoreFault::damaged);
    EXPECT_EQ(faultOf([&read] { (void)read.bytes(1); }), StoreFault::damaged);
    EXPECT_FALSE(read.step());
}

TEST_P(AConnection, BindsATextOfNothingAsAnEmptyOne)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE c_t (t TEXT NOT NULL)");
    WriteTransaction transaction(connection);
    transaction.statement("INSERT INTO c_t (t) VALUES (:t)").bind(":t", std::string_view()).run();
    Statement read = transaction.statement("SELECT t FROM c_t");
    ASSERT_TRUE(read.step());
    EXPECT_EQ(read.text(0), "");
}

TEST_P(AConnection, NamesTheQueryThatFailed)
{
    Connection connection(place(), {.access = Access::create});
    ReadSnapshot snapshot(connection);
    try {
        (void)snapshot.statement("SELECT nothing FROM c_nowhere").step();
        FAIL() << "there is no such table";
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::misuse);
        EXPECT_THAT(error.detail(), HasSubstr("SELECT nothing FROM c_nowhere"));
        EXPECT_THAT(error.what(), HasSubstr(error.next()));
    }
}

TEST_P(AConnection, RefusesABindThatTheQueryDoesNotHave)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE c_t (n BIGINT)");
    ReadSnapshot snapshot(connection);
    Statement statement = snapshot.statement("SELECT n FROM c_t WHERE n = :name");
    EXPECT_EQ(faultOf([&] { statement.bind(":nam", 1); }), StoreFault::misuse);
    EXPECT_EQ(faultOf([&] { statement.bind(":name", 1); }), std::nullopt);
}

TEST_P(AConnection, UndoesWhatIsNotCommitted)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE c_t (n BIGINT)");
    {
        WriteTransaction transaction(connection);
        transaction.statement("INSERT INTO c_t VALUES (1)").run();
    }
    EXPECT_EQ(number(connection, "SELECT count(*) FROM c_t"), 0);
    run(connection, "INSERT INTO c_t VALUES (1)");
    EXPECT_EQ(number(connection, "SELECT count(*) FROM c_t"), 1);
}

TEST_P(AConnection, DoesNotCommitAfterAStatementFailed)
{
    Connection connection(place(), {.access = Access::create});
    run(connection, "CREATE TABLE c_t (n BIGINT NOT NULL PRIMARY KEY)");
    WriteTransaction transaction(connection);
    transaction.statement("INSERT INTO c_t VALUES (1)").run();
    EXPECT_EQ(faultOf([&] { transaction.statement("INSERT INTO c_t VALUES (1)").run(); }),
              StoreFault::refused);
    EXPECT_EQ(faultOf([&] { transaction.commit(); }), StoreFault::misuse);
}

TEST_P(AConnection, IsNotUsedBehindTheCommit)
{
    Connection connection(place(), {.access = Access::create});
    WriteTransaction transaction(connection);
    transaction.commit();
    EXPECT_EQ(faultOf([&] { transaction.statement("SELECT 1").run(); }), StoreFault::misuse);
    EXPECT_EQ(faultOf([&] { transaction.commit(); }), StoreFault::misuse);
}

TEST_P(AConnection, SeesOneMomentThroughASnapshot)
{
    Connection writer(place(), {.access = Access::create});
    run(writer, "CREATE TABLE c_t (n BIGINT)");
    Connection reader(place(), {.access = Access::read});
    {
        ReadSnapshot snapshot(reader);
        run(writer, "INSERT INTO c_t VALUES (1)");
        EXPECT_EQ(number(snapshot, "SELECT count(*) FROM c_t"), 0);
    }
    EXPECT_EQ(number(reader, "SELECT count(*) FROM c_t"), 1);
}

TEST_P(AConnection, GivesUpWaitingForAnotherWriter)
{
    Connection one(place(), {.access = Access::create});
    Connection two(place(), {.patience = 20ms});
    {
        WriteTransaction transaction(one);
        EXPECT_EQ(faultOf([&two] { const WriteTransaction other(two); }), StoreFault::busy);
    }
    EXPECT_EQ(faultOf([&two] { const WriteTransaction other(two); }), std::nullopt);
}

TEST_P(AConnection, ForReadingCannotWrite)
{
    {
        Connection writer(place(), {.access = Access::create});
        run(writer, "CREATE TABLE c_t (n BIGINT)");
    }
    Connection reader(place(), {.access = Access::read});
    EXPECT_EQ(faultOf([&reader] { const WriteTransaction transaction(reader); }),
              StoreFault::misuse);
    ReadSnapshot snapshot(reader);
    EXPECT_EQ(faultOf([&] { (void)snapshot.statement("INSERT INTO c_t VALUES (1)"); }),
              StoreFault::misuse);
}

TEST(AFile, IsNeitherMadeByOpeningNorOverwrittenByCreating)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    EXPECT_EQ(faultOf([&] { const Connection c(file); }), StoreFault::missing);
    EXPECT_EQ(faultOf([&] { const Connection c(file, {.access = Access::read}); }),
              StoreFault::missing);
    EXPECT_FALSE(std::filesystem::exists(file.path));
    {
        const Connection made(file, {.access = Access::create});
    }
    EXPECT_EQ(faultOf([&] { const Connection c(file, {.access = Access::create}); }),
              StoreFault::exists);
    EXPECT_EQ(faultOf([&] { const Connection c(SqliteFile{folder.path()}); }), StoreFault::foreign);
}

TEST(AFile, OfAnotherProgramIsRefused)
{
    const TempFolder folder;
    const SqliteFile text{folder / "text"};
    std::ofstream(text.path) << std::string(4096, 'x');
    EXPECT_EQ(faultOf([&] { const Connection c(text); }), StoreFault::foreign);
    const SqliteFile empty{folder / "empty"};
    std::ofstream(empty.path).close();
    EXPECT_EQ(faultOf([&] { const Connection c(empty); }), StoreFault::foreign);
    EXPECT_EQ(std::filesystem::file_size(empty.path), 0);
}

TEST(AFile, SyncsUnlessToldOtherwise)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    Connection full(file, {.access = Access::create});
    EXPECT_EQ(number(full, "SELECT synchronous FROM pragma_synchronous"), 2);
    Connection off(file, {.syncing = Syncing::off});
    EXPECT_EQ(number(off, "SELECT synchronous FROM pragma_synchronous"), 0);
}

TEST(AServer, ThatIsNotThereIsNamed)
{
    const TempFolder folder;
    if (!loadwarden::testing::testServer()) {
        GTEST_SKIP() << loadwarden::testing::whyNoServer();
    }
    PostgresServer server;
    server.host = folder.path().string();
    EXPECT_EQ(faultOf([&] { const Connection c(server); }), StoreFault::unreachable);
    server.schema = "a; DROP";
    EXPECT_EQ(faultOf([&] { const Connection c(server); }), StoreFault::misuse);
}

} // namespace
} // namespace loadwarden
