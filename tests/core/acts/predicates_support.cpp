#include "tests/core/acts/predicates_support.h"

#include <algorithm>
#include <functional>
#include <optional>

namespace loadwarden::tests {
namespace {

using Entries = std::span<const Entry>;
using Which = std::function<bool(const Entry&)>;

constexpr std::int64_t leastCelsius = 132'000;
constexpr std::int64_t leastExposure = 4'000;

/// Whether an entry is a version or a voiding of another: names it, or a version of it.
bool isCorrectionOf(Entries entries, const Entry& later, std::int64_t seq)
{
    for (std::int64_t named = later.supersedes; named != 0;
         named = entries[static_cast<std::size_t>(named - 1)].supersedes) {
        if (named == seq) {
            return true;
        }
    }
    return false;
}

/// Whether a second person of higher right corrected an entry.
bool isCorrectedByRight(Entries entries, const Entry& entry)
{
    return std::ranges::any_of(entries, [&](const Entry& later) {
        return isCorrectionOf(entries, later, entry.seq) && later.actor != entry.actor
               && later.role >= Role::lead
               && (later.role > entry.role || later.role == Role::supervisor);
    });
}

/// Whether anybody voided an entry, or a version of it.
bool isVoided(Entries entries, const Entry& entry)
{
    return std::ranges::any_of(entries, [&](const Entry& later) {
        return std::holds_alternative<EntryVoided>(later.act)
               && isCorrectionOf(entries, later, entry.seq);
    });
}

template <class Act>
const Act* about(const Entry& entry, std::string_view id)
{
    return entry.isAbout(id) ? std::get_if<Act>(&entry.act) : nullptr;
}

bool isTemperature(const Entry& entry, bool low)
{
    const auto* const read = about<PhysicalRead>(entry, "ld-1");
    return read != nullptr && read->parameter == Parameter::temperature
           && (read->value.value.thousandths < leastCelsius) == low;
}

bool isExposure(const Entry& entry)
{
    const auto* const read = about<PhysicalRead>(entry, "ld-1");
    return read != nullptr && read->parameter == Parameter::exposure
           && read->value.value.thousandths >= leastExposure;
}

template <class Act>
bool isRead(const Entry& entry, std::string_view id, Seen seen)
{
    const auto* const read = about<Act>(entry, id);
    return read != nullptr && read->seen == seen;
}

bool isEnd(const Entry& entry, CycleOutcome outcome)
{
    const auto* const end = about<CycleEnded>(entry, "ld-1");
    return end != nullptr && end->outcome == outcome;
}

bool isOperating(const Entry& entry)
{
    return entry.role != Role::viewer;
}

/// What must be among the entries where the load may go: entered by somebody who records and, where
/// anybody may take it away, not voided.
std::vector<std::pair<const char*, Which>> needed(Entries entries)
{
    const auto stands = [entries](const Entry& entry) { return !isVoided(entries, entry); };
    return {
        {"a start", [](const Entry& e) { return about<CycleStarted>(e, "ld-1") != nullptr; }},
        {"an end", [](const Entry& e) { return isEnd(e, CycleOutcome::ended); }},
        {"a printout",
         [](const Entry& e) { return about<PrintoutRecorded>(e, "ld-1") != nullptr; }},
        {"a temperature within limits", [](const Entry& e) { return isTemperature(e, false); }},
        {"an exposure within limits", [](const Entry& e) { return isExposure(e); }},
        {"a good chemical indicator in the PCD",
         [=](const Entry& e) {
             return isRead<ChemicalRead>(e, "ci-3", Seen::frontInAcceptZone) && stands(e);
         }},
        {"a vial without growth",
         [=](const Entry& e) {
             return isRead<BiologicalRead>(e, "bv-1", Seen::noGrowth) && stands(e);
         }},
        {"a control that grew",
         [=](const Entry& e) {
             return isRead<BiologicalRead>(e, "bc-1", Seen::growth) && stands(e);
         }},
    };
}

/// What lets the load go only after a second person of higher right corrected it.
std::vector<std::pair<const char*, Which>> harmful()
{
    return {
        {"a low temperature", [](const Entry& e) { return isTemperature(e, true); }},
        {"a rejected chemical indicator",
         [](const Entry& e) { return isRead<ChemicalRead>(e, "ci-3", Seen::frontOnBoundary); }},
        {"a recording of a short exposure",
         [](const Entry& e) {
             const auto* const read = about<TraceRead>(e, "ld-1");
             return read != nullptr && read->findings.exposure == Shown::notMet;
         }},
        {"a report of an indicator that failed",
         [](const Entry& e) { return about<ItemReported>(e, "ld-1") != nullptr; }},
        {"an abort", [](const Entry& e) { return isEnd(e, CycleOutcome::aborted); }},
        {"a dead control",
         [](const Entry& e) { return isRead<BiologicalRead>(e, "bc-1", Seen::noGrowth); }},
    };
}

bool isPositive(const Entry& entry)
{
    return isRead<BiologicalRead>(entry, "bv-1", Seen::growth);
}

/// Whether somebody verified the record, not before a printout and not before any reading that
/// nobody voided. (The same printout entered again is the one that was verified.)
bool isVerified(Entries entries)
{
    const auto isOf = [](const Entry& entry, const Entry& verification) {
        return entry.recordedAt.at <= verification.recordedAt.at;
    };
    return std::ranges::any_of(entries, [&](const Entry& verification) {
        if (about<PhysicalVerified>(verification, "ld-1") == nullptr || !isOperating(verification)
            || isVoided(entries, verification)) {
            return false;
        }
        const bool everyReading = std::ranges::all_of(entries, [&](const Entry& entry) {
            return about<PhysicalRead>(entry, "ld-1") == nullptr || isVoided(entries, entry)
                   || isOf(entry, verification);
        });
        const bool aPrintout = std::ranges::any_of(entries, [&](const Entry& entry) {
            return about<PrintoutRecorded>(entry, "ld-1") != nullptr && isOf(entry, verification);
        });
        return everyReading && aPrintout;
    });
}

/// Whether somebody else than its reader found an unclear indicator good.
bool isSettled(Entries entries, const Entry& unclear)
{
    return std::ranges::any_of(entries, [&](const Entry& entry) {
        return isRead<ChemicalRead>(entry, "ci-3", Seen::frontInAcceptZone) && entry.supersedes == 0
               && entry.actor != unclear.actor && entry.recordedAt.at >= unclear.recordedAt.at;
    });
}

/// Whether somebody read a rejected indicator anew who did not take the rejection out.
bool isReadAnew(Entries entries, const Entry& bad)
{
    return std::ranges::any_of(entries, [&](const Entry& entry) {
        return isRead<ChemicalRead>(entry, "ci-3", Seen::frontInAcceptZone) && entry.supersedes == 0
               && std::ranges::any_of(entries, [&](const Entry& later) {
                      return isCorrectionOf(entries, later, bad.seq) && later.actor != entry.actor;
                  });
    });
}

} // namespace

std::vector<std::string> brokenPredicates(Entries entries, const Decision& decision)
{
    std::vector<std::string> broken;
    const bool positive = std::ranges::any_of(entries, isPositive);
    if (positive
            != (std::ranges::find(decision.findings, Key::biPositive, &Finding::key)
                != decision.findings.end())
        && positive) {
        broken.emplace_back("A positive disappeared.");
    }
    if (decision.verdict != Verdict::release) {
        return broken;
    }
    if (positive) {
        broken.emplace_back("Released with a positive.");
    }
    for (const auto& [what, is] : needed(entries)) {
        if (!std::ranges::any_of(entries,
                                 [&](const Entry& e) { return isOperating(e) && is(e); })) {
            broken.push_back(std::string("Released without ") + what + '.');
        }
    }
    if (!isVerified(entries)) {
        broken.emplace_back("Released without a verification of the newest readings.");
    }
    for (const Entry& entry : entries) {
        for (const auto& [what, is] : harmful()) {
            if (is(entry) && !isCorrectedByRight(entries, entry)) {
                broken.push_back(std::string("Released after ") + what + " that nobody corrected.");
            }
        }
        if (isRead<ChemicalRead>(entry, "ci-3", Seen::unclear) && !isSettled(entries, entry)) {
            broken.emplace_back("Released after an unclear indicator that nobody else read.");
        }
        if (isRead<ChemicalRead>(entry, "ci-3", Seen::frontOnBoundary)
            && !isReadAnew(entries, entry)) {
            broken.emplace_back("Released by who took a bad answer out.");
        }
    }
    return broken;
}

} // namespace loadwarden::tests
