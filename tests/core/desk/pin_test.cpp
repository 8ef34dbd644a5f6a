#include "core/desk/pin_book.h"
#include "tests/core/desk/desk_support.h"

#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace loadwarden::testing {
namespace {

TEST(Pin, HasSixToTwelveDigitsNotInARow)
{
    for (const char* good : {"482915", "000001", "112233", "135791", "482915482915"}) {
        EXPECT_EQ(whyNoPin(good), std::nullopt) << good;
    }
    for (const char* shape : {"", "48291", "4829150000000", "48291a", "482 915", "４８２９１５"}) {
        EXPECT_EQ(whyNoPin(shape)->why, RefusalWhy::pinTooShort) << shape;
    }
    for (const char* easy : {"000000", "123456", "654321", "987654321", "777777777777"}) {
        EXPECT_EQ(whyNoPin(easy)->why, RefusalWhy::pinTooEasy) << easy;
    }
}

TEST(Pin, WaitsGrowAndEnd)
{
    EXPECT_EQ(waitAfter(0), Duration{});
    EXPECT_EQ(waitAfter(2), Duration{});
    EXPECT_EQ(waitAfter(3), Duration::seconds(5));
    EXPECT_EQ(waitAfter(4), Duration::seconds(10));
    EXPECT_EQ(waitAfter(10), Duration::seconds(640));
    EXPECT_EQ(waitAfter(11), Duration::minutes(15));
    EXPECT_EQ(waitAfter(1'000'000'000), Duration::minutes(15));
}

// RFC 9106, section 3.1: the encoded hash names the variant; the library's text form is that of the
// reference implementation ("$argon2id$v=19$m=…,t=…,p=…$salt$hash").
TEST(Pin, HashIsArgon2idWithASaltOfItsOwn)
{
    const std::string hash = hashOfPin("482915", PinCost::least());
    EXPECT_THAT(hash, ::testing::StartsWith("$argon2id$v=19$m="));
    EXPECT_NE(hash, hashOfPin("482915", PinCost::least()));
    EXPECT_TRUE(isPinOf("482915", hash));
    EXPECT_FALSE(isPinOf("482916", hash));
    EXPECT_FALSE(isPinOf("482915", "no hash"));
    EXPECT_FALSE(isPinOf("", hash));
}

TEST(Pin, UsualCostIsSixtyFourMebibytes)
{
    EXPECT_THAT(hashOfPin("482915", PinCost{}), ::testing::HasSubstr("m=65536,t=2"));
}

TEST(Pin, WrongTriesAreCountedAcrossOpeningsAndMakeWait)
{
    Department department;
    SignIn door(department.office());
    EXPECT_EQ(whyOf(door.enter("B-1", "111112")), RefusalWhy::pinWrong);
    EXPECT_EQ(whyOf(door.enter("B-1", "111112")), RefusalWhy::pinWrong);
    EXPECT_EQ(whyOf(door.enter("B-1", "111112")), RefusalWhy::pinWrong);
    EXPECT_EQ(whyOf(door.enter("B-1", supervisorPin)), RefusalWhy::pinWait);
    department.close();
    department.open();
    SignIn again(department.office());
    EXPECT_EQ(whyOf(again.enter("B-1", supervisorPin)), RefusalWhy::pinWait);
    department.setClock(department.now() + Duration::seconds(5));
    EXPECT_EQ(whyOf(again.enter("B-1", "111112")), RefusalWhy::pinWrong);
    department.setClock(department.now() + Duration::seconds(9));
    EXPECT_EQ(whyOf(again.enter("B-1", supervisorPin)), RefusalWhy::pinWait);
    department.setClock(department.now() + Duration::seconds(1));
    EXPECT_EQ(whyOf(again.enter("B-1", supervisorPin)), std::nullopt);
    // Forgotten with the right one.
    EXPECT_EQ(whyOf(again.enter("B-1", "111112")), RefusalWhy::pinWrong);
    EXPECT_EQ(whyOf(again.enter("B-1", supervisorPin)), std::nullopt);
}

TEST(Pin, AClockSetBackLocksNobodyOutForLong)
{
    Department department;
    SignIn door(department.office());
    for (int i = 0; i < 12; ++i) {
        (void)door.enter("B-1", "111112");
        department.setClock(department.now() + Duration::minutes(15));
    }
    (void)door.enter("B-1", "111112");
    department.setClock(department.now() - Duration::hours(24 * 365));
    const auto answer = door.enter("B-1", supervisorPin);
    ASSERT_EQ(whyOf(answer), RefusalWhy::pinWait);
    EXPECT_EQ(std::get<Refusal>(answer).until, department.now() + Duration::minutes(15));
    department.setClock(department.now() + Duration::minutes(15));
    EXPECT_EQ(whyOf(door.enter("B-1", supervisorPin)), std::nullopt);
}

TEST(Pin, ThePersonOrASupervisorSetsIt)
{
    Department department;
    const SignedIn lead = department.hire("st-l", Role::lead, "592817");
    const SignedIn operating = department.hire("st-o", Role::operating, "692817");
    SignIn door(department.office());
    EXPECT_EQ(whyOf(door.setPin(lead, department.signature(lead, "592817"), "st-o", "792817")),
              RefusalWhy::roleTooLow);
    EXPECT_EQ(whyOf(door.setPin(operating, department.signature(lead, "592817"), "st-o", "792817")),
              RefusalWhy::pinNeeded);
    EXPECT_EQ(
        whyOf(door.setPin(operating, department.signature(operating, "692817"), "st-o", "123456")),
        RefusalWhy::pinTooEasy);
    must(door.setPin(operating, department.signature(operating, "692817"), "st-o", "792817"));
    EXPECT_EQ(whyOf(door.enter("st-o", "692817")), RefusalWhy::pinWrong);
    EXPECT_EQ(whyOf(door.enter("st-o", "792817")), std::nullopt);
}

TEST(Pin, NeitherItNorItsHashStandsInTheJournal)
{
    Department department;
    (void)department.hire("st-o", Role::operating, "692817");
    ReadSnapshot snapshot(department.office().connection());
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.range(1);
    int changes = 0;
    while (const auto entry = cursor.next()) {
        EXPECT_THAT(entry->bytes, ::testing::Not(::testing::HasSubstr("692817")));
        EXPECT_THAT(entry->bytes, ::testing::Not(::testing::HasSubstr("argon2")));
        changes += entry->bytes.find("staff.pin-set") != std::string::npos ? 1 : 0;
    }
    EXPECT_EQ(changes, 2);
}

} // namespace
} // namespace loadwarden::testing
