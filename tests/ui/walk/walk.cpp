#include "tests/ui/walk/walk.h"

#include "ui/shell/area.h"

#include <QApplication>
#include <QTest>

#include <algorithm>
#include <iostream>

namespace loadwarden::ui_tests {
namespace {

std::size_t widgetsVisited = 0;
std::size_t dialogsVisited = 0;

class VisitedPrinter : public ::testing::Environment {
public:
    void TearDown() override
    {
        std::cout << "widgets visited: " << widgetsVisited
                  << ", in dialogs among them: " << dialogsVisited << '\n';
    }
};

[[maybe_unused]] const auto* const printer =
    ::testing::AddGlobalTestEnvironment(new VisitedPrinter);

} // namespace

namespace {

std::string saidOf(const std::vector<Fault>& faults)
{
    std::string all;
    for (const Fault& fault : faults) {
        all += "\n  " + fault.where.toStdString() + ' ' + fault.what.toStdString();
    }
    return all;
}

} // namespace

void Walk::SetUp()
{
    if (isPseudo()) {
        QApplication::installTranslator(&translation);
    }
    desktop.settings().setTextSize(std::get<3>(GetParam()));
}

void Walk::TearDown()
{
    desktop.close();
    QApplication::removeTranslator(&translation);
}

void Walk::look(const std::string& page)
{
    QTest::qWait(30);
    ASSERT_EQ(desktop.window().size(), size())
        << page << " does not fit the window:" << saidOf(tooLarge(desktop.window(), size()));
    lookAt(desktop.window(), page);
}

void Walk::lookAtDialog(const std::string& page)
{
    QTest::qWait(30);
    QWidget* const dialog = QApplication::activeModalWidget();
    ASSERT_NE(dialog, nullptr) << page << " is not there";
    EXPECT_LE(dialog->width(), size().width()) << page << " is wider than the window";
    EXPECT_LE(dialog->height(), size().height()) << page << " is higher than the window";
    dialogsVisited += visibleWidgets(*dialog).size();
    lookAt(*dialog, page);
}

void Walk::lookAt(QWidget& window, const std::string& page)
{
    widgetsVisited += visibleWidgets(window).size();
    for (const auto& faults : {lowContrast(window), clippedText(window), cutByScrolling(window),
                               nameless(window), smallTargets(window), wrongTabOrder(window)}) {
        for (const Fault& fault : faults) {
            ADD_FAILURE() << page << ": " << fault.where.toStdString() << ' '
                          << fault.what.toStdString();
        }
    }
}

int Walk::areaOf(std::string_view id)
{
    const auto& all = ui::areas();
    return static_cast<int>(
        std::ranges::find_if(all, [&](const ui::Area& area) { return id == area.id; })
        - all.begin());
}

} // namespace loadwarden::ui_tests
