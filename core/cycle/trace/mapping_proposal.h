#pragma once

#include "core/cycle/trace/trace_mapping.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

enum class ProposedItem : std::uint8_t {
    encoding,
    separator,
    decimal,
    header,
    timeColumn,
    timeForm,
    dateOrder,
    counter,
    role,
    unit,
    zero
};

/// Number of items; they run from 0.
inline constexpr std::size_t proposedItemCount = 11;

/// How sure an item is: the file says it, its values point to it, or nothing does.
enum class Sureness : std::uint8_t { stated, likely, guessed };

/// Why an item is proposed.
enum class ProposalReason : std::uint8_t {
    byteOrderMark, ///< the file begins with the mark of its encoding
    bytesFit,      ///< its bytes can be read so, and hardly otherwise
    linesAgree,    ///< read so, most fields of the samples are numbers
    wordsAboveNumbers,
    headerWords, ///< the header says so; text: the header's field
    valuesFit,   ///< the values are what such values are
    noHint       ///< nothing speaks for it; it is what is usual
};

inline constexpr std::size_t proposalReasonCount = 7;

struct ProposalNote {
    ProposedItem item = ProposedItem::encoding;
    std::size_t column = 0; ///< from 1; 0: of the file
    Sureness sureness = Sureness::guessed;
    ProposalReason why = ProposalReason::noHint;
    std::string text{};
};

/// How a file might be read, for a person to confirm. It is not used before somebody did.
struct MappingProposal {
    TraceMapping mapping;            ///< faultOf() says what a person must still give
    std::vector<ProposalNote> notes; ///< one for each item, by file and then by column
};

/// Proposes a mapping from the first lines of a file, by the form of its text and by plain words
/// of the trade in its header. Answers for any bytes.
[[nodiscard]] MappingProposal proposeMapping(std::string_view bytes);

/// A line of the file in fields, to be shown.
struct ShownLine {
    std::int64_t line = 0; ///< from 1
    std::vector<std::string> fields;
};

/// The first lines as a mapping's encoding and separator cut them, from line `first`.
[[nodiscard]] std::vector<ShownLine> shownLines(std::string_view bytes, const TraceMapping& mapping,
                                                std::int64_t first, std::size_t most);

} // namespace loadwarden
