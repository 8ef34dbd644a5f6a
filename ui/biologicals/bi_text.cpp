#include "ui/biologicals/bi_text.h"

#include "ui/look/text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

constexpr std::int64_t minuteMs = 60'000;
constexpr std::int64_t hourMs = 60 * minuteMs;
constexpr std::int64_t hoursFromMs = 2 * hourMs; ///< above it only hours are said

QString tr(const char* says)
{
    return QCoreApplication::translate("loadwarden::ui::Biologicals", says);
}

std::int64_t unitOf(std::int64_t left)
{
    return left > hoursFromMs ? hourMs : minuteMs;
}

std::int64_t roundedUp(std::int64_t left, std::int64_t unit)
{
    return (left + unit - 1) / unit;
}

QString waitingText(const BiTest& test, Instant now, const HouseStyle& style)
{
    if (!test.dueAt) {
        return tr("Nothing says when it may be read: look at its product.");
    }
    const QString at = text(sayTime(*test.dueAt, style));
    if (*test.dueAt > now) {
        return tr("To be read at %1, %2.").arg(at, countdownText(*test.dueAt - now));
    }
    if (!test.isControl && test.vial.why == PendingWhy::notCounted) {
        return tr("Was read, and that reading does not count. Read it again.");
    }
    return tr("To be read since %1.").arg(at);
}

QString vialText(const BiTest& test)
{
    switch (test.vial.state) {
    case VialState::voided:
        return test.vial.cause == Cause::controlDead
                   ? tr("Void: its control did not grow, so it shows nothing.")
               : test.vial.cause == Cause::controlMissing
                   ? tr("Void: no control was beside it in time, so it shows nothing.")
                   : tr("Void: it shows nothing.");
    case VialState::lost: return tr("Lost.");
    case VialState::negative: return tr("No growth, and its control grew.");
    case VialState::pending:
        return test.vial.why == PendingWhy::control
                   ? tr("No growth. It counts once its control has grown.")
                   : tr("The process indicator on it is to be looked at.");
    default: return {};
    }
}

QString controlText(ControlState state)
{
    switch (state) {
    case ControlState::grown: return tr("Grown, as it must.");
    case ControlState::dead: return tr("Did not grow: the vials beside it are void.");
    case ControlState::asMissing:
        return tr("Does not count: look at its lot, date and activation.");
    case ControlState::pending: return {};
    }
    return {};
}

} // namespace

QString countdownText(Duration left)
{
    const std::int64_t unit = unitOf(left.ms);
    const std::int64_t many = roundedUp(left.ms, unit);
    return unit == hourMs ? tr("in %1 h").arg(many) : tr("in %1 min").arg(many);
}

std::optional<Instant> countdownChangesAt(Instant due, Instant now)
{
    const std::int64_t left = (due - now).ms;
    if (left <= 0) {
        return std::nullopt;
    }
    const std::int64_t unit = unitOf(left);
    return due - Duration{(roundedUp(left, unit) - 1) * unit};
}

QString standingText(const BiTest& test, Instant now, const HouseStyle& style)
{
    switch (test.step) {
    case BiStep::activate: return tr("To be activated, once it has cooled.");
    case BiStep::incubate: return tr("To be put into an incubator.");
    case BiStep::processIndicator: return tr("No growth. Look at the process indicator on it.");
    case BiStep::readSecond: return tr("Read as unclear. A second person reads it in the load.");
    case BiStep::read: return waitingText(test, now, style);
    case BiStep::none: break;
    }
    return test.isControl ? controlText(test.control) : vialText(test);
}

} // namespace loadwarden::ui
