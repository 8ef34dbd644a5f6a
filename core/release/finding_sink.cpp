#include "core/release/finding_sink.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool isEnough(const Act& act, Reviewer asked)
{
    return act.role >= (asked == Reviewer::lead ? Role::lead : Role::supervisor);
}

/// Whether a reviewer raised the finding himself, supervisors apart where one of them is enough.
bool isOwn(const Act& act, Reviewer asked, std::span<const Act* const> raisedBy)
{
    const bool raisedIt = std::any_of(raisedBy.begin(), raisedBy.end(), [&act](const Act* raising) {
        return isSamePerson(raising->by, act.by);
    });
    return raisedIt && (asked == Reviewer::secondSupervisor || act.role != Role::supervisor);
}

/// Whether a review answers a finding with `isolated`.
bool answers(const Review& review, Key key, std::string_view subject)
{
    return review.answer == ReviewAnswer::isolated && review.finding == textOf(key)
           && review.subject == subject;
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
    for (std::size_t i = 0; i < m_reviews.size(); ++i) {
        const Review& review = m_reviews[i];
        if (!answers(review, key, subject)) {
            continue;
        }
        const Cause fault = faultOf(review, reviewer, newest, raisedBy);
        finding.reviewed = finding.reviewed || fault == Cause::none;
        m_reviewFaults[i] =
            m_reviewFaults[i] == Cause::noFinding ? fault : std::min(m_reviewFaults[i], fault);
    }
    if (finding.reviewed) {
        finding.outcome = Outcome::note;
    }
    return finding;
}

Cause FindingSink::faultOf(const Review& review, Reviewer reviewer, Instant newest,
                           std::span<const Act* const> raisedBy) const
{
    if (!stands(review.act, m_now)) {
        return isSigned(review.act) ? Cause::timesImpossible : Cause::unsignedAct;
    }
    if (!isEnough(review.act, reviewer)) {
        return Cause::role;
    }
    if (!isNamed(review.why)) {
        return Cause::noWhy;
    }
    if (!m_loadEnd || !isFromEndOn(review.act.recordedAt, *m_loadEnd)) {
        return Cause::beforeEnd;
    }
    if (review.newestSeen > review.act.recordedAt || review.newestSeen < newest) {
        return Cause::newer;
    }
    if (isOwn(review.act, reviewer, raisedBy)) {
        return Cause::raisedIt;
    }
    return review.act.role != Role::supervisor && isSamePerson(review.act.by, m_operatedBy)
               ? Cause::ownLoad
               : Cause::none;
}

void FindingSink::sayUncountedReviews()
{
    for (std::size_t i = 0; i < m_reviews.size(); ++i) {
        const Review& review = m_reviews[i];
        if (review.answer != ReviewAnswer::isolated || m_reviewFaults[i] == Cause::none) {
            continue;
        }
        // Who does not sign, or when, matters before whether there is anything to answer.
        const Cause fault = stands(review.act, m_now) ? m_reviewFaults[i]
                            : isSigned(review.act)    ? Cause::timesImpossible
                                                      : Cause::unsignedAct;
        addOnce(Key::reviewNotCounted, Outcome::note, review.finding, fault);
    }
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
