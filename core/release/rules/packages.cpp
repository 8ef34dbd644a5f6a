#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

/// Packages that speak against their load, with the acts that say so.
struct Objecting {
    explicit Objecting(std::pmr::memory_resource* memory) : acts(memory) {}

    std::pmr::vector<const Act*> acts;
    int count = 0;
};

void addReview(FindingSink& sink, Key key, Reviewer reviewer, const Objecting& against)
{
    sink.addReview(key, reviewer, {}, newestOf(against.acts), against.acts).count = against.count;
}

bool countsAsRejected(const ItemIndicators& item)
{
    return item.external.state == ChemicalState::rejected
           && (item.externalAsked || !item.external.absent);
}

} // namespace

void packages(const View& view, FindingSink& sink)
{
    if (!view.evidence.hasObjection) {
        return;
    }
    Objecting rejected(view.memory);
    Objecting wet(view.memory);
    bool anyExternalRejected = false;
    bool anyExternalAccepted = false;
    for (std::size_t i = 0; i < view.items.size(); ++i) {
        const ItemIndicators& item = view.items[i];
        const std::size_t before = rejected.acts.size();
        if (countsAsRejected(item)) {
            rejected.acts.push_back(item.external.rejectedBy);
        }
        anyExternalRejected =
            anyExternalRejected
            || (item.external.state == ChemicalState::rejected && !item.external.absent);
        anyExternalAccepted = anyExternalAccepted || item.external.state == ChemicalState::accepted;
        for (const ChemicalJudgement& internal : view.internalsOf(i)) {
            if (internal.state == ChemicalState::rejected) {
                rejected.acts.push_back(internal.rejectedBy);
            }
        }
        rejected.count += rejected.acts.size() > before ? 1 : 0;

        bool isWet = false;
        for (const PackageCheck& check : view.load.items[i].checks) {
            if (check.dry && !*check.dry) {
                wet.acts.push_back(&check.act);
                isWet = true;
            }
        }
        wet.count += isWet ? 1 : 0;
    }
    if (rejected.count >= view.policy.rejectedForSupervisor) {
        addReview(sink, Key::packagesSeveralRejected, Reviewer::supervisor, rejected);
    } else if (rejected.count > 0) {
        addReview(sink, Key::packagesOneRejected, Reviewer::lead, rejected);
    }
    if (wet.count >= view.policy.wetForSupervisor) {
        addReview(sink, Key::packagesWet, Reviewer::supervisor, wet);
    }
    if (anyExternalRejected && !anyExternalAccepted) {
        sink.add(Key::packagesAllUnchanged, Outcome::fails);
    }
}

} // namespace loadwarden::rules
