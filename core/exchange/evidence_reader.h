#pragma once

#include "core/exchange/evidence/record_splitter.h"
#include "core/exchange/read_error.h"
#include "core/release/evidence.h"

#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace loadwarden {

class SpecificationLibrary;

/// Reads one record of evidence, version 1: resources/schema/evidence.schema.json says what it is.
/// The text must be one JSON object (RFC 8259) in UTF-8 without byte order mark. Everything that
/// the schema refuses is refused, and what its description names besides; also a record with more
/// than 20,000 objects. Decimals are exact; nothing is guessed or put right.
///
/// All that is wrong in a record is told, as far as its text can be followed.
///
/// `source`, `record` and `begin`, where the text begins in its file, only name the place in an
/// error. Specifications that are given by name are
/// looked up in the library; without one none is known. Keeps nothing between calls: records may be
/// read on several threads at once.
[[nodiscard]] std::variant<EvidenceRecord, ReadError>
readEvidence(std::string_view text, const std::string& source, std::int64_t record,
             const SpecificationLibrary* library, TextPlace begin = {});

/// Cuts a stream into the texts of its records, for readers who read them on several threads.
using EvidenceSplitter = evidence_format::RecordSplitter;

/// Reads the records of a stream: one object, or several one after the other with white space
/// between them (JSON Lines among them). A record is held at a time; 16 MiB are the most that it
/// may have, and 64 the most objects and lists in one another. Stream and library outlive the
/// reader.
class EvidenceReader {
public:
    EvidenceReader(std::istream& in, std::string sourceName, const SpecificationLibrary* library);

    /// The next record or what is wrong with it; nullopt at the end. After an error it goes on with
    /// the next record (see RecordSplitter). A stream without any record is an error.
    [[nodiscard]] std::optional<std::variant<EvidenceRecord, ReadError>> next();

private:
    EvidenceSplitter m_splitter;
    std::string m_source;
    const SpecificationLibrary* m_library;
};

} // namespace loadwarden
