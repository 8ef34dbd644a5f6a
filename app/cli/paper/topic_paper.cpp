#include "app/cli/paper/topic_paper.h"

#include "app/cli/guidance/topic_files.h"
#include "app/cli/paper/paper_output.h"
#include "core/guidance/answer.h"
#include "core/quantities/clock.h"
#include "ui/paper/sheets/answer_card.h"
#include "ui/paper/sheets/in_service_sheet.h"

#include <QTimeZone>

namespace loadwarden::cli {

namespace {

/// Of this computer; no journal says where the facility is.
Date dayHere()
{
    const auto here = Zone::find(QTimeZone::systemTimeZoneId().toStdString());
    return (here ? *here : *Zone::find("UTC")).dateOf(SystemClock().now());
}

} // namespace

int topicPaper(const Arguments& given, Streams streams)
{
    const std::string_view kind = given.rest().front();
    if (given.rest().size() != 2) {
        throw UsageError("behind paper " + std::string(kind)
                         + " stands the id of one topic; ask --list shows all");
    }
    const std::string out = given.needed("--out");
    const paper::House house{.style = {}, .facility = {}, .journal = {}, .size = pageGiven(given)};
    const std::optional<Policy> policy = policyGiven(given, streams);
    if (!policy) {
        return exitBad;
    }
    const std::optional<TopicLibrary> library = topicsGiven(given, streams);
    if (!library) {
        return exitBad;
    }
    const Topic& topic = topicNamed(*library, std::string(given.rest()[1]), languageGiven(given));
    const Date today = dayHere();
    const TopicAnswer answer = answerTopic(*library, topic, *policy, today);
    const auto application = makePaintingApplication();
    writeSheet(kind == topicPapers.front() ? paper::answerCard(answer, house, today)
                                           : paper::inServiceSheet(answer, *library, house, today),
               out, given, streams);
    return exitDone;
}

} // namespace loadwarden::cli
