#include "ui/paper/kit/type.h"

#include "ui/paper/kit/page_size.h"

#include <QStringList>

#include <cmath>

namespace loadwarden::paper {

double pointsOf(Type type)
{
    switch (type) {
    case Type::body: return 9.0;
    case Type::field: return 10.0;
    case Type::section: return 11.0;
    case Type::steps: return 14.0;
    case Type::title: return 17.0;
    case Type::answer: return 23.0;
    case Type::poster: return 30.0;
    case Type::shout: return 40.0;
    }
    return 9.0;
}

double lineHeight(Type type)
{
    return points(pointsOf(type) * 1.2);
}

QFont fontOf(Type type, Face face)
{
    // A narrow face where there is one, since a record has much to say on one page.
    QFont font(QStringList{QStringLiteral("DejaVu Sans Condensed"), QStringLiteral("DejaVu Sans")});
    font.setStyleHint(QFont::SansSerif);
    // In pixels of the paper, so that the layout is the same on every device.
    font.setPixelSize(static_cast<int>(std::lround(points(pointsOf(type)))));
    font.setHintingPreference(QFont::PreferNoHinting);
    // Spaced letters are not joined to ligatures, which a search in the PDF would miss.
    font.setLetterSpacing(QFont::PercentageSpacing, 100.5);
    font.setBold(face == Face::strong);
    font.setStrikeOut(face == Face::struck);
    return font;
}

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

Runs plain(const QString& words)
{
    return {{words, Face::plain}};
}

Runs strong(const QString& words)
{
    return {{words, Face::strong}};
}

} // namespace loadwarden::paper
