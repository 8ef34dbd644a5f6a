#include "core/exchange/evidence_reader.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>

// Any bytes as evidence: no crash, an error has a message, what is read is JSON for a
// general-purpose library too, and a stream of it says the same.

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
        demand(!error->message.empty());
        demand(error->pointer.empty() || error->pointer.front() == '/');
        return false;
    }
    return true;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string text(data, data + size);
    const bool good = isGood(loadwarden::readEvidence(text, "fuzz", 1, nullptr));
    if (good) {
        demand(nlohmann::json::accept(text));
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
