#include "core/exchange/evidence_writer.h"

#include "core/exchange/evidence/object_reader.h"
#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/object_writer.h"
#include "core/exchange/evidence/record_splitter.h"

#include <stdexcept>

namespace loadwarden {

std::string writeEvidence(const EvidenceRecord& record)
{
    using namespace evidence_format;
    std::string out;
    ObjectWriter writer(out);
    (void)writer.write(recordType, &record);
    if (out.size() > mostRecordBytes || writer.objects() > mostObjects) {
        throw std::length_error("evidence cannot state a record of " + std::to_string(out.size())
                                + " bytes and " + std::to_string(writer.objects())
                                + " objects: at most " + std::to_string(mostRecordBytes) + " and "
                                + std::to_string(mostObjects) + " are read");
    }
    out += '\n';
    return out;
}

} // namespace loadwarden
