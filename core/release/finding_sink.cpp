#include "core/release/finding_sink.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool mayReview(const Act& act, Reviewer asked, std::span<const Act* const> raisedBy)
{
    const Role least = asked == Reviewer::lead ? Role::lead : Role::supervisor;
    if (act.role < least) {
        return false;
    }
    const bool raisedIt = std::any_of(raisedBy.begin(), raisedBy.end(), [&act](const Act* raising) {
        return isSamePerson(raising->by, act.by);
    });
    if (asked == Reviewer::secondSupervisor) {
        return !raisedIt;
    }
    return !raisedIt || act.role == Role::supervisor;
}

} // namespace

Finding& FindingSink::add(Key key, Outcome outcome, std::string_view subject)
{
    Finding& finding = m_findings.emplace_back();
    finding.key = key;
    finding.outcome = outcome;
    finding.item = m_item;
    finding.subject = subject;
    return finding;
}

Finding& FindingSink::addOnce(Key key, Outcome outcome, std::string_view subject, Cause cause)
{
    // What is said of one item, or of the load, stands together at the end.
    for (auto finding = m_findings.rbegin();
         finding != m_findings.rend() && finding->item == m_item; ++finding) {
        if (finding->key == key && finding->subject == subject && finding->cause == cause) {
            finding->outcome = std::max(finding->outcome, outcome);
            return *finding;
        }
    }
    Finding& finding = add(key, outcome, subject);
    finding.cause = cause;
    return finding;
}

Finding& FindingSink::addReview(Key key, Reviewer reviewer, std::string_view subject,
                                Instant newest, std::span<const Act* const> raisedBy)
{
    Finding& finding = add(key, Outcome::review, subject);
    finding.reviewer = reviewer;
    if (newest != Instant{INT64_MIN}) {
        finding.newest = newest;
    }
    const std::string_view keyText = textOf(key);
    finding.reviewed = std::any_of(m_reviews.begin(), m_reviews.end(), [&](const Review& review) {
        return review.answer == ReviewAnswer::isolated && review.finding == keyText
               && review.subject == subject && stands(review.act, m_now) && !review.why.empty()
               && review.newestSeen <= review.act.recordedAt && review.newestSeen >= newest
               && mayReview(review.act, reviewer, raisedBy);
    });
    if (finding.reviewed) {
        finding.outcome = Outcome::note;
    }
    return finding;
}

Finding& FindingSink::addReviewOfNewest(Key key, Reviewer reviewer, std::string_view subject,
                                        std::pmr::vector<const Act*> raisedBy)
{
    const Instant newest = newestOf(raisedBy);
    std::erase_if(raisedBy, [newest](const Act* act) { return act->recordedAt != newest; });
    return addReview(key, reviewer, subject, newest, raisedBy);
}

Instant newestOf(std::span<const Act* const> acts)
{
    Instant newest = acts.front()->recordedAt;
    for (const Act* act : acts) {
        newest = std::max(newest, act->recordedAt);
    }
    return newest;
}

Finding& FindingSink::addReview(Key key, Reviewer reviewer, std::string_view subject,
                                const Act& raisedBy)
{
    const Act* const acts[] = {&raisedBy};
    return addReview(key, reviewer, subject, raisedBy.recordedAt, acts);
}

} // namespace loadwarden
