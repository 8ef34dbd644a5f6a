// Readers of indicators and the check of reading, which stand on no page by themselves, looked at
// in every theme, in a pseudo-translation and with larger text.
#include "tests/ui/walk/faults.h"
#include "tests/ui/walk/pseudo_translation.h"
#include "ui/indicators/check_view.h"
#include "ui/indicators/indicator_reader.h"
#include "ui/indicators/reading_panel.h"
#include "ui/look/look.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QScrollArea>
#include <QTest>
#include <QVBoxLayout>

#include <string>
#include <tuple>

namespace loadwarden::ui_tests {
namespace {

using namespace loadwarden::ui;

using LookOfOne = std::tuple<Theme, bool, TextSize>;

class IndicatorsWalk : public ::testing::TestWithParam<LookOfOne> {
protected:
    IndicatorsWalk() : look(*qobject_cast<QApplication*>(QCoreApplication::instance()))
    {
        const auto [theme, isPseudo, size] = GetParam();
        look.apply(theme, size);
        if (isPseudo) {
            QCoreApplication::installTranslator(&translation);
        }
    }
    ~IndicatorsWalk() override { QCoreApplication::removeTranslator(&translation); }

    /// As wide as the page of a load has room in the window.
    QSize room() const
    {
        return std::get<2>(GetParam()) == TextSize::largest ? QSize(1500, 900) : QSize(960, 640);
    }

    static ReadingGuide guide()
    {
        ReadingGuide guide{
            .type = 4, .directions = ReadingDirections{}, .today = parseDate("2031-03-04")};
        guide.directions->text = "Hold it flat in good light and look where the front ends.";
        guide.directions->reviewBy = parseDate("2031-03-01");
        guide.directions->startColour = ColourSample{"pale yellow", "#f4eec0"};
        return guide;
    }

    /// In a window that scrolls, as every page does.
    void lookAt(QWidget* widget, const std::string& name)
    {
        QWidget window;
        window.setObjectName(QStringLiteral("page"));
        window.setAttribute(Qt::WA_StyledBackground);
        auto* const column = new QVBoxLayout(&window);
        auto* const scroll = new QScrollArea;
        scroll->setWidgetResizable(true);
        scroll->setFocusPolicy(Qt::NoFocus);
        auto* const rows = new QWidget;
        rows->setObjectName(QStringLiteral("rows"));
        auto* const inside = new QVBoxLayout(rows);
        inside->addWidget(widget);
        inside->addStretch();
        scroll->setWidget(rows);
        column->addWidget(scroll);
        window.resize(room());
        window.show();
        QApplication::setActiveWindow(&window);
        QTest::qWait(30);
        check(window, name);
        window.resize(room().width(), 2'000); // what is below, for the colours
        QTest::qWait(30);
        tell(lowContrast(window), name);
        widget->setParent(nullptr);
        delete widget;
    }

    static void check(QWidget& window, const std::string& name)
    {
        tell(clippedText(window), name);
        tell(cutByScrolling(window), name);
        tell(nameless(window), name);
        tell(smallTargets(window), name);
    }

    static void tell(const std::vector<Fault>& faults, const std::string& name)
    {
        for (const Fault& fault : faults) {
            ADD_FAILURE() << name << ": " << fault.where.toStdString() << ": "
                          << fault.what.toStdString();
        }
    }

    Look look;
    PseudoTranslation translation;
};

TEST_P(IndicatorsWalk, ReadersAndTheirPanelHaveNoFault)
{
    for (const Response response : {Response::movingFront, Response::colour, Response::sheet}) {
        const std::string name = std::to_string(static_cast<int>(response));
        lookAt(makeReader(look, response, guide(), AnswersBy::reader), "reader " + name);
        lookAt(new ReadingPanel(look, "In PCD-1", "Product F", response, guide()), "panel " + name);
        lookAt(new ReadingPanel(look, "In PCD-1", "Product F", response), "bare panel " + name);
    }
}

TEST_P(IndicatorsWalk, TheCheckAndItsResultHaveNoFault)
{
    std::int64_t now = 0;
    std::vector<CheckProduct> products;
    for (const Response response : {Response::movingFront, Response::colour, Response::sheet}) {
        products.push_back({.id = std::to_string(static_cast<int>(response)),
                            .name = "Product P",
                            .type = 4,
                            .response = response,
                            .directions = guide().directions});
    }
    auto* const view = new CheckView(look, products, 3, [&now] { return now; });
    QWidget window;
    window.setObjectName(QStringLiteral("page"));
    window.setAttribute(Qt::WA_StyledBackground);
    auto* const column = new QVBoxLayout(&window);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(view);
    window.resize(room());
    window.show();
    QApplication::setActiveWindow(&window);
    for (std::size_t i = 0; i < view->drawn().size(); ++i) {
        QTest::qWait(10);
        check(window, "indicator " + std::to_string(i));
        tell(lowContrast(window), "indicator " + std::to_string(i));
        now += 1'000;
        QTest::keyClick(view, i % 2 == 0 ? Qt::Key_A : Qt::Key_R);
    }
    QTest::qWait(10);
    check(window, "result");
    tell(lowContrast(window), "result");
}

INSTANTIATE_TEST_SUITE_P(ThemesLanguagesText, IndicatorsWalk,
                         ::testing::Values(LookOfOne(Theme::light, false, TextSize::normal),
                                           LookOfOne(Theme::dark, false, TextSize::normal),
                                           LookOfOne(Theme::light, true, TextSize::normal),
                                           LookOfOne(Theme::dark, true, TextSize::normal),
                                           LookOfOne(Theme::light, false, TextSize::large),
                                           LookOfOne(Theme::dark, false, TextSize::largest)));

} // namespace
} // namespace loadwarden::ui_tests
