#pragma once

#include "core/loads/load_record.h"
#include "core/release/finding.h"

#include <memory_resource>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Where rules put what they found. Answers findings that need a review with the reviews of the
/// load (RULES.md, 5, reviews).
class FindingSink {
public:
    /// `loadEnd` is the load's corrected end, from which on reviews count; its operator
    /// (`operatedBy`, empty: not known) reviews nothing of it, unless a supervisor.
    FindingSink(std::vector<Finding>& findings, std::span<const Review> reviews,
                std::optional<Instant> loadEnd, std::string_view operatedBy, Instant now,
                std::pmr::memory_resource* memory)
        : m_findings(findings),
          m_reviews(reviews),
          m_reviewFaults(reviews.size(), Cause::noFinding, memory),
          m_loadEnd(loadEnd),
          m_operatedBy(operatedBy),
          m_now(now)
    {
    }

    /// The item that the following findings are about; -1: the load.
    void setItem(std::int32_t item) { m_item = item; }

    Finding& add(Key key, Outcome outcome, std::string_view subject = {});

    /// A finding that waits for a review, or the note that a review made of it. `newest` is the
    /// newest entry behind it (Instant{INT64_MIN} where there is none); `raisedBy` the acts that
    /// raised it, whose authors may not review it unless they are supervisors (never, where a
    /// second supervisor is asked for).
    Finding& addReview(Key key, Reviewer reviewer, std::string_view subject, Instant newest,
                       std::span<const Act* const> raisedBy);

    /// The same, raised by those of some acts that were recorded last, which is the newest.
    Finding& addReviewOfNewest(Key key, Reviewer reviewer, std::string_view subject,
                               std::pmr::vector<const Act*> raisedBy);

    /// The same, raised by one act, its recordedAt the newest.
    Finding& addReview(Key key, Reviewer reviewer, std::string_view subject, const Act& raisedBy);

    /// Notes the reviews that turned nothing into a note, each with the first reason why not. After
    /// all rules that ask for reviews.
    void sayUncountedReviews();

    [[nodiscard]] std::size_t size() const { return m_findings.size(); }

    /// Says a finding only once for its key, item, subject and cause.
    Finding& addOnce(Key key, Outcome outcome, std::string_view subject = {},
                     Cause cause = Cause::none);

private:
    /// Why a review does not answer a finding; none: it does.
    [[nodiscard]] Cause faultOf(const Review& review, Reviewer reviewer, Instant newest,
                                std::span<const Act* const> raisedBy) const;

    std::vector<Finding>& m_findings;
    std::span<const Review> m_reviews;
    std::pmr::vector<Cause> m_reviewFaults; ///< beside m_reviews; none: it answered something
    std::optional<Instant> m_loadEnd;
    std::string_view m_operatedBy;
    Instant m_now;
    std::int32_t m_item = -1;
};

/// The latest recordedAt of some acts, which must not be empty.
[[nodiscard]] Instant newestOf(std::span<const Act* const> acts);

} // namespace loadwarden
