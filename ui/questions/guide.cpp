#include "ui/questions/guide.h"

#include "core/desk/policy_now.h"

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostTopics = 4;

/// Adds what is right, and answers what is not.
std::vector<TomlError> faultsAfterAdding(TopicLibrary& library, const HouseFiles& house)
{
    std::vector<TomlError> faults = house.unread;
    const std::vector<TomlError> wrong = library.addWhatIsRight(house.files);
    faults.insert(faults.end(), wrong.begin(), wrong.end());
    return faults;
}

} // namespace

HouseFiles houseFilesIn(const std::filesystem::path& folder)
{
    HouseFiles house;
    if (!folder.empty()) {
        house.files = guidanceIn(folder, house.unread);
    }
    return house;
}

Guide::Guide(std::string language, HouseFiles house)
    : m_language(std::move(language)),
      m_house(std::move(house)),
      m_library(TopicLibrary::builtIn()),
      m_faults(faultsAfterAdding(m_library, m_house)),
      m_search(m_library, m_language)
{
}

std::shared_ptr<const Guide> Guide::upToDate(std::shared_ptr<const Guide> known,
                                             const std::string& language,
                                             const std::filesystem::path& folder)
{
    HouseFiles house = houseFilesIn(folder);
    if (known && known->m_language == language && known->m_house == house) {
        return known;
    }
    return std::make_shared<const Guide>(language, std::move(house));
}

std::vector<const Topic*> Guide::houseTopics() const
{
    std::vector<const Topic*> own = m_library.topics(m_language);
    std::erase_if(own, [](const Topic* topic) { return !topic->isOfFacility; });
    return own;
}

FloorAnswer Guide::ask(Office& office, const std::string& asked) const
{
    FloorAnswer answer;
    answer.asked = asked;
    answer.mayBeLabel = asked.find_first_of(" \t") == std::string::npos
                        && asked.find_first_of("0123456789") != std::string::npos;
    {
        ReadSnapshot snapshot(office.connection());
        answer.tray = trayOf(snapshot, office.entries(), asked, office.now());
    }
    const FoundTopics found = m_search.find(asked, mostTopics);
    for (const FoundTopic& each : found.topics) {
        answer.topics.push_back(each.topic);
    }
    answer.isSure = found.isSure;
    return answer;
}

TopicAnswer Guide::answer(Office& office, const Topic& topic) const
{
    ReadSnapshot snapshot(office.connection());
    return answerTopic(m_library, topic, policyNow(snapshot), office.zone().dateOf(office.now()));
}

} // namespace loadwarden::ui
