#pragma once

#include "core/release/policy.h"

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

/// Every setting of a policy, what may stand there, and where it goes.
namespace loadwarden::settings {

/// A value as read, in the field that its kind uses.
struct Value {
    std::int64_t thousandths = 0; ///< number
    std::size_t choice = 0;       ///< word: index in the setting's choices; flag: 0 or 1
    std::size_t bits = 0;         ///< list: one bit for each choice named
    TypeSet types{};              ///< types
};

enum class Kind : std::uint8_t { number, word, flag, words, types };

enum class Mildness : std::uint8_t {
    none,   ///< the default or stricter
    named,  ///< milder than the default, and named as allowed
    refused ///< a known word, but milder than the default
};

struct Choice {
    std::string_view text;
    Mildness mildness = Mildness::none;
};

/// Which end of a range is the milder one; the default stands there.
enum class Milder : std::uint8_t { above, below };

struct Setting {
    std::string_view section;
    std::string_view name;
    Kind kind = Kind::number;
    // number: inclusive, in thousandths
    std::int64_t least = 0;
    std::int64_t most = 0;
    int decimals = 0;
    Milder milder = Milder::above;
    // word, words: in the order of the enumeration that the setting fills
    std::span<const Choice> choices{};
    // types: those that the default has
    std::span<const int> allowed{};
    void (*set)(Policy&, const Value&) = nullptr;
    int since = 1; ///< the policy_version from which on files state it; before, the default counts

    [[nodiscard]] constexpr Setting from(int version) const
    {
        Setting setting = *this;
        setting.since = version;
        return setting;
    }
};

/// The policy_version of the files that are written now; older ones are read for ever.
inline constexpr int newestVersion = 2;

namespace detail {

template <auto member>
constexpr void setMinutes(Policy& policy, const Value& value)
{
    policy.*member = Duration::milliseconds(value.thousandths * 60);
}

template <auto member>
constexpr void setSeconds(Policy& policy, const Value& value)
{
    policy.*member = Duration::milliseconds(value.thousandths);
}

template <auto member>
constexpr void setHours(Policy& policy, const Value& value)
{
    policy.*member = Duration::milliseconds(value.thousandths * 3600);
}

template <auto member>
constexpr void setCount(Policy& policy, const Value& value)
{
    policy.*member = static_cast<int>(value.thousandths / 1000);
}

template <auto member>
constexpr void setThousandths(Policy& policy, const Value& value)
{
    policy.*member = value.thousandths;
}

/// Kelvin with at most two decimals into units of 1/1800 K, of which 0.01 K is 18.
template <auto member>
constexpr void setKelvin(Policy& policy, const Value& value)
{
    policy.*member = value.thousandths / 10 * 18;
}

template <auto member, typename Enum>
constexpr void setChoice(Policy& policy, const Value& value)
{
    policy.*member = static_cast<Enum>(value.choice);
}

template <auto member>
constexpr void setFlag(Policy& policy, const Value& value)
{
    policy.*member = value.choice != 0;
}

template <auto member>
constexpr void setTypes(Policy& policy, const Value& value)
{
    policy.*member = value.types;
}

constexpr void setAirTests(Policy& policy, const Value& value)
{
    policy.airTestForGravity = (value.bits & 1U) != 0;
    policy.airTestForSteamFlush = (value.bits & 2U) != 0;
}

constexpr void setPassableDefects(Policy& policy, const Value& value)
{
    policy.passesFreeLine = (value.bits & 1U) != 0;
    policy.passesMidnight = (value.bits & 2U) != 0;
    policy.passesLastLineOpen = (value.bits & 4U) != 0;
}

inline constexpr std::array scopes = {Choice{"cycle-type"}, Choice{"sterilizer"}};
inline constexpr std::array airCycles = {Choice{"gravity"}, Choice{"steam-flush-pressure-pulse"}};
inline constexpr std::array madeAfter = {Choice{"fails"}, Choice{"review", Mildness::named}};
inline constexpr std::array aboveMaximum = {Choice{"review"}, Choice{"fails"}};
inline constexpr std::array asked = {Choice{"no"}, Choice{"yes"}};
inline constexpr std::array passableDefects = {Choice{"free-line"}, Choice{"midnight"},
                                               Choice{"last-line-open"}};
inline constexpr std::array pcd = {Choice{"if-placed"}, Choice{"required"}};
inline constexpr std::array readouts = {Choice{"release"}, Choice{"last"}};
inline constexpr std::array holds = {Choice{"whole-load"},
                                     Choice{"implants-only", Mildness::named}};
inline constexpr std::array reaches = {Choice{"day"}, Choice{"lot", Mildness::refused},
                                       Choice{"load"}};

inline constexpr std::array weeklyOrMore = {Choice{"weekly", Mildness::named}, Choice{"each-day"},
                                            Choice{"every-load"}};
inline constexpr std::array dailyOrMore = {Choice{"weekly", Mildness::refused}, Choice{"each-day"},
                                           Choice{"every-load"}};
inline constexpr std::array everyLoadOnly = {Choice{"weekly", Mildness::refused},
                                             Choice{"each-day", Mildness::refused},
                                             Choice{"every-load"}};

inline constexpr std::array typesOfSteamPcd = {5, 6};
inline constexpr std::array typesInSteamPackage = {3, 4, 5, 6};
inline constexpr std::array typesOfOthers = {1, 3, 4, 5, 6};

constexpr Setting number(std::string_view section, std::string_view name, std::int64_t least,
                         std::int64_t most, int decimals, Milder milder,
                         void (*set)(Policy&, const Value&))
{
    return {.section = section,
            .name = name,
            .kind = Kind::number,
            .least = least,
            .most = most,
            .decimals = decimals,
            .milder = milder,
            .set = set};
}

constexpr Setting word(std::string_view section, std::string_view name,
                       std::span<const Choice> choices, void (*set)(Policy&, const Value&))
{
    return {.section = section, .name = name, .kind = Kind::word, .choices = choices, .set = set};
}

constexpr Setting types(std::string_view section, std::string_view name,
                        std::span<const int> allowed, void (*set)(Policy&, const Value&))
{
    return {.section = section, .name = name, .kind = Kind::types, .allowed = allowed, .set = set};
}

} // namespace detail

/// In the order of the default policy's file; sections are not repeated apart from each other.
inline constexpr auto all = [] {
    using namespace detail;
    using enum Milder;
    using P = Policy;
    return std::array{
        number("printout", "clock_tolerance_minutes", 0, 5'000, 3, above,
               setMinutes<&P::clockTolerance>),
        number("acts", "late_hours", 0, 4'000, 3, above, setHours<&P::lateAfter>),
        number("process", "failed_packages", 1'000, 2'000, 0, above, setCount<&P::failedPackages>),
        number("packages", "rejected_for_supervisor", 1'000, 2'000, 0, above,
               setCount<&P::rejectedForSupervisor>),
        number("packages", "wet_for_supervisor", 1'000, 2'000, 0, above,
               setCount<&P::wetForSupervisor>),
        word("scope", "by", scopes, setChoice<&P::scopeBy, ScopeBy>),
        Setting{.section = "air_removal",
                .name = "also_for",
                .kind = Kind::words,
                .choices = airCycles,
                .set = setAirTests},
        word("air_removal", "made_after", detail::madeAfter, setChoice<&P::madeAfter, MadeAfter>),
        word("physical", "above_maximum", detail::aboveMaximum,
             setChoice<&P::aboveMaximum, AboveMaximum>),
        word("trace", "asked", asked, setFlag<&P::traceAsked>).from(2),
        Setting{.section = "trace",
                .name = "passable_defects",
                .kind = Kind::words,
                .choices = passableDefects,
                .set = setPassableDefects}
            .from(2),
        number("trace", "differs_kelvin", 0, 1'000, 2, above, setKelvin<&P::traceDiffersUnits>)
            .from(2),
        number("trace", "differs_seconds", 0, 60'000, 3, above, setSeconds<&P::traceDiffers>)
            .from(2),
        word("pcd", "steam", pcd, setChoice<&P::pcdSteam, PcdRequirement>),
        word("pcd", "hydrogen_peroxide", pcd, setChoice<&P::pcdHydrogenPeroxide, PcdRequirement>),
        word("pcd", "dry_heat", pcd, setChoice<&P::pcdDryHeat, PcdRequirement>),
        types("pcd", "types_steam", typesOfSteamPcd, setTypes<&P::pcdTypesSteam>),
        types("pcd", "types_other", typesOfOthers, setTypes<&P::pcdTypesOther>),
        types("internal", "types_steam", typesInSteamPackage, setTypes<&P::internalTypesSteam>),
        types("internal", "types_other", typesOfOthers, setTypes<&P::internalTypesOther>),
        word("bi", "steam", weeklyOrMore, setChoice<&P::biSteam, BiFrequency>),
        word("bi", "dry_heat", weeklyOrMore, setChoice<&P::biDryHeat, BiFrequency>),
        word("bi", "hydrogen_peroxide", dailyOrMore,
             setChoice<&P::biHydrogenPeroxide, BiFrequency>),
        word("bi", "ethylene_oxide", everyLoadOnly, setChoice<&P::biEthyleneOxide, BiFrequency>),
        word("bi", "readout", readouts, setChoice<&P::readout, BiReadout>),
        Setting{.section = "bi",
                .name = "routine_blocks",
                .kind = Kind::flag,
                .set = setFlag<&P::routineBlocks>},
        word("implant", "hold", holds, setChoice<&P::implantHold, ImplantHold>),
        word("control", "per", reaches, setChoice<&P::controlPer, ControlReach>),
        number("control", "window_hours", 0, 2'000, 3, above, setHours<&P::controlWindow>),
        number("device", "temperature_tolerance_kelvin", 0, 500, 2, above,
               setKelvin<&P::temperatureToleranceUnits>),
        number("bowie_dick", "read_within_minutes", 1'000, 60'000, 3, above,
               setMinutes<&P::sheetReadWithin>),
        number("leak", "most_mbar_per_minute", 100, 1'300, 3, above,
               setThousandths<&P::leakMostThousandthsMbarPerMinute>),
        number("leak", "settle_minutes", 5'000, 60'000, 3, below, setMinutes<&P::leakSettle>),
        number("leak", "test_minutes", 10'000, 60'000, 3, below, setMinutes<&P::leakTest>),
    };
}();

} // namespace loadwarden::settings
