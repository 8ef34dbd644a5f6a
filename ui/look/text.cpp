#include "ui/look/text.h"

#include <QStyle>
#include <QVariant>

namespace loadwarden::ui {

QString withBreaks(const QString& says)
{
    constexpr int longest = 26; // characters
    constexpr QChar mayBreak(0x200b);
    QString all;
    all.reserve(says.size());
    int run = 0;
    for (qsizetype i = 0; i < says.size(); ++i) {
        all += says[i];
        run = says[i].isSpace() || says[i] == mayBreak ? 0 : run + 1;
        const bool isSeam = QStringLiteral("-_./\\").contains(says[i]);
        if (run >= longest || (run > longest / 2 && isSeam)) {
            all += mayBreak;
            run = 0;
        }
    }
    return all;
}

QLabel* makeLabel(const QString& says, Type type, bool wraps)
{
    auto* const label = new QLabel(wraps ? withBreaks(says) : says);
    label->setTextFormat(Qt::PlainText); // what was typed by people is never markup
    label->setWordWrap(wraps);
    switch (type) {
    case Type::body: break;
    case Type::strong: label->setProperty("type", "strong"); break;
    case Type::heading: label->setProperty("type", "heading"); break;
    case Type::title: label->setProperty("type", "title"); break;
    case Type::verdict: label->setProperty("type", "verdict"); break;
    }
    return label;
}

QLabel* makeMuted(const QString& says, bool wraps)
{
    QLabel* const label = makeLabel(says, Type::body, wraps);
    label->setProperty("tone", "muted");
    return label;
}

QPushButton* makeButton(const QString& says, ButtonKind kind)
{
    auto* const button = new QPushButton(says);
    button->setAutoDefault(false);
    switch (kind) {
    case ButtonKind::plain: break;
    case ButtonKind::main: button->setProperty("kind", "main"); break;
    case ButtonKind::quiet: button->setProperty("kind", "quiet"); break;
    case ButtonKind::key: button->setProperty("kind", "key"); break;
    case ButtonKind::choice:
        button->setProperty("kind", "choice");
        button->setCheckable(true);
        break;
    }
    return button;
}

void setStyleProperty(QWidget* widget, const char* name, const QVariant& value)
{
    if (widget->property(name) == value) {
        return;
    }
    widget->setProperty(name, value);
    widget->style()->unpolish(widget);
    widget->style()->polish(widget);
    widget->update();
}

QFrame* makeRule()
{
    auto* const rule = new QFrame;
    rule->setObjectName(QStringLiteral("rule"));
    return rule;
}

} // namespace loadwarden::ui
