#include "ui/questions/asked_view.h"

#include "ui/look/look.h"
#include "ui/look/text.h"
#include "ui/questions/topic_button.h"

#include <QDate>
#include <QLocale>
#include <QVBoxLayout>

#include <optional>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostShown = 12;

QString monthText(Date day)
{
    const QDate date = QDate::fromString(text(formatDate(day)), Qt::ISODate);
    return QLocale().standaloneMonthName(date.month()) + QStringLiteral(" ")
           + QString::number(date.year());
}

} // namespace

AskedView::AskedView(const std::vector<AskedOften>& asked,
                     const std::function<const Topic*(const std::string&)>& topicOf,
                     QWidget* parent)
    : QFrame(parent)
{
    setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("What the floor asked and misread most"), Type::heading));
    std::optional<Date> month;
    for (std::size_t i = 0; i < asked.size() && i < mostShown; ++i) {
        const AskedOften& each = asked[i];
        if (month != each.month) {
            month = each.month;
            column->addWidget(makeLabel(monthText(each.month), Type::strong));
        }
        const QString counts =
            each.misread > 0
                ? tr("%1: asked %2, of these misread %3", "a place, how often")
                      .arg(text(each.place))
                      .arg(each.asked)
                      .arg(each.misread)
                : tr("%1: asked %2", "a place, how often").arg(text(each.place)).arg(each.asked);
        column->addWidget(makeMuted(counts));
        const Topic* const topic = each.topic.empty() ? nullptr : topicOf(each.topic);
        if (topic == nullptr) {
            column->addWidget(makeLabel(each.topic.empty() ? tr("About a tray, or without a topic")
                                                           : text(each.topic)));
            continue;
        }
        auto* const go = new TopicButton(*topic);
        connect(go, &TopicButton::clicked, this,
                [this, id = text(each.topic)] { emit wantsTopic(id); });
        column->addWidget(go);
    }
    column->addWidget(makeMuted(tr("Misreadings that come again are worth an in-service.")));
}

} // namespace loadwarden::ui
