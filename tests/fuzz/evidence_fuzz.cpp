#include "core/exchange/decision_writer.h"
#include "core/exchange/evidence_reader.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string>
#include <utility>

// Any bytes as evidence: no crash, an error has a message, what is read is JSON for a
// general-purpose library too and can be decided on, and a stream of it says the same.

namespace {

void demand(bool isSo)
{
    if (!isSo) {
        std::abort();
    }
}

bool isGood(const std::variant<loadwarden::EvidenceRecord, loadwarden::ReadError>& result)
{
    if (const auto* error = std::get_if<loadwarden::ReadError>(&result)) {
        demand(!error->problems.empty() && error->problems.size() <= loadwarden::mostProblems);
        for (const loadwarden::ReadProblem& problem : error->problems) {
            demand(!problem.message.empty());
            demand(problem.pointer.empty() || problem.pointer.front() == '/');
            demand(problem.place.line > 0 && problem.place.column > 0);
        }
        return false;
    }
    return true;
}

/// What is read is decided on at once and later; items are never better than their load.
void decideOn(loadwarden::EvidenceRecord record)
{
    const loadwarden::Evidence evidence = loadwarden::assemble(std::move(record));
    const loadwarden::Policy policy;
    std::string out;
    for (const std::int64_t ms :
         {std::int64_t{1'900'000'000'000}, std::int64_t{4'000'000'000'000}}) {
        if (evidence.record.test) {
            appendJudgement(out, loadwarden::judgeTest(evidence, policy, {ms}), {{ms}, policy});
            continue;
        }
        const loadwarden::Decision decision = loadwarden::decide(evidence, policy, {ms});
        for (const loadwarden::ItemDecision& item : decision.items) {
            demand(item.verdict >= decision.verdict);
        }
        demand(!decision.nextChangeAt || decision.nextChangeAt->ms > ms);
        appendDecision(out, decision, {{ms}, policy});
    }
    demand(nlohmann::json::accept(out.substr(0, out.find('\n'))));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string text(data, data + size);
    auto read = loadwarden::readEvidence(text, "fuzz", 1, nullptr);
    const bool good = isGood(read);
    if (good) {
        demand(nlohmann::json::accept(text));
        decideOn(std::get<loadwarden::EvidenceRecord>(std::move(read)));
    }

    std::istringstream in(text);
    loadwarden::EvidenceReader reader(in, "fuzz", nullptr);
    std::size_t records = 0;
    std::size_t goodRecords = 0;
    while (const auto next = reader.next()) {
        ++records;
        goodRecords += isGood(*next) ? 1U : 0U;
        demand(records <= size + 1);
    }
    demand(records > 0);
    demand(!good || (records == 1 && goodRecords == 1));
    return 0;
}
