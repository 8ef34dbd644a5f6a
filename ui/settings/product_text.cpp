#include "ui/settings/product_text.h"

#include "core/quantities/method_words.h"
#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct Product {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::Product)
};

QString minutes(std::int64_t number)
{
    return text(sayQuantity({Unit::minutes, number * 1000}));
}

void addRange(QStringList& lines, const QString& name, const std::optional<Quantity>& least,
              const std::optional<Quantity>& most)
{
    if (least && most) {
        lines << Product::tr("%1: from %2 to %3")
                     .arg(name, text(sayQuantity(*least)), text(sayQuantity(*most)));
    } else if (least) {
        lines << Product::tr("%1: at least %2").arg(name, text(sayQuantity(*least)));
    } else if (most) {
        lines << Product::tr("%1: at most %2").arg(name, text(sayQuantity(*most)));
    }
}

std::optional<Quantity> asMinutes(std::optional<std::int64_t> ms)
{
    return ms ? std::optional(Quantity{Unit::minutes, *ms / 60}) : std::nullopt;
}

std::optional<Quantity> asCelsius(std::optional<std::int64_t> hundredths)
{
    return hundredths ? std::optional(Quantity{Unit::celsius, *hundredths * 10}) : std::nullopt;
}

} // namespace

QString responseText(Response response)
{
    switch (response) {
    case Response::movingFront: return Product::tr("a front that moves");
    case Response::colour: return Product::tr("a colour that changes");
    case Response::sheet: return Product::tr("a Bowie-Dick sheet");
    case Response::growth: return Product::tr("growth");
    }
    return {};
}

QString speciesText(Species species)
{
    switch (species) {
    case Species::geobacillusStearothermophilus:
        return QStringLiteral("Geobacillus stearothermophilus");
    case Species::bacillusAtrophaeus: return QStringLiteral("Bacillus atrophaeus");
    case Species::other: return Product::tr("another");
    }
    return {};
}

QString reachText(ControlReach reach)
{
    switch (reach) {
    case ControlReach::day: return Product::tr("a day");
    case ControlReach::lot: return Product::tr("the whole lot");
    case ControlReach::load: return Product::tr("one load");
    }
    return {};
}

QString methodsText(const MethodSet& methods)
{
    QStringList all;
    for (const Word<Method>& word : methodWords) {
        if (methods.contains(word.value)) {
            all << text(say(word.value));
        }
    }
    return all.join(QStringLiteral(", "));
}

QString productText(const IndicatorProduct& product)
{
    return product.kind == IndicatorKind::biological
               ? Product::tr("biological, %1").arg(methodsText(product.methods))
           : product.response == Response::sheet
               ? Product::tr("Bowie-Dick sheet, %1").arg(methodsText(product.methods))
               : Product::tr("chemical, type %1, %2")
                     .arg(QString::number(product.type), methodsText(product.methods));
}

QStringList linesOf(const IndicatorProduct& product)
{
    QStringList lines{productText(product)};
    if (!product.cycleTypes.empty()) {
        QStringList types;
        for (const std::string& each : product.cycleTypes) {
            types << text(each);
        }
        lines << Product::tr("only for: %1").arg(types.join(QStringLiteral(", ")));
    }
    if (product.kind == IndicatorKind::chemical) {
        lines << Product::tr("answers by %1").arg(responseText(product.response));
        if (product.readWithinMinutes) {
            lines << Product::tr("to be read within %1").arg(minutes(*product.readWithinMinutes));
        }
        if (product.response == Response::sheet) {
            addRange(lines, Product::tr("exposure"), asMinutes(product.sheet.leastMs),
                     asMinutes(product.sheet.mostMs));
            addRange(lines, Product::tr("temperature"),
                     asCelsius(product.sheet.leastCelsiusHundredths),
                     asCelsius(product.sheet.mostCelsiusHundredths));
            if (product.sheet.dryingForbidden) {
                lines << Product::tr("not to be dried");
            }
        }
        return lines;
    }
    lines << speciesText(product.species)
          << Product::tr("allows release after %1").arg(minutes(product.releaseMinutes));
    if (product.lastMinutes) {
        lines << Product::tr("last readout after %1").arg(minutes(*product.lastMinutes));
    }
    if (product.latestMinutes) {
        lines << Product::tr("not to be read after %1").arg(minutes(*product.latestMinutes));
    }
    if (product.startWithinMinutes) {
        lines << Product::tr("into the incubator within %1")
                     .arg(minutes(*product.startWithinMinutes));
    }
    lines << (product.needsActivation ? Product::tr("must be activated")
                                      : Product::tr("needs no activation"))
          << (product.hasProcessIndicator ? Product::tr("bears a process indicator")
                                          : Product::tr("bears no process indicator"));
    if (product.control) {
        lines << Product::tr("one control reaches %1").arg(reachText(*product.control));
    }
    return lines;
}

} // namespace loadwarden::ui
