#include "core/exchange/evidence_writer.h"

#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/object_writer.h"

namespace loadwarden {

std::string writeEvidence(const EvidenceRecord& record)
{
    using namespace evidence_format;
    std::string out;
    (void)ObjectWriter(out).write(recordType, &record);
    out += '\n';
    return out;
}

} // namespace loadwarden
