// The sterilizers with which a department begins.
#include "core/desk/equipping.h"
#include "core/desk/journal_entries.h"
#include "core/desk/today.h"
#include "tests/core/desk/desk_support.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using loadwarden::testing::Department;
using loadwarden::testing::must;
using loadwarden::testing::supervisorPin;
using loadwarden::testing::whyOf;

const FirstSterilizer first{.name = "S1",
                            .model = "M1",
                            .testMinute = 300,
                            .specification = "steam-prevacuum-132-wrapped@1",
                            .program = "P1",
                            .isInService = true};

TEST(Equipping, RecordsSterilizersAndACopyOfEachProgram)
{
    Department department;
    FirstSterilizer second = first;
    second.name = "S2";
    second.isInService = false;
    FirstSterilizer third = first;
    third.name = "S3";
    third.program = "P2";
    const FirstSterilizer all[] = {first, second, third};
    const SignedIn who = department.supervisor();
    must(equip(department.office(), who, department.signature(who, supervisorPin), all));

    ReadSnapshot snapshot(department.office().connection());
    const Today today = todayOf(snapshot, department.office().entries(), department.office().zone(),
                                department.now());
    ASSERT_EQ(today.sterilizers.size(), 3U);
    EXPECT_EQ(today.sterilizers[0].service, ServiceState::inService);
    EXPECT_EQ(today.sterilizers[1].service, ServiceState::outOfService);
    EXPECT_TRUE(today.hasSpecification);
    const auto specifications = registerEntries(snapshot, "sp");
    ASSERT_EQ(specifications.size(), 2U);
    const auto& copy = std::get<SpecificationRecorded>(specifications[0].act).specification;
    EXPECT_EQ(copy.program, "P1");
    EXPECT_FALSE(copy.limits.empty());
}

TEST(Equipping, RecordsNothingWhereATemplateIsUnknown)
{
    Department department;
    FirstSterilizer wrong = first;
    wrong.specification = "no-such@1";
    const SignedIn who = department.supervisor();
    EXPECT_EQ(whyOf(equip(department.office(), who, department.signature(who, supervisorPin),
                          std::span(&wrong, 1))),
              RefusalWhy::unknown);
    ReadSnapshot snapshot(department.office().connection());
    EXPECT_TRUE(registerEntries(snapshot, "sz").empty());
}

} // namespace
} // namespace loadwarden
