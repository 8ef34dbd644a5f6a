#include "core/desk/floor.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace loadwarden {
namespace {

/// "20310304"
std::string compact(Date day)
{
    std::string text = formatDate(day);
    std::erase(text, '-');
    return text;
}

/// The first day of a day's month.
Date monthOf(Date day)
{
    return *parseDate(formatDate(day).substr(0, 8) + "01");
}

} // namespace

std::string floorId(IdSource& ids, Date day)
{
    constexpr std::size_t mostOfRest = 20; // an id has at most 40 characters
    const std::string random = ids.next("qu");
    return "qu-" + compact(day) + '-' + random.substr(3, mostOfRest);
}

ToRecord reported(IdSource& ids, Date day, const ItemReported& report, const std::string& item,
                  const std::string& cycle)
{
    return {.act = report, .subjects = {floorId(ids, day), item, cycle}};
}

ToRecord asked(IdSource& ids, Date day, const QuestionLogged& question)
{
    return {.act = question, .subjects = {floorId(ids, day)}};
}

std::vector<Entry> fromFloorSince(ReadSnapshot& snapshot, Date day)
{
    return registerEntries(snapshot, "qu", compact(day));
}

std::vector<AskedOften> countQuestions(std::span<const Entry> entries, const Zone& zone)
{
    std::map<std::tuple<Date, std::string, std::string>, AskedOften> counts;
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        const auto* const question = std::get_if<QuestionLogged>(&fact.current().act);
        if (question == nullptr || !fact.stands()) {
            continue;
        }
        const Date month = monthOf(zone.dateOf(fact.current().happenedAt.at));
        AskedOften& count = counts[{month, foldedPerson(question->place), question->topic}];
        if (count.asked == 0) {
            count.month = month;
            count.place = question->place;
            count.topic = question->topic;
        }
        ++count.asked;
        count.misread += question->wasMisread ? 1 : 0;
    }
    std::vector<AskedOften> all;
    for (auto& [key, count] : counts) {
        all.push_back(std::move(count));
    }
    std::ranges::stable_sort(all, [](const AskedOften& a, const AskedOften& b) {
        return std::tuple(b.month, b.misread, b.asked) < std::tuple(a.month, a.misread, a.asked);
    });
    return all;
}

} // namespace loadwarden
