#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/sight.h"
#include "core/loads/load_words.h"

#include <array>
#include <ostream>

namespace loadwarden::cli {

namespace {

constexpr std::array verdictWords = {Word<Verdict>{"release", Verdict::release},
                                     Word<Verdict>{"quarantine", Verdict::quarantine},
                                     Word<Verdict>{"reprocess", Verdict::reprocess}};

Sight sightOf(const Arguments& given, const std::string& cycle)
{
    return parseSight(given.needed("--seen"), cycle);
}

} // namespace

int reviewLoad(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load review LOT KEY [--subject TEXT] --answer "
                                       "isolated|not-isolated --why TEXT --seen CODE";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const ReviewAsked asked{.finding = std::string(argument(given, 2, usage)),
                            .subject = std::string(given.value("--subject").value_or("")),
                            .answer =
                                wordIn(reviewAnswerWords, given.needed("--answer"), "--answer"),
                            .why = given.needed("--why")};
    const Sight sight = sightOf(given, cycle);
    const SignedIn& who = session.who();
    session.sayRecorded(
        session.must(Dispositions(session.office()).review(who, session.signature(), sight, asked)),
        "Reviewed.");
    return exitDone;
}

int signLoad(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load sign LOT release|quarantine|reprocess --seen CODE";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const Verdict meaning = wordIn(verdictWords, argument(given, 2, usage), "what is signed");
    const Sight sight = sightOf(given, cycle);
    const SignedIn& who = session.who();
    session.sayRecorded(
        session.must(Dispositions(session.office()).sign(who, session.signature(), sight, meaning)),
        "Signed: " + say(meaning) + '.');
    return exitDone;
}

int releaseInEmergency(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load emergency LOT LABEL --case REFERENCE --demanded-by "
                                       "ROLE --why TEXT --would-have-prevented TEXT --seen CODE";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string item = part(session, cycle, argument(given, 2, usage));
    const Emergency emergency{.caseReference = given.needed("--case"),
                              .demandedBy = given.needed("--demanded-by"),
                              .why = given.needed("--why"),
                              .wouldHavePrevented = given.needed("--would-have-prevented")};
    const Sight sight = sightOf(given, cycle);
    const SignedIn& who = session.who();
    session.sayRecorded(
        session.must(Dispositions(session.office())
                         .releaseInEmergency(who, session.signature(), sight, item, emergency)),
        "Emergency release of this one item. The load stays as it is.");
    return exitDone;
}

} // namespace loadwarden::cli
