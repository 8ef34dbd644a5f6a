#pragma once

#include "core/indicators/reading_result.h"
#include "core/indicators/sheet_pattern.h"

#include <string>

// How indicators are read, in words. Sentences end with a full stop; the makers' instructions for
// use come before all of them.

namespace loadwarden {

/// A sentence with where it is from.
struct ReadingSaid {
    std::string says;
    std::string source;
};

/// What the rule says, beginning with accept, reject or unclear.
[[nodiscard]] ReadingSaid say(ReadingRule rule);

/// "pale centre": lower case, without a full stop.
[[nodiscard]] std::string say(SheetPattern pattern);

/// What a sheet that looks so suggests; it proves no cause.
[[nodiscard]] ReadingSaid suggestionOf(SheetPattern pattern);

/// "accept": lower case, without a full stop.
[[nodiscard]] std::string say(ReadAs readAs);

/// How far an answer was right, as a short heading without a full stop.
[[nodiscard]] std::string say(AnswerMark mark);

/// An ISO 11140-1 type of chemical indicators.
struct TypeSaid {
    std::string name; ///< "Type 1, process indicator"
    std::string can;
    std::string cannot;
    std::string source;
};

/// `type` from 1 to 6; anything else is a type that nobody stated.
[[nodiscard]] TypeSaid sayType(int type);

} // namespace loadwarden
