// The picture of a trace, its facts, and the explorer, by keys and pointer.
#include "core/cycle/simulation/simulation.h"
#include "ui/trace/trace_explorer.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QSlider>
#include <QTemporaryDir>
#include <QTest>
#include <QWheelEvent>

namespace loadwarden::ui {
namespace {

using simulation::FaultKind;

AskedOfTrace asked()
{
    AskedOfTrace asks;
    asks.airRemoval = AirRemoval::prevacuum;
    asks.band = {.leastCelsius = 134, .mostCelsius = 137, .required = {0, 1}};
    asks.leastExposureSeconds = 240;
    asks.leastDryingSeconds = 1200;
    asks.atmosphereKPa = 101.325;
    return asks;
}

simulation::Cycle cycleWith(std::vector<simulation::Fault> faults)
{
    simulation::Settings settings;
    settings.faults = std::move(faults);
    return simulation::simulate(settings);
}

class ATrace : public testing::Test {
protected:
    void show(const simulation::Cycle& cycle, const AskedOfTrace& asks = asked(),
              bool simulated = true)
    {
        m_trace = cycle.trace;
        m_evaluation = evaluate(m_trace, asks);
        m_plot.resize(1100, 700);
        m_plot.show(m_trace, m_evaluation, asks, simulated);
        m_plot.show();
        QApplication::setActiveWindow(&m_plot);
        m_plot.setFocus();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&m_plot));
        QTest::qWait(50);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    [[nodiscard]] QWidget* canvas()
    {
        return m_plot.childAt(m_plot.width() / 2, m_plot.height() / 2);
    }
    [[nodiscard]] double seen() const { return m_plot.viewed().second - m_plot.viewed().first; }
    [[nodiscard]] double whole() const { return m_trace.seconds.back(); }

    Look m_look{*qApp};
    TracePlot m_plot{m_look};
    Trace m_trace;
    TraceEvaluation m_evaluation;
};

TEST_F(ATrace, IsZoomedAndMovedByKeysAndNeverLeft)
{
    show(cycleWith({}));
    EXPECT_DOUBLE_EQ(seen(), whole());
    press(Qt::Key_Plus);
    EXPECT_NEAR(seen(), whole() / 1.5, 1e-6);
    const double before = m_plot.viewed().first;
    press(Qt::Key_Right);
    EXPECT_NEAR(m_plot.viewed().first, before + seen() / 10, 1e-6);
    for (int i = 0; i < 40; ++i) {
        press(Qt::Key_Right);
    }
    EXPECT_NEAR(m_plot.viewed().second, whole(), 1e-6) << "not beyond the end";
    for (int i = 0; i < 60; ++i) {
        press(Qt::Key_Left);
    }
    EXPECT_NEAR(m_plot.viewed().first, 0, 1e-6);
    for (int i = 0; i < 60; ++i) {
        press(Qt::Key_Plus);
    }
    EXPECT_GT(seen(), 1) << "some samples are always seen";
    press(Qt::Key_Minus);
    EXPECT_GT(seen(), 2);
    press(Qt::Key_0);
    EXPECT_DOUBLE_EQ(seen(), whole());
    press(Qt::Key_E);
    const SampleRange hold = m_evaluation.exposure.hold;
    EXPECT_LT(m_plot.viewed().first, m_trace.seconds[hold.first]);
    EXPECT_GT(m_plot.viewed().second, m_trace.seconds[hold.last]);
    EXPECT_LT(seen(), whole() / 4);
}

TEST_F(ATrace, SaysTheValuesUnderThePointer)
{
    show(cycleWith({}));
    EXPECT_EQ(m_plot.said(), "");
    QTest::mouseMove(canvas(), QPoint(canvas()->width() / 2, canvas()->height() / 3));
    QTest::qWait(50);
    const QString first = m_plot.said();
    EXPECT_TRUE(first.contains("Chamber temperature")) << first.toStdString();
    EXPECT_TRUE(first.contains("kPa")) << first.toStdString();
    EXPECT_TRUE(first.contains("F0")) << first.toStdString();
    press(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_NE(m_plot.said(), first) << "the next sample";
    press(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_EQ(m_plot.said(), first);
}

TEST_F(ATrace, SaysWhatIsRecordedAtThatMoment)
{
    show(cycleWith({}));
    press(Qt::Key_E);
    press(Qt::Key_Right, Qt::ShiftModifier); // the sample in the middle of what is seen
    const double middle = (m_plot.viewed().first + m_plot.viewed().second) / 2;
    const std::size_t sample = m_plot.scene().sampleAt(middle);
    const QString celsius = QString::number(m_trace.channels[0].values[sample], 'f', 1);
    EXPECT_TRUE(m_plot.said().contains(celsius)) << m_plot.said().toStdString();
}

TEST_F(ATrace, IsDraggedAndZoomedByTheWheelOnceItHasTheKeyboard)
{
    show(cycleWith({}));
    const auto turn = [&](int by) {
        QWidget* const on = canvas();
        const QPointF at(on->width() / 2.0, on->height() / 2.0);
        QWheelEvent event(at, on->mapToGlobal(at), {}, {0, by}, Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(on, &event);
    };
    m_plot.clearFocus();
    turn(120);
    EXPECT_DOUBLE_EQ(seen(), whole()) << "the page scrolls, the picture stays";
    QTest::mouseClick(canvas(), Qt::LeftButton);
    turn(120);
    EXPECT_LT(seen(), whole());
    const double from = m_plot.viewed().first;
    const QPoint middle(canvas()->width() / 2, canvas()->height() / 2);
    QTest::mousePress(canvas(), Qt::LeftButton, {}, middle);
    QTest::mouseMove(canvas(), middle - QPoint(100, 0));
    QTest::mouseRelease(canvas(), Qt::LeftButton, {}, middle - QPoint(100, 0));
    EXPECT_GT(m_plot.viewed().first, from) << "what lay to the right has come";
    QTest::mouseDClick(canvas(), Qt::LeftButton, {}, middle);
    EXPECT_DOUBLE_EQ(seen(), whole());
}

TEST_F(ATrace, MarksWhatIsBeyondItsLimits)
{
    show(cycleWith({}));
    EXPECT_TRUE(m_plot.scene().marks.empty());
    show(cycleWith({{.kind = FaultKind::interruptedExposure, .size = 30, .kelvin = 2}}));
    ASSERT_FALSE(m_plot.scene().marks.empty());
    for (const TraceMark& mark : m_plot.scene().marks) {
        const TraceSeries& series = m_plot.scene().series[mark.series];
        EXPECT_EQ(series.kind, SeriesKind::temperature);
        EXPECT_TRUE(mark.isBelow);
        EXPECT_LT(series.values[mark.worst], 134);
    }
    show(cycleWith({{.kind = FaultKind::residualAir, .size = 4}}));
    const auto isOfSaturation = [&](const TraceMark& mark) {
        return m_plot.scene().series[mark.series].kind == SeriesKind::saturation && mark.isBelow;
    };
    EXPECT_TRUE(std::ranges::any_of(m_plot.scene().marks, isOfSaturation));
}

TEST_F(ATrace, IsReadByAScreenReader)
{
    show(cycleWith({}));
    EXPECT_EQ(m_plot.accessibleName(), "Trace");
    const QString says = m_plot.accessibleDescription();
    for (const char* const part : {"Simulated", "Exposure", "shown", "121.1 °C", "Drying"}) {
        EXPECT_TRUE(says.contains(part)) << part << " in " << says.toStdString();
    }
    show(cycleWith({}), asked(), false);
    EXPECT_FALSE(m_plot.accessibleDescription().contains("Simulated"));
}

TEST_F(ATrace, IsKeptAsAPicture)
{
    show(cycleWith({}));
    const QTemporaryDir folder;
    const QString file = folder.filePath("a.png");
    ASSERT_TRUE(m_plot.save(file));
    const QImage image(file);
    EXPECT_GE(image.width(), 1000);
    int inked = 0;
    for (int x = 0; x < image.width(); ++x) {
        inked += image.pixelColor(x, image.height() / 3) != QColor(Qt::white) ? 1 : 0;
    }
    EXPECT_GT(inked, image.width() / 4) << "something is drawn there";
    EXPECT_FALSE(m_plot.save(folder.filePath("no/such/folder/a.png")));
    if (TracePlot::canSaveSvg()) {
        EXPECT_TRUE(m_plot.save(folder.filePath("a.svg")));
    }
}

TEST_F(ATrace, ThatCannotBeReadShowsNothing)
{
    show({});
    EXPECT_EQ(m_plot.said(), "");
    for (const Qt::Key key : {Qt::Key_Plus, Qt::Key_Right, Qt::Key_0, Qt::Key_E}) {
        press(key);
    }
    press(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_TRUE(m_plot.accessibleDescription().contains("no sample"));
}

TEST(TheStripOfSaturation, IsNoughtOnTheLineOfTheStandard)
{
    // IAPWS R7-97(2012), table 36: at 0.1 MPa water boils at 372.755919 K, at 1 MPa at 453.035632
    // K.
    for (const auto& [kPa, kelvin] : {std::pair{100.0, 372.755919}, {1000.0, 453.035632}}) {
        Trace trace;
        trace.channels = {{"T", ChannelRole::chamberTemperature, {}},
                          {"P", ChannelRole::chamberPressure, {}}};
        for (int i = 0; i < 120; ++i) {
            trace.seconds.push_back(i);
            trace.channels[0].values.push_back(kelvin - 273.15);
            trace.channels[1].values.push_back(kPa);
        }
        AskedOfTrace asks = asked();
        asks.band = {.leastCelsius = 90, .mostCelsius = 200, .required = {0}};
        const TraceScene scene = sceneOf(trace, evaluate(trace, asks), asks, false);
        const auto strip =
            std::ranges::find(scene.series, SeriesKind::saturation, &TraceSeries::kind);
        ASSERT_NE(strip, scene.series.end());
        EXPECT_NEAR(strip->values[60], 0, 1e-6);
    }
}

QString textsOf(const QWidget& widget)
{
    QStringList texts;
    for (const QLabel* const label : widget.findChildren<QLabel*>()) {
        if (!label->isHidden()) {
            texts += label->text();
        }
    }
    return texts.join(u'\n');
}

TEST(TheFactsOfATrace, SayAnswersAndWhatTheyMean)
{
    Look look(*qApp);
    TraceFacts facts(look);
    AskedOfTrace asks = asked();
    const Trace good = cycleWith({}).trace;
    facts.show(good, evaluate(good, asks), asks);
    QString says = textsOf(facts);
    EXPECT_TRUE(says.contains("shown"));
    EXPECT_FALSE(says.contains("not shown"));
    EXPECT_FALSE(says.contains("not met"));
    EXPECT_TRUE(says.contains("Temperature in the chamber is not temperature inside the pack"));
    EXPECT_FALSE(says.contains("Microbiology")) << "no population is given";

    asks.biological = Population{1e6, 1.5, {121.1, 10}};
    const Trace bad = cycleWith({{.kind = FaultKind::interruptedExposure, .size = 30, .kelvin = 2},
                                 {.kind = FaultKind::shortDrying, .size = 300}})
                          .trace;
    TraceDefect defect;
    defect.kind = TraceDefectKind::textInNumber;
    defect.place = {.line = 12, .column = 7};
    defect.lastLine = 12;
    defect.samples = 1;
    defect.column = 3;
    defect.channel = "Drain";
    defect.text = "err";
    facts.show(bad, evaluate(bad, asks), asks, {defect});
    QTest::qWait(10);
    says = textsOf(facts);
    for (const char* const part :
         {"not met", "below the band", "Microbiology", "not by itself a sterility assurance level",
          "Line 12, character 7", "column 3 (Drain)"}) {
        EXPECT_TRUE(says.contains(part)) << part << " in " << says.toStdString();
    }
}

TEST(TheExplorer, SaysWhatTheLogLinearModelSays)
{
    const Population spores{1e6, 1.5, {121.1, 10}};
    const Population unit{100, 1, {121.1, 10}};
    const Explored at121 = explore(121.1, 15, spores, unit);
    EXPECT_NEAR(at121.spores.logReduction, 10, 1e-12); // 15 / 1.5
    EXPECT_NEAR(at121.spores.survivors, 1e-4, 1e-15);
    EXPECT_NEAR(at121.unit.survivors, 1e-13, 1e-24); // 100 · 10^-15
    // ISO 11138-3: with 10^6 spores and D 1.5 min survival 6 min, kill 15 min (restated).
    EXPECT_NEAR(at121.window.survivalMinutes, 6, 1e-9);
    EXPECT_NEAR(at121.window.killMinutes, 15, 1e-9);
    EXPECT_NEAR(explore(131.1, 1.5, spores, unit).spores.logReduction, 10, 1e-9)
        << "10 K more are worth ten times the time";
}

TEST(TheExplorer, FollowsWhatIsTypedAndSlid)
{
    Look look(*qApp);
    TraceExplorer explorer(look);
    explorer.show();
    QApplication::setActiveWindow(&explorer);
    ASSERT_TRUE(QTest::qWaitForWindowActive(&explorer));
    auto* const time = explorer.findChildren<QLineEdit*>()[1];
    ASSERT_EQ(time->accessibleName(), "Time held");
    time->setFocus();
    QTest::keyClick(time, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(time, "9");
    EXPECT_NEAR(explorer.explored().minutes, 9, 1e-9);
    EXPECT_TRUE(textsOf(explorer).contains("63.2 %")) << "one spore is expected: 1 − 1/e";
    EXPECT_TRUE(textsOf(explorer).contains("not by itself a sterility assurance level"));
    QTest::keyClicks(time, "99");
    EXPECT_NEAR(explorer.explored().minutes, 9, 1e-9) << "beyond the range, and said";
    EXPECT_TRUE(textsOf(explorer).contains("Type a number from"));
    auto* const slider = explorer.findChildren<QSlider*>()[0];
    slider->setFocus();
    const double before = explorer.explored().minutes;
    QTest::keyClick(slider, Qt::Key_Right);
    EXPECT_GT(explorer.explored().minutes, before) << "hotter is worth more";
}

} // namespace
} // namespace loadwarden::ui
