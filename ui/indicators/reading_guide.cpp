#include "ui/indicators/reading_guide.h"

#include "core/words/say_reading.h"
#include "ui/look/text.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

struct GuideWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::GuideWords)
};

/// "Strip reading guide, revision 3, dated 2030-05-01"
QString documentText(const ReadingDirections& directions)
{
    QStringList parts{directions.document.empty() ? GuideWords::tr("document not named")
                                                  : text(directions.document)};
    if (!directions.revision.empty()) {
        parts << GuideWords::tr("revision %1").arg(text(directions.revision));
    }
    parts << (directions.dated ? GuideWords::tr("dated %1").arg(text(formatDate(*directions.dated)))
                               : GuideWords::tr("not dated"));
    return GuideWords::tr("From: %1").arg(parts.join(QStringLiteral(", ")));
}

void addDirections(QVBoxLayout* column, const ReadingDirections& directions)
{
    if (!directions.text.empty()) {
        column->addWidget(makeLabel(text(directions.text)));
    }
    if (directions.isStable) {
        column->addWidget(
            makeLabel(*directions.isStable
                          ? GuideWords::tr("Its answer stays as it is after the cycle.")
                          : GuideWords::tr("Its answer does not stay as it is: read it in time.")));
    }
    column->addWidget(makeMuted(documentText(directions)));
}

} // namespace

QString warningOf(const ReadingGuide& guide)
{
    if (!guide.directions) {
        return GuideWords::tr("No directions of this product are registered. Read its maker's own "
                              "before you read it.");
    }
    const std::optional<Date>& due = guide.directions->reviewBy;
    return due && guide.today && *due < *guide.today
               ? GuideWords::tr(
                     "A review of these directions was due on %1: look whether the maker "
                     "has newer ones.")
                     .arg(text(formatDate(*due)))
               : QString();
}

DirectionsView::DirectionsView(const ReadingGuide& guide, QWidget* parent) : QWidget(parent)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("The product's own directions"), Type::strong));
    const QString warning = warningOf(guide);
    if (!warning.isEmpty()) {
        QLabel* const line = makeLabel(warning, Type::strong);
        line->setProperty("tone", "waiting");
        column->addWidget(line);
    }
    if (guide.directions) {
        addDirections(column, *guide.directions);
    }
    const TypeSaid type = sayType(guide.type);
    if (guide.type != 0) {
        column->addWidget(makeLabel(text(type.name), Type::strong));
        column->addWidget(makeLabel(text(type.can) + u' ' + text(type.cannot)));
        column->addWidget(makeMuted(tr("Source: %1").arg(text(type.source))));
    }
    column->addStretch();
}

} // namespace loadwarden::ui
