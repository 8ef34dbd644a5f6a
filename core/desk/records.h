#pragma once

#include "core/cycle/specification.h"
#include "core/desk/named_id.h"
#include "core/quantities/date.h"
#include "core/quantities/zone.h"
#include "core/release/decision.h"
#include "core/store/finder.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// How a load was signed, as somebody asks for it.
enum class SignedWanted : std::uint8_t { any, release, quarantine, reprocess, nothing };

/// Which loads and tests somebody looks for. What is left empty asks for nothing; all that is not
/// must hold together.
struct RecordQuestion {
    std::string lot;                      ///< a lot control number begins so; a to z or A to Z
    std::string label;                    ///< of an item in it: begins so, blanks and case apart
    std::string sterilizer;               ///< sz-
    std::optional<Date> from;             ///< the first facility day on which it began
    std::optional<Date> to;               ///< the last
    SignedWanted signedAs{};              ///< by its newest disposition
    std::string person;                   ///< st-: who signed that
    std::vector<std::string> productLots; ///< pl-: any of them is in it

    friend bool operator==(const RecordQuestion&, const RecordQuestion&) = default;
};

/// A load or a test as a list shows it. What stands of it is for its record to say.
struct RecordRow {
    std::string cycle;              ///< ld-
    std::string lot;                ///< as last said; empty: not said
    std::string sterilizer;         ///< sz-; of an imported load, without one, as its record says
    std::optional<Purpose> purpose; ///< nullopt: not said, or imported
    bool isImported = false;        ///< of the time before this journal
    bool hasEnded = false;
    Instant at{};                    ///< when it began; before that is said, when it was reserved
    std::optional<Verdict> signedAs; ///< meaning of the newest disposition
    std::string signedBy;            ///< st-; empty: nobody
    bool hasMoreSince = false;       ///< something about it was recorded after it was signed

    [[nodiscard]] bool isTest() const
    {
        return purpose && *purpose != Purpose::routine && *purpose != Purpose::immediateUse;
    }

    friend bool operator==(const RecordRow&, const RecordRow&) = default;
};

/// How much one look may cost. The lists of few cycles are put in order whole.
struct RecordLimits {
    std::size_t rows = 100;      ///< found in one look
    std::int64_t cycles = 400;   ///< looked at
    std::int64_t entries = 4000; ///< read to look for a product's lot
    std::int64_t few = 2000;     ///< cycles that a beginning of a lot or label is looked up for
};

/// One look: the newest that fit, behind a place.
struct RecordPage {
    std::vector<RecordRow> rows; ///< the newest first; may be empty though older ones fit
    CyclePlace last;             ///< up to here it was looked; the next look goes on behind it
    bool isEnd = false;          ///< nothing older fits
    /// A lot or label was given with which so many begin that they are looked for by time.
    bool isByTime = false;
};

/// The loads and tests that somebody looks for, behind a place in the order of time. No look costs
/// more than its limits, however long the journal is: where little fits, looks come back empty and
/// the next goes on. Of a lot control number with which more than RecordLimits::few begin, and that
/// was corrected, only the newest is found. Throws StoreError.
[[nodiscard]] RecordPage findRecords(ReadSnapshot& snapshot, const Zone& zone,
                                     const RecordQuestion& question, const CyclePlace& behind,
                                     const RecordLimits& limits = {});

/// By what loads can be looked for: every sterilizer and everybody who was ever recorded, by name.
struct RecordChoices {
    std::vector<NamedId> sterilizers;
    std::vector<NamedId> people;

    friend bool operator==(const RecordChoices&, const RecordChoices&) = default;
};

/// Throws StoreError.
[[nodiscard]] RecordChoices recordChoices(ReadSnapshot& snapshot);

} // namespace loadwarden
