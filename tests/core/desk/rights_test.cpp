#include "core/desk/rights.h"
#include "core/quantities/role_words.h"
#include "tests/core/desk/desk_support.h"

#include <gmock/gmock.h>

#include <fstream>
#include <map>
#include <regex>
#include <sstream>

namespace loadwarden::testing {
namespace {

/// The column "who" of ACTS.md for every kind.
std::map<std::string, std::string> whoOfPage()
{
    std::ifstream page(LOADWARDEN_SOURCE_DIR "/core/acts/ACTS.md");
    std::map<std::string, std::string> who;
    std::string line;
    const std::regex row(R"(^\| `([a-z.-]+)` \|.*\| ([^|]+) \|$)");
    while (std::getline(page, line)) {
        std::smatch match;
        if (std::regex_match(line, match, row)) {
            who[match[1]] = match[2];
        }
    }
    return who;
}

TEST(Rights, AreThoseOfThePage)
{
    const auto who = whoOfPage();
    ASSERT_GT(who.size(), 50U);
    const std::map<std::string, Role> roles = {
        {"any", Role::operating}, {"lead", Role::lead}, {"supervisor", Role::supervisor}};
    std::size_t looked = 0;
#define LW_ACT(Struct, kind, version, paper, subjects)                                             \
    if (const auto found = who.find(kind); found != who.end()) {                                   \
        std::istringstream words(found->second);                                                   \
        std::string word;                                                                          \
        words >> word;                                                                             \
        const Right& right = rightOf(Task::Struct);                                                \
        if (const auto role = roles.find(word); role != roles.end()) {                             \
            EXPECT_FALSE(right.isProgram) << kind;                                                 \
            EXPECT_EQ(right.least, role->second) << kind;                                          \
            EXPECT_EQ(right.signs, found->second.find('S') != std::string::npos) << kind;          \
            ++looked;                                                                              \
        }                                                                                          \
    }
#include "core/acts/acts.def"
#undef LW_ACT
    // What depends on more than the role: the opening, PINs, dispositions, corrections.
    EXPECT_GE(looked, 60U);
    EXPECT_TRUE(rightOf(Task::JournalOpened).isProgram);
}

TEST(Rights, MoreRoleIsNeverLessRight)
{
    for (const Right& right : rights()) {
        EXPECT_FALSE(mayDo(Role::viewer, right.task) && !mayDo(Role::operating, right.task));
        EXPECT_FALSE(mayDo(Role::operating, right.task) && !mayDo(Role::lead, right.task));
        EXPECT_FALSE(mayDo(Role::lead, right.task) && !mayDo(Role::supervisor, right.task));
    }
}

/// An act of every kind as its struct is made; it need not fit anything.
std::vector<AnyAct> everyAct()
{
    std::vector<AnyAct> acts;
#define LW_ACT(Struct, kind, version, paper, subjects) acts.emplace_back(Struct{});
#include "core/acts/acts.def"
#undef LW_ACT
    return acts;
}

bool isRecordedElsewhere(const AnyAct& act)
{
    return std::holds_alternative<CycleReserved>(act)
           || std::holds_alternative<DispositionSigned>(act)
           || std::holds_alternative<EmergencyReleased>(act)
           || std::holds_alternative<ReviewRecorded>(act)
           || std::holds_alternative<StaffPinSet>(act) || std::holds_alternative<TraceRead>(act)
           || std::holds_alternative<HistoryImported>(act)
           || std::holds_alternative<SealKeyRecorded>(act);
}

// Every kind of act by every role, with and without a PIN: the door is shut exactly where the table
// says so, whatever is wrong besides.
TEST(Rights, AreAskedForEveryActAndRole)
{
    Department department;
    const std::map<Role, SignedIn> people = {
        {Role::viewer, department.hire("st-v", Role::viewer, "592817")},
        {Role::operating, department.hire("st-o", Role::operating, "592817")},
        {Role::lead, department.hire("st-l", Role::lead, "592817")},
        {Role::supervisor, department.hire("st-s", Role::supervisor, "592817")}};
    Recorder recorder(department.office());
    int tried = 0;
    for (const AnyAct& act : everyAct()) {
        if (isRecordedElsewhere(act)) {
            const auto answer =
                recorder.record(people.at(Role::supervisor), {.act = act, .subjects = {"ld-none"}});
            EXPECT_TRUE(whyOf(answer).has_value()) << kindOf(act).kind;
            continue;
        }
        const Right& right = rightOf(taskOf(act));
        for (const auto& [role, person] : people) {
            const ToRecord asked{.act = act, .subjects = {"ld-none"}};
            const auto without = whyOf(recorder.record(person, asked));
            const auto with =
                whyOf(recorder.record(person, asked, department.signature(person, "592817")));
            const bool may = !right.isProgram && role >= right.least;
            EXPECT_EQ(without == RefusalWhy::roleTooLow, !may)
                << kindOf(act).kind << ' ' << wordOf(roleWords, role);
            EXPECT_EQ(with == RefusalWhy::roleTooLow, !may) << kindOf(act).kind;
            EXPECT_EQ(without == RefusalWhy::pinNeeded, may && right.signs) << kindOf(act).kind;
            EXPECT_NE(with, RefusalWhy::pinNeeded) << kindOf(act).kind;
            // None of these fits a journal in which there is no such load.
            EXPECT_TRUE(without.has_value()) << kindOf(act).kind;
            EXPECT_TRUE(with.has_value()) << kindOf(act).kind;
            ++tried;
        }
    }
    EXPECT_GE(tried, 240);
}

TEST(Rights, ASignatureOfAnotherOrAnOldOneIsNone)
{
    Department department;
    const SignedIn lead = department.hire("st-l", Role::lead, "592817");
    const SignedIn boss = department.supervisor();
    const ToRecord act{.act = SterilizerRecorded{.name = "S1"}, .subjects = {"sz-1"}};
    Recorder recorder(department.office());
    EXPECT_EQ(whyOf(recorder.record(boss, act, department.signature(lead, "592817"))),
              RefusalWhy::pinNeeded);
    Signature own = department.signature(boss, supervisorPin);
    department.setClock(department.now() + Duration::minutes(2) + Duration::milliseconds(1));
    EXPECT_EQ(whyOf(recorder.record(boss, act, std::move(own))), RefusalWhy::pinNeeded);
    EXPECT_EQ(whyOf(recorder.record(boss, act, department.signature(boss, supervisorPin))),
              std::nullopt);
}

TEST(Rights, WhoIsInactiveOrDemotedLosesThemAtOnce)
{
    Department department;
    const SignedIn lead = department.hire("st-l", Role::lead, "592817");
    const SignedIn boss = department.supervisor();
    const ToRecord act{.act = IncubatorRecorded{.name = "I1"}, .subjects = {"in-1"}};
    Recorder recorder(department.office());
    EXPECT_EQ(whyOf(recorder.record(lead, act)), std::nullopt);
    department.sign(boss, supervisorPin,
                    StaffRecorded{.name = "Name", .role = Role::operating, .badge = "x"}, {"st-l"});
    EXPECT_EQ(whyOf(recorder.record(lead, act)), RefusalWhy::roleTooLow);
    department.sign(boss, supervisorPin,
                    StaffRecorded{.name = "Name", .role = Role::lead, .active = false}, {"st-l"});
    EXPECT_EQ(whyOf(recorder.record(lead, act)), RefusalWhy::personInactive);
    EXPECT_EQ(whyOf(SignIn(department.office()).enter("st-l", "592817")),
              RefusalWhy::personInactive);
}

TEST(Rights, TheLastSupervisorStaysAndABadgeIsOnePersons)
{
    Department department;
    const SignedIn boss = department.supervisor();
    Recorder recorder(department.office());
    EXPECT_EQ(
        whyOf(recorder.record(
            boss, {.act = StaffRecorded{.name = "S", .role = Role::lead}, .subjects = {"st-sup"}},
            department.signature(boss, supervisorPin))),
        RefusalWhy::lastSupervisor);
    EXPECT_EQ(whyOf(recorder.record(
                  boss,
                  {.act = StaffRecorded{.name = "N", .role = Role::lead, .badge = "b- 1"},
                   .subjects = {"st-n"}},
                  department.signature(boss, supervisorPin))),
              RefusalWhy::badgeTaken);
}

} // namespace
} // namespace loadwarden::testing
