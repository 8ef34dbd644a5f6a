#include "ui/paper/sheets/who_text.h"

#include "core/words/say_terms.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {
namespace {

QString nameText(const std::string& id, const Names& names)
{
    return id.empty() ? tr("the program") : text(names.of(id));
}

QString personText(const std::string& id, Role role, const Names& names)
{
    return id.empty() ? nameText(id, names)
                      : tr("%1, %2").arg(nameText(id, names), text(say(role)));
}

/// The minute in which something happened, as against the one in which it was typed.
bool wasTypedLater(const Entry& entry)
{
    constexpr std::int64_t minute = 60'000;
    return entry.happenedAt.at.ms / minute != entry.recordedAt.at.ms / minute;
}

} // namespace

QString authorText(const Entry& entry, const Names& names)
{
    return entry.paper ? personText(entry.paper->by, entry.paper->role, names)
                       : personText(entry.actor, entry.role, names);
}

QString whoText(const Entry& entry, const Names& names, const HouseStyle& style)
{
    const QString who =
        tr("%1, %2").arg(authorText(entry, names), timeText(entry.happenedAt.at, style));
    const QString recorded = timeText(entry.recordedAt.at, style);
    if (entry.paper) {
        return tr("%1, on paper; typed by %2, %3")
            .arg(who, personText(entry.actor, entry.role, names), recorded);
    }
    return wasTypedLater(entry) ? tr("%1; recorded %2").arg(who, recorded) : who;
}

QString shortWhoText(const Entry& entry, const Names& names,
                     const std::function<QString(Instant)>& timeOf)
{
    const QString when = timeOf(entry.happenedAt.at);
    return entry.paper
               ? tr("%1, %2, on paper; typed by %3")
                     .arg(nameText(entry.paper->by, names), when, nameText(entry.actor, names))
               : tr("%1, %2").arg(nameText(entry.actor, names), when);
}

} // namespace loadwarden::paper
