// Questions from the floor, asked by keys and by a scanner.
#include "tests/ui/load_screen.h"
#include "ui/questions/questions_page.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QTemporaryDir>

#include <fstream>

namespace loadwarden::ui_tests {
namespace {

class QuestionsOnScreen : public LoadOnScreen {
protected:
    void openQuestions()
    {
        desktop.open();
        desktop.signIn();
        desktop.press(Qt::Key_5, Qt::ControlModifier);
        ASSERT_TRUE(desktop.comesToSee("Questions from the floor"));
    }

    void ask(const QString& question)
    {
        desktop.type(question);
        desktop.press(Qt::Key_Return);
    }
};

TEST_F(QuestionsOnScreen, WordsFindTheTopicAndItsNeighboursAreOneKeyAway)
{
    openQuestions();
    ask("the front has only just entered the accept zone");
    ASSERT_TRUE(desktop.comesToSee("It need not fill the zone"));
    EXPECT_TRUE(desktop.sees("What to do now"));
    EXPECT_TRUE(desktop.sees("Source: common practice, no source"));
    EXPECT_TRUE(desktop.sees("Decided: Release")) << "by the rules, on a small example";
    pressButton("The front of the indicator stands exactly on the line");
    ASSERT_TRUE(desktop.comesToSee("The front of the indicator stands exactly on the line"));
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.focusName().contains("label of a tray"); }))
        << desktop.focusName().toStdString();
}

TEST_F(QuestionsOnScreen, AnEmptyQuestionAndOneOfNoTopicAreSaid)
{
    openQuestions();
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Type a question, or the label of a tray."));
    ask("xqzzt vrrk");
    EXPECT_TRUE(desktop.comesToSee("No topic has these words"));
    EXPECT_FALSE(desktop.sees("May not be used")) << "two words are no label";
}

TEST_F(QuestionsOnScreen, ALabelThatNobodyKnowsIsNotUsed)
{
    openQuestions();
    ask("TRAY-77");
    EXPECT_TRUE(desktop.comesToSee("No item with this label is in the journal."));
    EXPECT_TRUE(desktop.sees("May not be used"));
}

TEST_F(QuestionsOnScreen, ALabelSaysWhetherItsTrayMayBeUsed)
{
    cycle = runLoad(desktop, Implant::no);
    openQuestions();
    desktop.scan("I1");
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    EXPECT_TRUE(desktop.sees("Leave it where it is held."));
    pressButton("Open the load");
    EXPECT_TRUE(desktop.waitFor([this] { return page() != nullptr && page()->isVisible(); }));
}

/// A facility's topic as its folder holds it.
std::string houseTopic(const std::string& answer)
{
    return "topic_version = 1\nid = \"house-key\"\nquestion = \"Where is the "
           "spare key kept?\"\n"
           "also_asked = [\"Who has the key of the cupboard?\", \"Cupboard "
           "key\"]\n"
           "short_answer = \""
           + answer
           + "\"\ndo_now = [\"Ask at the desk.\"]\nwhy = \"It is the house's "
             "own.\"\n"
             "caution = \"None but the usual.\"\nowner = \"the desk\"\n"
             "review_by = 2032-03-04\nrelated = [\"wet-packs\"]\n\n[[source]]\n"
             "text = \"common practice, no source\"\nconfidence = "
             "\"common-practice\"\n";
}

class TopicsOfTheHouse : public QuestionsOnScreen {
protected:
    TopicsOfTheHouse() { desktop.settings().setTopicsFolder(folder.path()); }

    void write(const QString& place, const std::string& text)
    {
        const QFileInfo file(folder.filePath(place));
        ASSERT_TRUE(QDir().mkpath(file.path()));
        std::ofstream(file.filePath().toStdString()) << text;
    }

    QTemporaryDir folder;
};

TEST_F(TopicsOfTheHouse, StandBesideTheProgramsAndSayWhoseTheyAre)
{
    write("en/house-key.toml", houseTopic("In the cupboard beside the door."));
    write("en/wet-packs.note.toml",
          "note_version = 1\ntopic = \"wet-packs\"\nnote = \"Call the lead of "
          "the shift.\"\n"
          "owner = \"lead of sterilization\"\nreview_by = 2031-03-01\n");
    openQuestions();
    ASSERT_TRUE(desktop.comesToSee("This facility's own topics"));
    EXPECT_TRUE(desktop.sees("This facility's own topic, owner the desk, review by 2032-03-04"));
    pressButton("Where is the spare key kept?");
    ASSERT_TRUE(desktop.comesToSee("In the cupboard beside the door."));
    EXPECT_TRUE(desktop.sees("This facility's own topic"));
    EXPECT_TRUE(desktop.sees("Owner: the desk. Review by 2032-03-04."));
    EXPECT_FALSE(desktop.sees("left out"));
    pressButton("The packs came out of the sterilizer wet");
    ASSERT_TRUE(desktop.comesToSee("Call the lead of the shift."));
    EXPECT_TRUE(desktop.sees("This house adds"));
    EXPECT_TRUE(desktop.sees("Owner: lead of sterilization. Its review was due on 2031-03-01"));
    EXPECT_FALSE(desktop.sees("This facility's own topic")) << "it is the program's";
}

TEST_F(TopicsOfTheHouse, AFaultyFileIsSaidByLineAndHidesNoOtherUntilItIsMended)
{
    write("en/house-key.toml", houseTopic("In the cupboard beside the door."));
    std::string faulty = houseTopic("Otherwise.");
    faulty.replace(faulty.find("related = [\"wet-packs\"]"), 23, "related = [\"package-torn\"]");
    faulty.replace(faulty.find("house-key"), 9, "wet-packs");
    write("en/wet-packs.toml", faulty);
    openQuestions();
    ASSERT_TRUE(desktop.comesToSee("is left out until it is mended"));
    EXPECT_TRUE(desktop.sees("en/wet-packs.toml:2: id: wet-packs is a topic of the program"));
    ask("the packs came out wet");
    ASSERT_TRUE(desktop.comesToSee("counts as contaminated")) << "nothing is overwritten";
    ask("who has the key of the cupboard");
    ASSERT_TRUE(desktop.comesToSee("In the cupboard beside the door."));

    ASSERT_TRUE(QFile::remove(folder.filePath("en/wet-packs.toml")));
    write("en/house-key.toml", houseTopic("At the desk."));
    ask("who has the key of the cupboard");
    ASSERT_TRUE(desktop.comesToSee("At the desk.")) << "as the folder stands now";
    EXPECT_FALSE(desktop.sees("left out"));
}

TEST_F(TopicsOfTheHouse, AFolderThatIsNotThereIsSaidAndTheProgramsTopicsAnswer)
{
    desktop.settings().setTopicsFolder(folder.filePath("nowhere"));
    openQuestions();
    ASSERT_TRUE(desktop.comesToSee("cannot be read as a folder"));
    ask("the front has only just entered the accept zone");
    EXPECT_TRUE(desktop.comesToSee("It need not fill the zone"));
}

TEST_F(QuestionsOnScreen, ATopicIsPutOnPaper)
{
    openQuestions();
    ask("the front has only just entered the accept zone");
    ASSERT_TRUE(desktop.comesToSee("It need not fill the zone"));
    QTemporaryDir folder;
    for (const char* const button : {"Answer card", "In-service sheet"}) {
        pressButton(button);
        ASSERT_TRUE(desktop.waitFor([&] { return desktop.focusName() == "To this file"; }))
            << desktop.focusName().toStdString();
        const QString target = folder.filePath(QString(button) + ".pdf");
        desktop.press(Qt::Key_A, Qt::ControlModifier);
        desktop.type(target);
        desktop.press(Qt::Key_Return);
        ASSERT_TRUE(desktop.waitFor([&] { return desktop.messages().contains(target); }));
        QProcess reader;
        reader.start("pdftotext", {"-raw", target, "-"});
        ASSERT_TRUE(reader.waitForFinished());
        const QString paper = QString::fromUtf8(reader.readAllStandardOutput());
        EXPECT_TRUE(paper.simplified().contains("It need not fill the zone."));
        EXPECT_TRUE(paper.contains("Printed 2031-03-04")) << "the facility's day";
    }
    pressButton("Answer card");
    ASSERT_TRUE(desktop.comesToSee("To this file"));
    tabTo("Question, or label of a tray");
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    ask("the packs came out wet");
    ASSERT_TRUE(desktop.comesToSee("counts as contaminated"));
    EXPECT_FALSE(desktop.sees("To this file")) << "it was asked about another topic";
}

TEST_F(QuestionsOnScreen, AReportFromTheFloorHoldsTheTrayAndTheLeadSeesIt)
{
    cycle = runLoad(desktop, Implant::no);
    openQuestions();
    desktop.scan("I1");
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    pressButton("Report what was found on opening");
    ASSERT_TRUE(desktop.comesToSee("What was found on opening I1"));
    pressButton("Record the report");
    EXPECT_TRUE(desktop.comesToSee("Say what was found"));
    EXPECT_TRUE(desktop.sees("Say where it was found."));
    desktop.press(Qt::Key_Down); // on the indicator: the first that is no pass
    tabTo("Where it was found");
    desktop.type("Room 4");
    pressButton("Record the report");
    ASSERT_TRUE(desktop.comesToSee("The report on I1 is recorded"));
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    pressButton("Open the load");
    ASSERT_TRUE(desktop.waitFor([this] {
        return page() != nullptr && page()->view() != nullptr
               && page()->view()->desk().isUpToDate();
    }));
    const auto& entries = sheet().record.entries;
    const auto report = std::ranges::find_if(entries, [](const Entry& entry) {
        return std::holds_alternative<ItemReported>(entry.act);
    });
    ASSERT_NE(report, entries.end());
    const auto& said = std::get<ItemReported>(report->act);
    EXPECT_EQ(said.indicator, Seen::frontShortOfBoundary);
    EXPECT_EQ(said.place, "Room 4");
}

// A tray is asked about, something is recorded elsewhere, and the page is looked at again.
TEST_F(QuestionsOnScreen, WhatIsSaidOfATrayDoesNotGrowOld)
{
    cycle = runLoad(desktop, Implant::no);
    openQuestions();
    desktop.scan("I1");
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    EXPECT_FALSE(desktop.sees("It is to be reprocessed"));
    pressButton("Open the load");
    ASSERT_TRUE(desktop.waitFor([this] {
        return page() != nullptr && page()->view() != nullptr
               && page()->view()->desk().isUpToDate();
    }));
    bool isRecorded = false;
    page()->view()->desk().record(PackageChecked{.dry = false}, {sheet().items.at(0).id}, {},
                                  [&isRecorded] { isRecorded = true; });
    ASSERT_TRUE(desktop.waitFor([&isRecorded] { return isRecorded; }));
    desktop.press(Qt::Key_5, Qt::ControlModifier);
    EXPECT_TRUE(desktop.comesToSee("It is to be reprocessed"));
}

TEST_F(QuestionsOnScreen, AQuestionIsLoggedAndCounted)
{
    openQuestions();
    ask("the front has only just entered the accept zone");
    ASSERT_TRUE(desktop.comesToSee("Log this question"));
    pressButton("Log it");
    ASSERT_TRUE(desktop.comesToSee("Say from where it was asked."));
    desktop.type("Room 4");
    pressButton("Something had been misread");
    pressButton("Log it");
    ASSERT_TRUE(desktop.comesToSee("The question from Room 4 is logged."));
    EXPECT_FALSE(desktop.sees("Log this question"));
}

} // namespace
} // namespace loadwarden::ui_tests
