#include "core/exchange/evidence_reader.h"

#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/object_reader.h"
#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/record_draft.h"

namespace loadwarden {

std::variant<EvidenceRecord, ReadError> readEvidence(std::string_view text,
                                                     const std::string& source, std::int64_t record,
                                                     const SpecificationLibrary* library,
                                                     TextPlace begin)
{
    using namespace evidence_format;
    std::string problem = wrongEncoding(text.substr(0, 4));
    const std::size_t nul = text.find('\0');
    if (problem.empty() && nul != std::string_view::npos) {
        return ReadError{
            source, record, {{placesOf(text, {&nul, 1}, begin).front(), {}, nulProblem()}}};
    }
    if (problem.empty() && text.size() > mostRecordBytes) {
        problem = tooLongProblem();
    }
    if (!problem.empty()) {
        return ReadError{source, record, {{begin, {}, std::move(problem)}}};
    }
    RecordDraft draft;
    ObjectReader reader(text, begin, library);
    EvidenceRecord& evidence = draft;
    const bool isGood = reader.read(recordType, &evidence);
    if (draft.zoneIsKnown && !reader.offsetsFit(draft.zone)) {
        // The zone may stand behind the times: read once more, so that each is said in its place.
        RecordDraft again;
        EvidenceRecord& strictly = again;
        ObjectReader strict(text, begin, library, &draft.zone);
        (void)strict.read(recordType, &strictly);
        return ReadError{source, record, strict.takeProblems(), strict.hasMore()};
    }
    if (!isGood) {
        return ReadError{source, record, reader.takeProblems(), reader.hasMore()};
    }
    return std::move(evidence);
}

EvidenceReader::EvidenceReader(std::istream& in, std::string sourceName,
                               const SpecificationLibrary* library)
    : m_splitter(in), m_source(std::move(sourceName)), m_library(library)
{
}

std::optional<std::variant<EvidenceRecord, ReadError>> EvidenceReader::next()
{
    std::optional<evidence_format::RecordText> record = m_splitter.next();
    if (!record) {
        return std::nullopt;
    }
    if (!record->problem.empty()) {
        return ReadError{
            m_source, record->record, {{record->place, {}, std::move(record->problem)}}};
    }
    return readEvidence(record->text, m_source, record->record, m_library, record->place);
}

} // namespace loadwarden
