#include "core/words/say_indicator_answer.h"

#include "core/indicators/reading_result.h"
#include "core/words/say_reading.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct AnswerWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)
};

Key keyAt(std::optional<IndicatorUsedAt> place)
{
    switch (place.value_or(IndicatorUsedAt::inside)) {
    case IndicatorUsedAt::pcd: return Key::pcdInvalid;
    case IndicatorUsedAt::outside: return Key::itemExternalInvalid;
    case IndicatorUsedAt::inside: break;
    }
    return Key::itemInternalInvalid;
}

} // namespace

IndicatorSaid say(const IndicatorAnswer& answer, Seen seen, std::optional<IndicatorUsedAt> place,
                  const HouseStyle& style)
{
    const auto tr = [](const char* text) { return AnswerWords::tr(text).toStdString(); };
    const ReadingSaid rule = say(ruleOf(seen));
    switch (answer.state) {
    case ChemicalState::accepted:
        return {tr("Accept"), rule.says,
                place ? tr("It passes for its place. The load goes by all of its evidence, never "
                           "by one indicator.")
                      : tr("It passes as it looks; whether its type counts where it was, was not "
                           "asked. The load goes by all of its evidence, never by one indicator."),
                rule.source};
    case ChemicalState::rejected:
        if (seen == Seen::notUniform || seen == Seen::uniformIncomplete) { // of a sheet
            return {tr("Reject"), rule.says,
                    tr("The air-removal test has failed. Use the sterilizer for no load, record "
                       "the reading in its test, and tell the lead."),
                    rule.source};
        }
        return {tr("Reject"), rule.says,
                tr("Do not use the item. Put it aside, and record the reading in its load."),
                rule.source};
    case ChemicalState::unclear:
        return {tr("Unclear"), rule.says,
                tr("A second person reads it without knowing the first answer. Until then the item "
                   "is held."),
                rule.source};
    case ChemicalState::invalid:
    case ChemicalState::unread: break;
    }
    const Said said = say(Finding{.key = keyAt(place), .cause = answer.cause}, style);
    return {tr("Does not count"), said.says, said.next, said.source};
}

} // namespace loadwarden
