// The evidence that a journal comes to, written and read again.

#include "core/exchange/evidence_writer.h"
#include "tests/core/acts/steps_support.h"
#include "tests/support/evidence_files.h"

#include <rapidcheck/gtest.h>

namespace loadwarden {
namespace {

/// A load that may go, and some acts and corrections after it.
RC_GTEST_PROP(WrittenEvidence, OfAJournalIsReadAsTheSame, ())
{
    static const std::vector<tests::Step> all = tests::steps();
    tests::Journal journal = tests::releasable(*rc::gen::element(Implant::no, Implant::yes));
    Instant now = tests::at(9, 0);
    const int length = *rc::gen::inRange(0, 15);
    for (int i = 0; i < length; ++i) {
        now = now + Duration::milliseconds(*rc::gen::elementOf(tests::gaps));
        (*rc::gen::elementOf(all))(journal, now);
    }
    for (const char* cycle : {"ld-1", "ld-bd"}) {
        const EvidenceRecord record = journal.fold(cycle).record;
        const std::string text = writeEvidence(record);
        const EvidenceRecord again = support::parseEvidence(text);
        RC_ASSERT(writeEvidence(again) == text);
        RC_ASSERT(support::answerText(again, {}, now) == support::answerText(record, {}, now));
        RC_ASSERT(again == record);
    }
}

} // namespace
} // namespace loadwarden
