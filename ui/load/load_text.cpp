#include "ui/load/load_text.h"

#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/paper/sheets/who_text.h"
#include "ui/parts/clock_text.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct LoadWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::LoadWords)
};

} // namespace

QString shortTime(Instant at, const LoadSheet& sheet, const HouseStyle& style)
{
    return dayClockText(at, sheet.view().now, style);
}

QString whoText(const Act& act, const LoadSheet& sheet, const HouseStyle& style)
{
    return LoadWords::tr("%1, %2", "who, when")
        .arg(text(sheet.record.names.of(act.by)), shortTime(act.happenedAt, sheet, style));
}

QString whoText(const Entry& entry, const LoadSheet& sheet, const HouseStyle& style)
{
    return paper::shortWhoText(entry, sheet.record.names,
                               [&](Instant at) { return shortTime(at, sheet, style); });
}

QString phaseText(const LoadSheet& sheet, const HouseStyle& style)
{
    const CycleView& view = sheet.view();
    switch (view.folded.phase) {
    case Phase::beingLoaded: return LoadWords::tr("Being loaded");
    case Phase::running:
        return sheet.state.start ? LoadWords::tr("Running since %1")
                                       .arg(shortTime(*sheet.state.start, sheet, style))
                                 : LoadWords::tr("Running");
    case Phase::awaitingDecision:
        return view.isTest() ? LoadWords::tr("Ended") : LoadWords::tr("Ended, not signed yet");
    case Phase::disposed:
        return view.signedAs ? LoadWords::tr("Signed: %1").arg(text(say(*view.signedAs)))
                             : LoadWords::tr("Signed");
    case Phase::evidenceChanged:
        return view.signedAs
                   ? LoadWords::tr("Signed: %1, evidence changed since; somebody signs anew")
                         .arg(text(say(*view.signedAs)))
                   : LoadWords::tr("Evidence changed since it was signed; somebody signs anew");
    case Phase::imported: return LoadWords::tr("Imported: nothing is decided about it here");
    }
    return {};
}

const Quantity* limitIn(const std::vector<Quantity>& stated, Unit unit)
{
    const auto same = std::ranges::find(stated, unit, &Quantity::unit);
    return same != stated.end() ? &*same : stated.empty() ? nullptr : &stated.front();
}

QString limitsText(const SheetParameter& parameter, Unit unit)
{
    QStringList sides;
    if (const Quantity* const least = limitIn(parameter.least, unit)) {
        sides << LoadWords::tr("at least %1").arg(text(sayQuantity(*least)));
    }
    if (const Quantity* const most = limitIn(parameter.most, unit)) {
        sides << LoadWords::tr("at most %1").arg(text(sayQuantity(*most)));
    }
    return sides.join(QStringLiteral(", "));
}

QString placeText(const SheetIndicator& indicator)
{
    const QString holder = text(indicator.holderName);
    QString where;
    switch (indicator.where) {
    case IndicatorPlace::pcd:
        where = holder.isEmpty() ? LoadWords::tr("In the PCD")
                : holder.startsWith(QLatin1String("PCD"))
                    ? LoadWords::tr("In %1", "a PCD by its mark").arg(holder)
                    : LoadWords::tr("In PCD %1").arg(holder);
        break;
    case IndicatorPlace::outside: where = LoadWords::tr("Outside of %1").arg(holder); break;
    case IndicatorPlace::inside: where = LoadWords::tr("Inside %1").arg(holder); break;
    case IndicatorPlace::sheet: where = LoadWords::tr("Test sheet"); break;
    }
    return indicator.place.empty()
               ? where
               : LoadWords::tr("%1, %2", "in what, where in it").arg(where, text(indicator.place));
}

QString productText(const SheetIndicator& indicator)
{
    if (indicator.productName.empty()) {
        return LoadWords::tr("product not stated");
    }
    return indicator.lotNumber.empty()
               ? LoadWords::tr("%1, lot not stated").arg(text(indicator.productName))
               : LoadWords::tr("%1, lot %2").arg(text(indicator.productName),
                                                 text(indicator.lotNumber));
}

QString lotText(const LotChoice& lot)
{
    return lot.expires ? LoadWords::tr("%1, lot %2, until %3")
                             .arg(text(lot.productName), text(lot.number),
                                  text(formatDate(*lot.expires)))
                       : LoadWords::tr("%1, lot %2, expiry not stated")
                             .arg(text(lot.productName), text(lot.number));
}

} // namespace loadwarden::ui
