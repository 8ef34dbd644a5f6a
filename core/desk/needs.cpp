#include "core/desk/needs.h"

#include "core/desk/sheet_part.h"

#include <algorithm>
#include <iterator>
#include <limits>

namespace loadwarden {
namespace {

/// What a finding that keeps a load back asks for; nullopt: nothing by itself.
std::optional<NeedKind> kindOf(const Finding& finding)
{
    if (finding.key == Key::biPositive || finding.key == Key::implantBiPositive) {
        return NeedKind::growth;
    }
    const RuleId rule = ruleOf(finding.key);
    if (rule == RuleId::bi || rule == RuleId::routineBi || rule == RuleId::implant
        || rule == RuleId::itemImplant) {
        if (finding.cause == Cause::controlDead) {
            return NeedKind::controlDead;
        }
        if (finding.outcome == Outcome::review) {
            return NeedKind::review;
        }
        // What only repeats that a vial is awaited asks for nothing beyond the vial's own finding.
        switch (finding.key) {
        case Key::biIncubating: return NeedKind::biologicalComing;
        // Where there is no vial, none is to be read.
        case Key::biMissing:
        case Key::implantMissing:
        case Key::implantIndicatorMissing:
        case Key::implantImpossible:
        case Key::routineNone: return NeedKind::otherEvidence;
        case Key::implantPending:
        case Key::itemImplantWaits:
        case Key::routinePending: return std::nullopt;
        default: return NeedKind::biologicalDue;
        }
    }
    if (finding.outcome == Outcome::review) {
        return NeedKind::review;
    }
    if (finding.key == Key::aerationRunning) {
        return NeedKind::aerating;
    }
    switch (rule) {
    case RuleId::printout:
    case RuleId::physical:
    case RuleId::trace:
    case RuleId::verification: return NeedKind::printout;
    case RuleId::pcd:
    case RuleId::external:
    case RuleId::internal:
    case RuleId::package:
    case RuleId::packages: return NeedKind::reading;
    default: return NeedKind::otherEvidence;
    }
}

bool isOfVials(NeedKind kind)
{
    return kind == NeedKind::controlDead || kind == NeedKind::biologicalDue
           || kind == NeedKind::biologicalComing;
}

/// A note asks for nothing, but for a vial for which the load does not wait.
bool asksForAnything(const Finding& finding)
{
    return finding.outcome != Outcome::note || finding.key == Key::biDue
           || finding.key == Key::biIncubating;
}

Need needOf(const CycleView& view, NeedKind kind)
{
    return {.kind = kind,
            .cycle = view.id,
            .lot = view.lot(),
            .sterilizer = view.folded.sterilizer,
            .subject = {},
            .name = {},
            .at = {},
            .findings = {},
            .parts = {},
            .behind = static_cast<int>(std::ranges::count_if(view.decision.items,
                                                             [&view](const ItemDecision& item) {
                                                                 return item.verdict
                                                                        > view.decision.verdict;
                                                             })),
            .hasImplant = mayHoldImplant(view)};
}

void add(std::optional<Need>& need, const CycleView& view, NeedKind kind, const Finding& finding)
{
    if (!need) {
        need = needOf(view, kind);
    }
    if (kind < need->kind) {
        need->kind = kind;
        need->findings.insert(need->findings.begin(), finding);
    } else {
        need->findings.push_back(finding);
    }
    if (isOfVials(kind) && kind == need->kind) {
        need->subject = need->findings.front().subject;
    }
    if ((isOfVials(kind) || kind == NeedKind::aerating) && kind == need->kind) {
        need->at = need->findings.front().changesAt;
    }
}

/// Which PCDs the findings mean.
void nameParts(const CycleView& view, Need& need)
{
    const auto isNamed = [&need](const std::string& id) {
        return std::ranges::any_of(need.findings,
                                   [&id](const Finding& finding) { return finding.subject == id; });
    };
    for (const ProcessChallengeDevice& pcd : view.folded.record.load.pcds) {
        const auto mark = view.folded.pcdMarks.find(pcd.id);
        const auto name = [&](const std::string& id) {
            if (isNamed(id)) {
                need.parts.push_back(
                    {id, mark == view.folded.pcdMarks.end() ? std::string() : mark->second});
            }
        };
        name(pcd.id);
        for (const Vial& each : pcd.vials) {
            name(each.id);
        }
    }
}

/// When the first vial that may be read by now could have been.
std::optional<Instant> dueSince(const CycleView& view)
{
    std::optional<Instant> since;
    const auto look = [&](const Vial& vial) {
        for (const IndicatorProduct& product : view.folded.record.products) {
            if (product.id == vial.product && vial.incubationStart) {
                const Instant due =
                    *vial.incubationStart + Duration::minutes(product.releaseMinutes);
                if (due <= view.now && (!since || due < *since)) {
                    since = due;
                }
            }
        }
    };
    for (const ProcessChallengeDevice& pcd : view.folded.record.load.pcds) {
        std::ranges::for_each(pcd.vials, look);
    }
    return since;
}

} // namespace

bool isForNow(NeedKind kind)
{
    return kind != NeedKind::biologicalComing && kind != NeedKind::aerating
           && kind != NeedKind::lotExpires;
}

void appendNeeds(const CycleView& view, std::vector<Need>& needs)
{
    if (view.isTest()) {
        return;
    }
    const Decision& decision = view.decision;
    const Phase phase = view.folded.phase;
    if (isWorseThanSigned(view)) {
        Need need = needOf(view, NeedKind::evidenceWorse);
        std::ranges::copy_if(decision.findings, std::back_inserter(need.findings), asksForAnything);
        nameParts(view, need);
        needs.push_back(std::move(need));
        return;
    }
    if (phase == Phase::evidenceChanged) {
        needs.push_back(needOf(view, NeedKind::evidenceChanged));
        return;
    }
    if (phase != Phase::awaitingDecision) {
        return;
    }
    std::optional<Need> vials;
    std::optional<Need> rest;
    const bool isAerating = std::ranges::any_of(decision.findings, [](const Finding& finding) {
        return finding.key == Key::aerationRunning;
    });
    const bool isUnaerated = isBeforeAerationsEnd(decision.findings);
    for (const Finding& finding : decision.findings) {
        if (!asksForAnything(finding)) {
            continue;
        }
        const auto kind = kindOf(finding);
        const bool isFailed = decision.verdict == Verdict::reprocess && kind != NeedKind::growth;
        // Of a load that failed anyway nothing else is asked for but what its vials will show.
        if (isFailed && finding.outcome == Outcome::fails && finding.item < 0) {
            add(rest, view, NeedKind::failed, finding);
        } else if (kind && isOfVials(*kind)) {
            add(vials, view, *kind, finding);
        } else if (isFailed || (isAerating && kind == NeedKind::reading)
                   || (isUnaerated && isForUnloading(finding))) {
            continue; // nothing is taken out to be looked at while it aerates, or before
        } else if (kind && (finding.item < 0 || finding.outcome != Outcome::fails)) {
            add(rest, view, *kind, finding);
        }
    }
    if (!rest && decision.verdict != Verdict::quarantine) {
        rest = needOf(view, decision.verdict == Verdict::release ? NeedKind::signature
                                                                 : NeedKind::failed);
    }
    if (vials && vials->kind == NeedKind::biologicalDue) {
        vials->at = dueSince(view);
    }
    if (rest && vials && rest->kind == NeedKind::failed && vials->kind == NeedKind::controlDead) {
        // No vial of it will show anything: one word about the load is enough.
        rest->findings.insert(rest->findings.end(), vials->findings.begin(), vials->findings.end());
        vials.reset();
    }
    for (std::optional<Need>* const need : {&vials, &rest}) {
        if (*need) {
            nameParts(view, **need);
            needs.push_back(std::move(**need));
        }
    }
}

void sortNeeds(std::vector<Need>& needs)
{
    static constexpr Instant never{std::numeric_limits<std::int64_t>::max()};
    std::ranges::stable_sort(needs, [](const Need& a, const Need& b) {
        return a.kind != b.kind ? a.kind < b.kind : a.at.value_or(never) < b.at.value_or(never);
    });
}

} // namespace loadwarden
