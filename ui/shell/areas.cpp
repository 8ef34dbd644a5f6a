#include "ui/biologicals/biologicals_page.h"
#include "ui/indicators/indicator_desk_page.h"
#include "ui/load/load_page.h"
#include "ui/questions/questions_page.h"
#include "ui/records/records_page.h"
#include "ui/settings/settings_page.h"
#include "ui/shell/area.h"
#include "ui/today/today_page.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

QString today()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "&Today");
}

QString load()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "&Load");
}

QString biologicals()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "&Biologicals");
}

QString indicators()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "Indicators");
}

QString questions()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "&Questions");
}

QString records()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "&Records");
}

QString settings()
{
    return QCoreApplication::translate("loadwarden::ui::Area", "S&ettings");
}

template <class Made>
Page* make(Workstation& workstation)
{
    return new Made(workstation);
}

} // namespace

const std::vector<Area>& areas()
{
    static const std::vector<Area> all = {
        {"today", today, QKeySequence(Qt::CTRL | Qt::Key_1), make<TodayPage>, nullptr},
        {"load", load, QKeySequence(Qt::CTRL | Qt::Key_2), make<LoadPage>,
         [](Page& page, const QString& cycle, const QString& item) {
             static_cast<LoadPage&>(page).open(cycle, item);
         },
         [](Page& page, const QString& sterilizer) {
             static_cast<LoadPage&>(page).beginTest(sterilizer);
         }},
        {"biologicals", biologicals, QKeySequence(Qt::CTRL | Qt::Key_3), make<BiologicalsPage>,
         nullptr},
        {"indicators", indicators, QKeySequence(Qt::CTRL | Qt::Key_4), make<IndicatorDeskPage>,
         nullptr},
        {"questions", questions, QKeySequence(Qt::CTRL | Qt::Key_5), make<QuestionsPage>, nullptr},
        {"records", records, QKeySequence(Qt::CTRL | Qt::Key_8), make<RecordsPage>, nullptr},
        {"settings", settings, QKeySequence(Qt::CTRL | Qt::Key_9), make<SettingsPage>, nullptr},
    };
    return all;
}

} // namespace loadwarden::ui
