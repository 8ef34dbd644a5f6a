// The sterilizer's recording on the page of its load: read, looked at, attached, and looked at
// again.
#include "core/words/say.h"
#include "tests/ui/load_screen.h"
#include "tests/ui/recording.h"
#include "tests/ui/walk/faults.h"
#include "ui/load/trace_look.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QMimeData>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QUrl>

namespace loadwarden::ui_tests {
namespace {

class RecordingOnScreen : public LoadOnScreen {
protected:
    QString shortBy(double seconds)
    {
        return writeRecording(m_folder,
                              {{.kind = simulation::FaultKind::shortExposure, .size = seconds}});
    }

    QTemporaryDir m_folder;
};

TEST_F(RecordingOnScreen, IsConfirmedLookedAtAndAttachedAndFailsTheLoad)
{
    openLoad();
    ASSERT_FALSE(HasFatalFailure());
    lookAtRecording(shortBy(60));
    ASSERT_NO_FATAL_FAILURE(confirmRecording());
    const auto* const plot = page()->view()->findChild<ui::TracePlot*>();
    ASSERT_NE(plot, nullptr);
    EXPECT_TRUE(plot->accessibleDescription().contains("Simulated"));
    ASSERT_NO_FATAL_FAILURE(attachRecording());
    const auto& traces = sheet().view().folded.record.load.traces;
    ASSERT_EQ(traces.size(), 1U);
    EXPECT_EQ(traces.front().counter, 101);
    EXPECT_EQ(traces.front().exposure, Shown::notMet);
    EXPECT_EQ(sheet().view().decision.verdict, Verdict::reprocess);
    // Its file came into the journal and can be looked at again.
    pressButton("Look at recorder-of-s1");
    ASSERT_TRUE(desktop.comesToSee("Continuously in the band"));
    EXPECT_FALSE(desktop.sees("Attach it to this load"));
}

TEST_F(RecordingOnScreen, WhoseMappingIsKnownIsDroppedOnThePageAndSeenAtOnce)
{
    openLoad();
    ASSERT_FALSE(HasFatalFailure());
    lookAtRecording(shortBy(60));
    ASSERT_NO_FATAL_FAILURE(confirmRecording());
    ASSERT_NO_FATAL_FAILURE(attachRecording());
    EXPECT_FALSE(desktop.sees("Continuously in the band"));

    QMimeData dropped;
    dropped.setUrls({QUrl::fromLocalFile(writeRecording(m_folder))});
    ui::LoadView* const view = page()->view();
    QDragEnterEvent enters(QPoint(50, 50), Qt::CopyAction, &dropped, Qt::LeftButton,
                           Qt::NoModifier);
    QApplication::sendEvent(view, &enters);
    ASSERT_TRUE(enters.isAccepted());
    QDropEvent drops(QPointF(50, 50), Qt::CopyAction, &dropped, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(view, &drops);
    ASSERT_TRUE(desktop.comesToSee("Continuously in the band"));
    EXPECT_TRUE(desktop.sees("Attach it to this load"));
    pressButton("Put it away");
    EXPECT_TRUE(desktop.waitFor([this] { return !desktop.sees("Continuously in the band"); }));
    EXPECT_EQ(desktop.focusName(), "A recorder's file of this cycle");
    // The name of a file may be longer than the column of the reasons is wide.
    for (const Fault& fault : cutByScrolling(desktop.window())) {
        ADD_FAILURE() << fault.where.toStdString() << ' ' << fault.what.toStdString();
    }
}

/// Without blanks, as lines break elsewhere on paper.
QString squeezed(QString text)
{
    text.remove(QRegularExpression(QStringLiteral("\\s")));
    return text;
}

TEST_F(RecordingOnScreen, IsPutOnPaperWithItsPictureAndEveryFigure)
{
    openLoad();
    ASSERT_FALSE(HasFatalFailure());
    lookAtRecording(shortBy(60));
    ASSERT_NO_FATAL_FAILURE(confirmRecording());
    const QString pdf = m_folder.filePath(QStringLiteral("recording.pdf"));
    page()->view()->findChild<ui::TraceLook*>()->savePaper(pdf);
    ASSERT_TRUE(desktop.comesToSee("Picture and figures are in"));
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), QStringLiteral("-enc"),
                                               QStringLiteral("UTF-8"), pdf, QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished());
    const QString paper = squeezed(QString::fromUtf8(reader.readAllStandardOutput()));
    const auto has = [&](const QString& words) {
        EXPECT_TRUE(paper.contains(squeezed(words))) << words.toStdString();
    };
    const CycleRecord& record = sheet().record;
    for (const std::string& words :
         {record.view.lot(), std::string("recorder-of-s1_cycle-101_whole-day.csv"),
          std::string("Cycle counter in the file: 101"), std::string("To this load: not attached"),
          std::string("SIMULATED"), hexOf(record.head.hash), caution()}) {
        has(QString::fromStdString(words));
    }
    int figures = 0;
    for (const auto* const label :
         page()->view()->findChild<ui::TraceFacts*>()->findChildren<QLabel*>()) {
        has(label->text());
        ++figures;
    }
    EXPECT_GT(figures, 20);
    // Nothing may be written over the journal.
    page()->view()->findChild<ui::TraceLook*>()->savePaper(desktop.file());
    EXPECT_TRUE(desktop.comesToSee("That file belongs to the journal itself."));
}

TEST_F(RecordingOnScreen, ThatIsNoFileIsNotTaken)
{
    openLoad();
    ASSERT_FALSE(HasFatalFailure());
    QMimeData dropped;
    dropped.setText(QStringLiteral("a text"));
    QDragEnterEvent enters(QPoint(50, 50), Qt::CopyAction, &dropped, Qt::LeftButton,
                           Qt::NoModifier);
    QApplication::sendEvent(page()->view(), &enters);
    EXPECT_FALSE(enters.isAccepted());
}

TEST_F(RecordingOnScreen, ThatCannotBeOpenedIsSaidAtItsField)
{
    openLoad();
    ASSERT_FALSE(HasFatalFailure());
    lookAtRecording(m_folder.filePath(QStringLiteral("nothing.csv")));
    EXPECT_TRUE(desktop.comesToSee("The file cannot be opened"));
}

} // namespace
} // namespace loadwarden::ui_tests
