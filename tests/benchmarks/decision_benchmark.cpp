// How fast and how frugal the decision is: figures of one run on one machine, nothing is judged
// here. The aims: 1,000,000 decisions/s and at most 6 allocations each for a load of 12 items with
// 2 findings, 20,000 loads/s from JSON to decision, cost linear in the number of items.

#include "core/exchange/decision_writer.h"
#include "core/exchange/evidence_reader.h"
#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <benchmark/benchmark.h>
#include <nlohmann/json.hpp>

#include <cstdio>
#include <cstdlib>
#include <new>
#include <sstream>

namespace {

std::size_t allocations = 0;

} // namespace

// Counts what the decision allocates; benchmarks only.
void* operator new(std::size_t size)
{
    ++allocations;
    if (void* memory = std::malloc(size == 0 ? 1 : size)) {
        return memory;
    }
    throw std::bad_alloc();
}
void operator delete(void* memory) noexcept
{
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept
{
    std::free(memory);
}

namespace loadwarden {
namespace {

/// The JSON of a prevacuum load of some items that waits for two things: the signature under its
/// physical record and the reading of one package's external indicator.
std::string loadJson(std::size_t items)
{
    auto record = nlohmann::json::parse(
        support::readFile("tests/data/worked_cases/bases/steam-prevacuum.json"));
    record["sterilizer"]["cycles"][1]["vials"] = nlohmann::json::array();
    auto& load = record["load"];
    const auto item = load["items"][0];
    load["items"] = nlohmann::json::array();
    for (std::size_t i = 0; i < items; ++i) {
        auto next = item;
        next["label"] = "IT-" + std::to_string(i);
        load["items"].push_back(next);
    }
    load["items"][0]["external"]["readings"] = nlohmann::json::array();
    return record.dump();
}

Evidence evidenceOf(std::size_t items)
{
    return assemble(support::parseEvidence(loadJson(items)));
}

void decideLoad(benchmark::State& state)
{
    const Evidence evidence = evidenceOf(static_cast<std::size_t>(state.range(0)));
    const Policy policy;
    const Instant now = evidence.record.decideAt.value();
    const Decision once = decide(evidence, policy, now);
    const std::size_t before = allocations;
    for (auto _ : state) {
        benchmark::DoNotOptimize(decide(evidence, policy, now));
    }
    state.SetItemsProcessed(state.iterations());
    state.SetComplexityN(state.range(0));
    state.counters["allocations"] =
        static_cast<double>(allocations - before) / static_cast<double>(state.iterations());
    state.counters["findings"] = static_cast<double>(once.findings.size());
}
BENCHMARK(decideLoad)->Arg(12)->Unit(benchmark::kNanosecond);
BENCHMARK(decideLoad)
    ->Name("decideLoadOfManyItems")
    ->RangeMultiplier(4)
    ->Range(16, 1024)
    ->Complexity();

void assembleLoad(benchmark::State& state)
{
    const EvidenceRecord record = support::parseEvidence(loadJson(12));
    for (auto _ : state) {
        benchmark::DoNotOptimize(assemble(record));
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(assembleLoad);

void jsonToDecision(benchmark::State& state)
{
    const std::string json = loadJson(12);
    const Policy policy;
    std::string out;
    for (auto _ : state) {
        out.clear();
        auto read = readEvidence(json, "benchmark", 1, nullptr);
        const Evidence evidence = assemble(std::get<EvidenceRecord>(std::move(read)));
        const Instant now = evidence.record.decideAt.value();
        appendDecision(out, decide(evidence, policy, now), {now, policy});
        benchmark::DoNotOptimize(out.data());
    }
    state.SetItemsProcessed(state.iterations());
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(json.size()));
}
BENCHMARK(jsonToDecision);

void readRecord(benchmark::State& state)
{
    const std::string json = loadJson(12);
    for (auto _ : state) {
        benchmark::DoNotOptimize(readEvidence(json, "benchmark", 1, nullptr));
    }
    state.SetItemsProcessed(state.iterations());
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(json.size()));
}
BENCHMARK(readRecord);

/// Records of a stream, each on one line (indent -1) or typed with line breaks.
void readStream(benchmark::State& state)
{
    constexpr std::int64_t records = 50;
    const std::string json =
        nlohmann::ordered_json::parse(loadJson(12)).dump(static_cast<int>(state.range(0))) + '\n';
    std::string text;
    for (std::int64_t i = 0; i < records; ++i) {
        text += json;
    }
    for (auto _ : state) {
        std::istringstream in(text);
        EvidenceReader reader(in, "benchmark", nullptr);
        while (auto next = reader.next()) {
            benchmark::DoNotOptimize(std::get<EvidenceRecord>(*next));
        }
    }
    state.SetItemsProcessed(state.iterations() * records);
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(readStream)->Arg(-1)->Arg(1)->ArgName("indent");

} // namespace
} // namespace loadwarden

BENCHMARK_MAIN();
