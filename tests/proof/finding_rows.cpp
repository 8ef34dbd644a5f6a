#include "tests/proof/finding_rows.h"

#include "tests/support/evidence_files.h"

#include <gtest/gtest.h>

namespace loadwarden::proof {

Act act(const std::string& by, Role role, Instant at)
{
    return {by, role, at, at};
}

Instant end(const EvidenceRecord& record)
{
    return record.load.end.value();
}

ChemicalIndicator& pcdIndicator(EvidenceRecord& record)
{
    return record.load.pcds.front().indicators.front();
}

Vial& vialOf(EvidenceRecord& record)
{
    return record.load.pcds.front().vials.front();
}

IndicatorLot& lotOf(EvidenceRecord& record, const std::string& product)
{
    return *std::find_if(record.lots.begin(), record.lots.end(),
                         [&](const IndicatorLot& lot) { return lot.product == product; });
}

Limit& limitOf(EvidenceRecord& record, Parameter parameter)
{
    auto& limits = record.specification->limits;
    return *std::find_if(limits.begin(), limits.end(),
                         [&](const Limit& limit) { return limit.parameter == parameter; });
}

ParameterReading& readingOf(EvidenceRecord& record, Parameter parameter)
{
    auto& readings = record.load.readings;
    return *std::find_if(readings.begin(), readings.end(), [&](const ParameterReading& reading) {
        return reading.parameter == parameter;
    });
}

void confirm(EvidenceRecord& record, PrintoutField field)
{
    record.load.printoutAnswers.push_back(
        {PrintoutAnswer::recordRight, field,
         act("p3", Role::lead, end(record) + Duration::hours(1))});
}

void expectSaid(const Row& row)
{
    SCOPED_TRACE(row.how);
    EvidenceRecord record = support::base(row.base);
    row.change(record);
    const Instant now = record.decideAt.value();
    const Evidence evidence = assemble(std::move(record));
    const std::vector<Finding> findings = evidence.record.test
                                              ? judgeTest(evidence, Policy{}, now).findings
                                              : decide(evidence, Policy{}, now).findings;
    const auto isAsked = [&row](const Finding& finding) {
        return finding.key == row.key && (!row.said || finding.subject == row.subject);
    };
    const auto found = std::find_if(findings.begin(), findings.end(), isAsked);
    ASSERT_EQ(found != findings.end(), row.said) << textOf(row.key) << " of " << row.subject;
    if (row.said) {
        EXPECT_EQ(textOf(found->outcome), textOf(row.outcome));
        EXPECT_EQ(textOf(found->cause), textOf(row.cause));
        EXPECT_EQ(std::count_if(findings.begin(), findings.end(), isAsked), 1);
    }
}

} // namespace loadwarden::proof
