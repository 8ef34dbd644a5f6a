#include "tests/support/evidence_files.h"

#include "core/exchange/decision_writer.h"
#include "core/exchange/evidence_reader.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/specification_library.h"
#include "core/release/assemble.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace loadwarden::support {

std::string readFile(const std::string& pathBelowRoot)
{
    std::ifstream in(std::string(LOADWARDEN_SOURCE_DIR) + "/" + pathBelowRoot, std::ios::binary);
    if (!in) {
        throw std::runtime_error("cannot read " + pathBelowRoot);
    }
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

EvidenceRecord parseEvidence(std::string_view json)
{
    static const SpecificationLibrary library = SpecificationLibrary::builtIn();
    auto read = readEvidence(json, "test", 1, &library);
    if (const auto* error = std::get_if<ReadError>(&read)) {
        const ReadProblem& problem = error->problems.front();
        throw std::runtime_error(problem.pointer + ": " + problem.message);
    }
    return std::get<EvidenceRecord>(std::move(read));
}

EvidenceRecord base(const std::string& name)
{
    return parseEvidence(readFile("tests/data/worked_cases/bases/" + name + ".json"));
}

Policy policyWith(const std::vector<PolicyChange>& changes)
{
    std::string toml = readFile("resources/policies/us-hospital.toml");
    if (!changes.empty()) { // other settings need an id of their own
        const std::string id = "id = \"us-hospital\"";
        const std::size_t at = toml.find(id);
        if (at == std::string::npos) {
            throw std::runtime_error("the default policy bears another id");
        }
        toml.replace(at, id.size(), "id = \"changed\"");
    }
    for (const PolicyChange& change : changes) {
        const std::string head = "[" + change.setting + "]\nvalue = ";
        const std::size_t at = toml.find(head);
        if (at == std::string::npos) {
            throw std::runtime_error("no setting " + change.setting);
        }
        const std::size_t begin = at + head.size();
        toml.replace(begin, toml.find('\n', begin) - begin, change.value);
    }
    auto read = readPolicy(toml, "test");
    if (const auto* errors = std::get_if<std::vector<PolicyError>>(&read)) {
        throw std::runtime_error(errors->front().field + ": " + errors->front().message);
    }
    return std::get<Policy>(std::move(read));
}

Decision decideRecord(EvidenceRecord record, const Policy& policy)
{
    const Instant now = record.decideAt.value();
    return decideRecordAt(std::move(record), policy, now);
}

Decision decideRecordAt(EvidenceRecord record, const Policy& policy, Instant now)
{
    return decide(assemble(std::move(record)), policy, now);
}

std::string answerText(EvidenceRecord record, const Policy& policy, Instant now)
{
    const Evidence evidence = assemble(std::move(record));
    std::string text;
    if (evidence.record.test) {
        appendJudgement(text, judgeTest(evidence, policy, now), {now, policy});
    } else {
        appendDecision(text, decide(evidence, policy, now), {now, policy});
    }
    return text;
}

std::string describe(const Decision& decision)
{
    std::ostringstream text;
    text << textOf(decision.verdict) << '\n';
    for (const Finding& finding : decision.findings) {
        text << "  " << textOf(finding.key) << ' ' << textOf(finding.outcome);
        if (!finding.subject.empty()) {
            text << " (" << finding.subject << ')';
        }
        if (finding.item >= 0) {
            text << " item " << decision.items[static_cast<std::size_t>(finding.item)].label;
        }
        text << '\n';
    }
    return text.str();
}

} // namespace loadwarden::support
