// What a facility adds in a folder of its own, and languages.

#include "core/exchange/policy_reader.h"
#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"
#include "guidance_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTemporaryDir>

#include <fstream>
#include <set>

namespace loadwarden {
namespace {

using namespace testing;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

GuidanceFile file(const std::string& place, std::string text)
{
    return {place, place, std::move(text)};
}

const std::string note = "note_version = 1\n"
                         "topic = \"wet-packs\"\n"
                         "note = \"Here the lead of the shift is called at once.\"\n"
                         "owner = \"lead of sterilization\"\n"
                         "review_by = 2032-05-01\n";

TEST(Facility, TopicsAreAddedBesideThoseOfTheProgram)
{
    TopicLibrary library = shippedTopics();
    const std::size_t before = library.topics("en").size();
    ASSERT_THAT(library.add({file("en/house-key.toml", houseTopic("house-key"))}, true), IsEmpty());
    EXPECT_EQ(library.topics("en").size(), before + 1);
    const Topic* topic = library.find("house-key", "en");
    ASSERT_NE(topic, nullptr);
    EXPECT_TRUE(topic->isOfFacility);
    const FoundTopics found = TopicSearch(library, "en").find("who has the key of the cupboard", 3);
    EXPECT_EQ(found.topics.at(0).topic, topic);
}

TEST(Facility, ATopicOfTheProgramIsNeverReplaced)
{
    TopicLibrary library = shippedTopics();
    const auto errors = library.add(
        {file("en/wet-packs.toml", replaced(houseTopic("wet-packs"), "related = [\"wet-packs\"]",
                                            "related = [\"package-torn\"]"))},
        true);
    ASSERT_THAT(errors, Not(IsEmpty()));
    const auto refusal = std::ranges::find(errors, 2, &TomlError::line); // its id
    ASSERT_NE(refusal, errors.end());
    EXPECT_THAT(textOf(*refusal), HasSubstr("wet-packs is a topic of the program"));
    EXPECT_THAT(textOf(*refusal), HasSubstr("wet-packs.note.toml"));
    EXPECT_FALSE(library.find("wet-packs", "en")->isOfFacility);
    // Not in another language either: it would be another answer under one name.
    EXPECT_THAT(textOf(library
                           .add({file("de/wet-packs.toml",
                                      replaced(houseTopic("wet-packs"), "related = [\"wet-packs\"]",
                                               "related = [\"package-torn\"]"))},
                                true)
                           .at(0)),
                HasSubstr("is a topic of the program"));
}

TEST(Facility, NothingIsAddedWhereAnythingIsWrong)
{
    TopicLibrary library = shippedTopics();
    const std::size_t before = library.topics("en").size();
    const auto errors =
        library.add({file("en/house-key.toml", houseTopic("house-key")),
                     file("en/other.toml", replaced(houseTopic("other"), "why", "wherefore"))},
                    true);
    EXPECT_THAT(errors, Not(IsEmpty()));
    EXPECT_EQ(library.topics("en").size(), before);
    EXPECT_EQ(library.find("house-key", "en"), nullptr);
}

TEST(Facility, ANoteStandsBesideATopicAndNamesItsOwner)
{
    TopicLibrary library = shippedTopics();
    ASSERT_THAT(library.add({file("en/wet-packs.note.toml", note)}, true), IsEmpty());
    const Topic* topic = library.find("wet-packs", "en");
    TopicAnswer answer = answerTopic(library, *topic, defaultPolicy(), *parseDate("2032-05-01"));
    ASSERT_NE(answer.note, nullptr);
    EXPECT_EQ(answer.note->owner, "lead of sterilization");
    EXPECT_FALSE(answer.isOverdue); // on the day itself it still holds
    answer = answerTopic(library, *topic, defaultPolicy(), *parseDate("2032-05-02"));
    EXPECT_TRUE(answer.isOverdue);
}

TEST(Facility, ANoteToNothingAndASecondNoteAreRefused)
{
    auto errors = errorsOf({file("en/wet-pax.note.toml", replaced(note, "wet-packs", "wet-pax"))});
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].line, 2);
    EXPECT_THAT(textOf(errors[0]), HasSubstr("there is no topic \"wet-pax\""));
    TopicLibrary library = shippedTopics();
    ASSERT_THAT(library.add({file("en/wet-packs.note.toml", note)}, true), IsEmpty());
    errors = library.add({file("en/wet-packs.note.toml", note)}, true);
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_THAT(textOf(errors[0]), HasSubstr("there is a note to wet-packs already"));
}

TEST(Facility, EnglishStandsInForAnotherLanguage)
{
    TopicLibrary library = shippedTopics();
    const std::string german = replaced(houseTopic("house-key"), "In the cupboard beside the door.",
                                        "Im Schrank neben der Tür.");
    ASSERT_THAT(library.add({file("en/house-key.toml", houseTopic("house-key")),
                             file("de/house-key.toml", german)},
                            true),
                IsEmpty());
    EXPECT_EQ(library.find("house-key", "de")->language, "de");
    EXPECT_EQ(library.find("house-key", "fr")->language, "en");
    EXPECT_EQ(library.find("wet-packs", "de")->language, "en");
    EXPECT_EQ(library.find("nothing", "de"), nullptr);
    EXPECT_THAT(library.languages(), ElementsAre("de", "en"));
    EXPECT_EQ(library.topics("de").size(), library.topics("en").size());
    const FoundTopics found = TopicSearch(library, "de").find("im schrank neben der tur", 1);
    EXPECT_EQ(found.topics.at(0).topic->id, "house-key"); // accents need not be typed
}

TEST(Facility, AFolderIsReadWithItsFolders)
{
    QTemporaryDir folder;
    ASSERT_TRUE(folder.isValid());
    const std::filesystem::path root = folder.path().toStdString();
    std::filesystem::create_directories(root / "en");
    std::ofstream(root / "en/house-key.toml") << houseTopic("house-key");
    std::ofstream(root / "en/wet-packs.note.toml") << note;
    std::ofstream(root / "README.md") << "what nobody reads";
    TopicLibrary library = shippedTopics();
    EXPECT_THAT(library.addFolder(root), IsEmpty());
    EXPECT_NE(library.find("house-key", "en"), nullptr);
    EXPECT_NE(library.note("wet-packs", "en"), nullptr);

    std::ofstream(root / "en/broken.toml") << "topic_version = ";
    const auto errors = library.addFolder(root);
    ASSERT_THAT(errors, Not(IsEmpty()));
    EXPECT_EQ(errors[0].file, (root / "en/broken.toml").string());
    const auto missing = library.addFolder(root / "nowhere");
    ASSERT_THAT(missing, SizeIs(1));
    EXPECT_THAT(textOf(missing[0]), HasSubstr("cannot be read as a folder"));
}

TEST(Facility, AFaultyFileKeepsNoOtherAway)
{
    TopicLibrary library = shippedTopics();
    const std::size_t before = library.topics("en").size();
    const std::string faulty = replaced(houseTopic("other"), "why", "wherefore");
    const std::string names =
        replaced(houseTopic("house-key"), "related = [\"wet-packs\"]", "related = [\"other\"]");
    const auto errors = library.addWhatIsRight(
        {file("en/house-key.toml", names), file("en/other.toml", faulty),
         file("en/wet-packs.note.toml", note),
         file("en/wet-packs.toml", replaced(houseTopic("wet-packs"), "related = [\"wet-packs\"]",
                                            "related = [\"package-torn\"]")),
         file("en/lost.toml", replaced(houseTopic("lost"), "wet-packs", "wet-pax")),
         file("words/en.toml", "words_version = ")});
    std::set<std::string> faultyFiles;
    for (const TomlError& error : errors) {
        EXPECT_GE(error.line, 1) << textOf(error);
        faultyFiles.insert(error.file);
    }
    EXPECT_THAT(faultyFiles,
                ElementsAre("en/lost.toml", "en/other.toml", "en/wet-packs.toml", "words/en.toml"));
    const auto why = std::ranges::find(errors, "why", &TomlError::field);
    ASSERT_NE(why, errors.end());
    EXPECT_THAT(textOf(*why), HasSubstr("en/other.toml:1: why: is missing"));
    const auto lost = std::ranges::find(errors, "en/lost.toml", &TomlError::file);
    EXPECT_EQ(lost->line, testing::lineOf(houseTopic("lost"), "related"));

    EXPECT_EQ(library.topics("en").size(), before + 1);
    ASSERT_NE(library.find("house-key", "en"), nullptr);
    EXPECT_TRUE(library.find("house-key", "en")->isOfFacility);
    EXPECT_EQ(library.find("lost", "en"), nullptr);
    EXPECT_EQ(library.find("other", "en"), nullptr);
    EXPECT_FALSE(library.find("wet-packs", "en")->isOfFacility);
    ASSERT_NE(library.note("wet-packs", "en"), nullptr);
    const FoundTopics found = TopicSearch(library, "en").find("who has the key of the cupboard", 3);
    EXPECT_EQ(found.topics.at(0).topic->id, "house-key");
}

TEST(Facility, ATopicWhoseEvidenceIsRefusedIsNotDecidedOnTheProgramsOwn)
{
    TopicLibrary library = shippedTopics();
    const std::string asks = houseTopic("house-key")
                             + "\n[[case]]\ntells = \"One is wet.\"\nrule = \"package\"\n"
                               "evidence = \"one-wet.json\"\nexpected = \"release\"\nkeys = []\n";
    const auto errors = library.addWhatIsRight(
        {file("en/house-key.toml", asks), file("evidence/one-wet.json", "{}")});
    ASSERT_THAT(errors, SizeIs(2));
    EXPECT_EQ(errors[0].file, "en/house-key.toml");
    EXPECT_EQ(errors[0].line, testing::lineOf(asks, "rule ="));
    EXPECT_THAT(textOf(errors[0]), HasSubstr("evidence/one-wet.json is not used"));
    EXPECT_EQ(errors[1].file, "evidence/one-wet.json");
    EXPECT_EQ(library.find("house-key", "en"), nullptr);
}

TEST(Facility, ANoteInWhichSomethingIsWrongIsLeftOut)
{
    TopicLibrary library = shippedTopics();
    ASSERT_THAT(library.addWhatIsRight(
                    {file("en/wet-pax.note.toml", replaced(note, "wet-packs", "wet-pax")),
                     file("en/house-key.toml", houseTopic("house-key"))}),
                SizeIs(1));
    EXPECT_EQ(library.note("wet-pax", "en"), nullptr);
    EXPECT_NE(library.find("house-key", "en"), nullptr);
}

TEST(Facility, WordsOfTheHouseAreUnderstood)
{
    TopicLibrary library = shippedTopics();
    const auto before = TopicSearch(library, "en").find("zorbs", 1);
    EXPECT_FALSE(before.isSure);
    ASSERT_THAT(
        library.add(
            {file("words/en.toml", "words_version = 1\nordinary = []\n\n[[same]]\n"
                                   "words = [\"zorb\", \"gasket imprint on the filter\"]\n"),
             file("en/house-key.toml", replaced(houseTopic("house-key"), "Cupboard of house-key",
                                                "gasket imprint on the filter"))},
            true),
        IsEmpty());
    const auto after = TopicSearch(library, "en").find("zorbs", 1);
    ASSERT_THAT(after.topics, SizeIs(1));
    EXPECT_EQ(after.topics[0].topic->id, "house-key");
}

} // namespace
} // namespace loadwarden
