#pragma once

#include "core/cycle/quantity.h"
#include "core/quantities/act.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// One value read from the sterilizer's record.
struct ParameterReading {
    Parameter parameter = Parameter::temperature;
    Quantity value;
    std::string typed; ///< the text as it was typed
    Act act;

    friend bool operator==(const ParameterReading&, const ParameterReading&) = default;
};

/// The sterilizer's own record of a cycle; start and end by the sterilizer's clock.
struct Printout {
    std::string program;    ///< empty: left out
    std::string sterilizer; ///< empty: left out
    std::optional<std::int64_t> counter;
    std::optional<Instant> start;
    std::optional<Instant> end;
    Act act;

    friend bool operator==(const Printout&, const Printout&) = default;
};

/// What somebody said of a printout that does not agree with the record.
enum class PrintoutAnswer : std::uint8_t { recordRight, wrongCycle, wrongSterilizer };

/// What a printout shows of its cycle.
enum class PrintoutField : std::uint8_t { program, sterilizer, counter, start, end };

/// Number of fields; they run from 0.
inline constexpr std::size_t printoutFieldCount = 5;

/// The field as evidence and decisions write it.
[[nodiscard]] constexpr std::string_view textOf(PrintoutField field)
{
    constexpr std::array<std::string_view, printoutFieldCount> texts{"program", "sterilizer",
                                                                     "counter", "start", "end"};
    return texts[static_cast<std::size_t>(field)];
}

struct PrintoutStatement {
    PrintoutAnswer answer = PrintoutAnswer::recordRight;
    std::optional<PrintoutField> field; ///< what a record-right answer confirms; nullopt: nothing
    Act act;

    friend bool operator==(const PrintoutStatement&, const PrintoutStatement&) = default;
};

struct LostReading {
    Parameter parameter = Parameter::temperature;
    Act act;

    friend bool operator==(const LostReading&, const LostReading&) = default;
};

} // namespace loadwarden
