#include "core/exchange/decision_writer.h"

#include "core/quantities/json_text.h"
#include "core/quantities/thousandths.h"

namespace loadwarden {

namespace {

/// Appends members of one object, with the commas between them.
class ObjectWriter {
public:
    explicit ObjectWriter(std::string& out) : m_out(out) { m_out += '{'; }

    void text(std::string_view name, std::string_view value)
    {
        member(name);
        appendJsonString(m_out, value);
    }
    void textUnlessEmpty(std::string_view name, std::string_view value)
    {
        if (!value.empty()) {
            text(name, value);
        }
    }
    void textOrNull(std::string_view name, std::string_view value)
    {
        if (value.empty()) {
            raw(name, "null");
        } else {
            text(name, value);
        }
    }
    void moment(std::string_view name, const std::optional<Instant>& value)
    {
        if (value) {
            text(name, formatUtc(*value));
        }
    }
    void quantity(std::string_view name, const std::optional<Quantity>& value)
    {
        if (value) {
            member(name);
            m_out += "{\"";
            m_out += textOf(value->unit);
            m_out += "\":";
            appendThousandths(m_out, value->thousandths);
            m_out += '}';
        }
    }
    void raw(std::string_view name, std::string_view json)
    {
        member(name);
        m_out += json;
    }
    /// The name of a member whose value the caller appends.
    void member(std::string_view name)
    {
        if (!m_first) {
            m_out += ',';
        }
        m_first = false;
        m_out += '"';
        m_out += name;
        m_out += "\":";
    }
    void close() { m_out += '}'; }

private:
    std::string& m_out;
    bool m_first = true;
};

void appendFinding(std::string& out, const Finding& finding, const FindingSay& say)
{
    ObjectWriter object(out);
    object.text("rule", textOf(ruleOf(finding.key)));
    object.text("key", textOf(finding.key));
    object.text("outcome", textOf(finding.outcome));
    object.textUnlessEmpty("subject", finding.subject);
    object.textUnlessEmpty("because", textOf(finding.cause));
    if (finding.reviewer != Reviewer::none) {
        object.text("reviewer", textOf(finding.reviewer));
    }
    if (finding.reviewed) {
        object.raw("reviewed", "true");
    }
    object.moment("changesAt", finding.changesAt);
    object.moment("newest", finding.newest);
    object.quantity("value", finding.value);
    object.quantity("limit", finding.limit);
    if (finding.count != 0) {
        object.raw("count", std::to_string(finding.count));
    }
    if (say) {
        const FindingText text = say(finding);
        object.textUnlessEmpty("says", text.says);
        object.textUnlessEmpty("next", text.next);
        object.textUnlessEmpty("source", text.source);
    }
    object.close();
}

/// The moment and the policy, members of a decision.
void appendBasis(std::string& out, ObjectWriter& object, const DecisionBasis& basis)
{
    object.text("asOf", formatUtc(basis.asOf));
    object.member("policy");
    ObjectWriter policy(out);
    policy.text("id", basis.policy.id);
    policy.raw("revision", std::to_string(basis.policy.revision));
    policy.text("digest", basis.policy.digest);
    policy.close();
}

using Iterator = std::vector<Finding>::const_iterator;

/// Appends the findings from `next` on that belong to `item`, and answers where the rest begin.
Iterator appendFindingsOf(std::string& out, std::int32_t item, Iterator next, Iterator end,
                          const FindingSay& say)
{
    out += '[';
    for (bool first = true; next != end && next->item == item; ++next, first = false) {
        if (!first) {
            out += ',';
        }
        appendFinding(out, *next, say);
    }
    out += ']';
    return next;
}

} // namespace

void appendDecision(std::string& out, const Decision& decision, const DecisionBasis& basis,
                    const FindingSay& say)
{
    ObjectWriter object(out);
    object.textOrNull("lot", decision.lot);
    object.text("verdict", textOf(decision.verdict));
    appendBasis(out, object, basis);
    object.member("findings");
    Iterator next =
        appendFindingsOf(out, -1, decision.findings.begin(), decision.findings.end(), say);
    object.member("items");
    out += '[';
    std::int32_t index = 0;
    for (const ItemDecision& item : decision.items) {
        if (index != 0) {
            out += ',';
        }
        ObjectWriter itemObject(out);
        itemObject.text("label", item.label);
        itemObject.text("verdict", textOf(item.verdict));
        itemObject.member("findings");
        next = appendFindingsOf(out, index, next, decision.findings.end(), say);
        itemObject.close();
        ++index;
    }
    out += ']';
    if (decision.nextChangeAt) {
        object.moment("nextChangeAt", decision.nextChangeAt);
    } else {
        object.raw("nextChangeAt", "null");
    }
    object.close();
    out += '\n';
}

void appendJudgement(std::string& out, const TestJudgement& judgement, const DecisionBasis& basis,
                     const FindingSay& say)
{
    ObjectWriter object(out);
    object.textOrNull("lot", judgement.lot);
    object.text("test", textOf(judgement.result));
    appendBasis(out, object, basis);
    object.member("findings");
    // Findings of a test belong to no item; the whole list, whatever stands there.
    out += '[';
    for (std::size_t i = 0; i < judgement.findings.size(); ++i) {
        if (i != 0) {
            out += ',';
        }
        appendFinding(out, judgement.findings[i], say);
    }
    out += ']';
    object.close();
    out += '\n';
}

} // namespace loadwarden
