#include "ui/look/look.h"

#include <QApplication>
#include <QFile>
#include <QPalette>
#include <QStyleFactory>

#include <array>
#include <utility>

// A static library's resources must be asked for; outside of any namespace.
static void askForResources()
{
    Q_INIT_RESOURCE(ui);
}

namespace loadwarden::ui {
namespace {

constexpr std::array types = {std::pair{"@body", Type::body}, std::pair{"@heading", Type::heading},
                              std::pair{"@title", Type::title},
                              std::pair{"@verdict", Type::verdict}};

QPalette paletteOf(const Colours& c)
{
    QPalette palette;
    palette.setColor(QPalette::Window, c.window);
    palette.setColor(QPalette::WindowText, c.ink);
    palette.setColor(QPalette::Base, c.field);
    palette.setColor(QPalette::AlternateBase, c.surface);
    palette.setColor(QPalette::Text, c.ink);
    palette.setColor(QPalette::PlaceholderText, c.muted);
    palette.setColor(QPalette::Button, c.surface);
    palette.setColor(QPalette::ButtonText, c.ink);
    palette.setColor(QPalette::Highlight, c.accent);
    palette.setColor(QPalette::HighlightedText, c.onAccent);
    palette.setColor(QPalette::ToolTipBase, c.bezel);
    palette.setColor(QPalette::ToolTipText, c.onBezel);
    palette.setColor(QPalette::Link, c.accent);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, c.muted);
    }
    return palette;
}

QString sheetOf(const Colours& c, Theme theme, TextSize size)
{
    askForResources();
    QFile file(QStringLiteral(":/style/loadwarden.qss"));
    if (!file.open(QIODevice::ReadOnly)) {
        qFatal("the style sheet is not in the program");
    }
    QString sheet = QString::fromUtf8(file.readAll());
    const std::pair<const char*, QColor> colours[] = {{"@window", c.window},
                                                      {"@surface", c.surface},
                                                      {"@field", c.field},
                                                      {"@line", c.line},
                                                      {"@edge", c.edge},
                                                      {"@ink", c.ink},
                                                      {"@muted", c.muted},
                                                      {"@accent-over", c.accentOver},
                                                      {"@accent-soft", c.accentSoft},
                                                      {"@accent", c.accent},
                                                      {"@on-accent", c.onAccent},
                                                      {"@focus", c.focus},
                                                      {"@bezel-over", c.bezelOver},
                                                      {"@bezel-muted", c.bezelMuted},
                                                      {"@bezel", c.bezel},
                                                      {"@on-bezel", c.onBezel},
                                                      {"@good-soft", c.good.soft},
                                                      {"@good", c.good.ink},
                                                      {"@waiting-soft", c.waiting.soft},
                                                      {"@waiting", c.waiting.ink},
                                                      {"@bad-soft", c.bad.soft},
                                                      {"@bad", c.bad.ink},
                                                      {"@neutral-soft", c.neutral.soft},
                                                      {"@neutral", c.neutral.ink}};
    // Pictures in the theme's colours of ink and of what stands on the accent.
    sheet.replace(QLatin1String("@theme"), theme == Theme::light ? QLatin1String("light")
                                                                 : QLatin1String("dark"));
    for (const auto& [name, colour] : colours) {
        sheet.replace(QLatin1String(name), colour.name());
    }
    for (const auto& [name, type] : types) {
        sheet.replace(QLatin1String(name),
                      QString::number(pointsOf(type, size), 'f', 1) + QStringLiteral("pt"));
    }
    return sheet;
}

} // namespace

double pointsOf(Type type, TextSize size)
{
    const double scale = size == TextSize::normal ? 1.0 : size == TextSize::large ? 1.2 : 1.45;
    switch (type) {
    case Type::body:
    case Type::strong: return 11.0 * scale;
    case Type::heading: return 13.5 * scale;
    case Type::title: return 20.0 * scale;
    case Type::verdict: return 25.0 * scale;
    }
    return 11.0 * scale;
}

Look::Look(QApplication& application) : m_application(application) {}

void Look::apply(Theme theme, TextSize size)
{
    m_theme = theme;
    m_size = size;
    // The look must not depend on the desktop under it: it is what was checked for contrast.
    m_application.setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    m_application.setPalette(paletteOf(colours()));
    m_application.setFont(font(Type::body));
    m_application.setStyleSheet(sheetOf(colours(), theme, size));
    emit changed();
}

QFont Look::font(Type type) const
{
    QFont font = m_application.font();
    font.setPointSizeF(pointsOf(type, m_size));
    font.setWeight(type == Type::body ? QFont::Normal : QFont::Bold);
    return font;
}

} // namespace loadwarden::ui
