#include "core/desk/used_items.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// Items after their load, and what is placed in one.

namespace loadwarden::testing {
namespace {

class Items : public ::testing::Test {
protected:
    void sign(const std::string& cycle, Verdict meaning)
    {
        must(Dispositions(department.office())
                 .sign(department.lead(), department.signature(department.lead(), leadPin),
                       sightFrom(department.view(cycle)), meaning));
    }
    std::vector<UnreleasedUse> uses(const std::string& cycle)
    {
        ReadSnapshot snapshot(department.office().connection());
        return unreleasedUses(snapshot, cycle);
    }
    OrRefusal<Appended> place(AnyAct act, std::vector<std::string> subjects)
    {
        return Recorder(department.office())
            .record(department.operating(),
                    {.act = std::move(act), .subjects = std::move(subjects)});
    }
    std::string reserve()
    {
        return must(reserveCycle(department.office(), department.operating(),
                                 {.sterilizer = "sz-1", .specification = "sp-1"}))
            .cycle;
    }

    WorkingDepartment department;
};

TEST_F(Items, AUseWithoutAReleaseIsRecordedAndSaidUntilThereIsOne)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::string item = WorkingDepartment::partOf("it", load);
    department.readLoad(load);
    EXPECT_TRUE(uses(load).empty());
    // It may not leave, but where it was used that is written down.
    EXPECT_EQ(whyOf(place(ItemDistributed{"theatre"}, {item, load})), RefusalWhy::notReleased);
    const Appended used = department.record(department.second(), ItemUsed{"case 7"}, {item, load});
    ASSERT_EQ(uses(load).size(), 1U);
    const UnreleasedUse use = uses(load).front();
    EXPECT_EQ(use.item, item);
    EXPECT_EQ(use.label, "I1");
    EXPECT_EQ(use.lot, department.view(load).lot());
    EXPECT_EQ(use.caseReference, "case 7");
    EXPECT_EQ(use.seq, used.firstSeq);
    sign(load, Verdict::quarantine);
    EXPECT_EQ(uses(load).size(), 1U);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"));
    sign(load, Verdict::release);
    EXPECT_TRUE(uses(load).empty());
    sign(load, Verdict::reprocess);
    EXPECT_EQ(uses(load).size(), 1U) << "what was used is called back";
}

TEST_F(Items, InAnEmergencyOnlyTheVialMayBeMissing)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::yes);
    const std::string item = WorkingDepartment::partOf("it", load);
    const SignedIn boss = department.supervisor();
    const auto release = [&] {
        return Dispositions(department.office())
            .releaseInEmergency(boss, department.signature(boss, supervisorPin),
                                sightFrom(department.view(load)), item,
                                {"case 7", "operating room lead", "trauma", "a second set"});
    };
    const auto named = [](const OrRefusal<Appended>& answer) {
        std::vector<std::string> keys;
        for (const Finding& finding : std::get<Refusal>(answer).findings) {
            keys.emplace_back(textOf(finding.key));
        }
        return keys;
    };
    auto answer = release();
    ASSERT_EQ(whyOf(answer), RefusalWhy::notOnlyTheVial);
    EXPECT_THAT(named(answer),
                ::testing::IsSupersetOf({"pcd.not-read", "verification.missing", "item.not-checked",
                                         "item.external-not-read"}));
    EXPECT_THAT(named(answer), ::testing::Not(::testing::Contains("implant.pending")));
    department.readLoad(load);
    // One of all that is not the vial.
    department.record(department.second(), PackageChecked{.dry = true}, {item, load});
    answer = release();
    ASSERT_EQ(whyOf(answer), RefusalWhy::notOnlyTheVial);
    EXPECT_THAT(named(answer), ::testing::Each("item.not-checked"));
    department.record(department.second(), PackageChecked{true, true, true, true, true},
                      {item, load});
    EXPECT_EQ(whyOf(release()), std::nullopt) << "before the vial is in the incubator";
    department.incubate(load);
    EXPECT_EQ(whyOf(release()), std::nullopt) << "while it incubates";
    EXPECT_TRUE(uses(load).empty());
    department.record(department.second(), ItemUsed{"case 7"}, {item, load});
    EXPECT_TRUE(uses(load).empty()) << "an emergency release is one";
}

TEST_F(Items, AProductStandsWhereItBelongs)
{
    department.setClock(local("06:40"));
    const std::string load = reserve();
    const auto refused = [&](AnyAct act, std::vector<std::string> subjects, const char* product,
                             ProductPlace place_) {
        const auto answer = place(std::move(act), std::move(subjects));
        ASSERT_EQ(whyOf(answer), RefusalWhy::wrongProduct);
        EXPECT_EQ(std::get<Refusal>(answer).subject, product);
        EXPECT_EQ(std::get<Refusal>(answer).place, place_);
    };
    ItemAdded item{.label = "I1", .packaging = "pk-1"};
    item.external = PlacedIndicator{"ci-1", "pr-4", {}, {}};
    refused(item, {"it-1", load, "ci-1"}, "pr-4", ProductPlace::chemical);
    item.external = PlacedIndicator{"ci-1", {}, "pl-3", {}};
    refused(item, {"it-1", load, "ci-1"}, "pr-3", ProductPlace::chemical);
    item.external.reset();
    item.internals = {{"ci-1", "pr-2", {}, {}}, {"ci-2", "pr-3", {}, {}}};
    refused(item, {"it-1", load, "ci-1", "ci-2"}, "pr-3", ProductPlace::chemical);
    refused(PcdPlaced{"PCD", {{"ci-1", "pr-4", "pl-4", {}}}, {}}, {"pd-1", load, "ci-1"}, "pr-4",
            ProductPlace::chemical);
    refused(PcdPlaced{"PCD", {}, {{"bv-1", "pr-2", "pl-2", {}}}}, {"pd-1", load, "bv-1"}, "pr-2",
            ProductPlace::vial);
    refused(ControlPrepared{"pr-2", {}, {}}, {"bc-1"}, "pr-2", ProductPlace::vial);
    const std::string test =
        must(reserveCycle(
                 department.office(), department.operating(),
                 {.sterilizer = "sz-1", .specification = "sp-2", .purpose = Purpose::bowieDick}))
            .cycle;
    refused(SheetPlaced{"pr-2", {}}, {"ci-1", test}, "pr-2", ProductPlace::sheet);
    // What is not known is not asked for, and what is right is taken.
    item.internals = {{"ci-1", "pr-2", {}, {}}, {"ci-2", {}, {}, {}}};
    EXPECT_EQ(whyOf(place(item, {"it-1", load, "ci-1", "ci-2"})), std::nullopt);
}

TEST_F(Items, AProductOfTheSameBatchIsLookedAt)
{
    department.setClock(local("06:40"));
    const std::string load = reserve();
    IndicatorProduct sheet{.kind = IndicatorKind::chemical, .type = 2, .response = Response::sheet};
    const std::vector<ToRecord> acts = {
        {.act = ProductRecorded{"new", sheet}, .subjects = {"pr-9"}},
        {.act = PcdPlaced{"PCD", {{"ci-1", "pr-9", {}, {}}}, {}},
         .subjects = {"pd-1", load, "ci-1"}}};
    const SignedIn boss = department.supervisor();
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(boss, acts, department.signature(boss, supervisorPin))),
              RefusalWhy::wrongProduct);
}

} // namespace
} // namespace loadwarden::testing
