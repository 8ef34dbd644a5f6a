#include "ui/paper/sheets/reasons.h"

#include "ui/paper/sheets/house.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {

std::vector<Reason> reasonsOf(const CycleView& view, const HouseStyle& style,
                              const std::function<bool(const Finding&)>& wants)
{
    std::vector<Reason> reasons;
    for (const Finding& finding :
         view.isTest() ? view.judgement.findings : view.decision.findings) {
        if (!wants(finding)) {
            continue;
        }
        Said said = say(finding, style);
        const auto same = std::ranges::find_if(reasons, [&](const Reason& reason) {
            return reason.outcome == finding.outcome && reason.key == finding.key
                   && reason.said.says == said.says && reason.said.next == said.next
                   && (reason.items.front() < 0) == (finding.item < 0);
        });
        if (same == reasons.end()) {
            reasons.push_back({finding.outcome, finding.key, std::move(said), {finding.item}});
        } else if (std::ranges::find(same->items, finding.item) == same->items.end()) {
            same->items.push_back(finding.item);
        }
    }
    std::ranges::stable_sort(reasons, std::greater<>{}, &Reason::outcome);
    return reasons;
}

std::vector<Reason> reasonsOf(const CycleView& view, const HouseStyle& style)
{
    return reasonsOf(view, style, [](const Finding&) { return true; });
}

QString itemsText(const Reason& reason, const CycleView& view)
{
    QStringList labels;
    for (const std::int32_t item : reason.items) {
        if (item >= 0) {
            labels << text(view.decision.items[static_cast<std::size_t>(item)].label);
        }
    }
    return labels.join(QStringLiteral("; "));
}

} // namespace loadwarden::paper
