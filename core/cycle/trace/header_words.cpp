#include "core/cycle/trace/header_words.h"

#include "core/quantities/word.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace loadwarden {
namespace {

constexpr Word<RecorderUnit> unitTokens[] = {
    {"c", RecorderUnit::celsius},       {"degc", RecorderUnit::celsius},
    {"celsius", RecorderUnit::celsius}, {"f", RecorderUnit::fahrenheit},
    {"degf", RecorderUnit::fahrenheit}, {"fahrenheit", RecorderUnit::fahrenheit},
    {"k", RecorderUnit::kelvin},        {"kelvin", RecorderUnit::kelvin},
    {"kpa", RecorderUnit::kPa},         {"bar", RecorderUnit::bar},
    {"mbar", RecorderUnit::mbar},       {"hpa", RecorderUnit::mbar},
    {"psi", RecorderUnit::psi},         {"inhg", RecorderUnit::inHg},
    {"mmhg", RecorderUnit::mmHg},
};

constexpr Word<PressureZero> zeroTokens[] = {
    {"a", PressureZero::absolute},        {"abs", PressureZero::absolute},
    {"absolute", PressureZero::absolute}, {"g", PressureZero::gauge},
    {"gauge", PressureZero::gauge},       {"gage", PressureZero::gauge},
    {"rel", PressureZero::gauge},         {"relative", PressureZero::gauge},
};

constexpr Word<TimeForm> timeTokens[] = {
    {"s", TimeForm::seconds},      {"sec", TimeForm::seconds},     {"secs", TimeForm::seconds},
    {"second", TimeForm::seconds}, {"seconds", TimeForm::seconds}, {"min", TimeForm::minutes},
    {"mins", TimeForm::minutes},   {"minute", TimeForm::minutes},  {"minutes", TimeForm::minutes},
};

constexpr std::string_view otherWords[] = {
    "set",   "target", "limit",   "jacket",    "generator", "boiler",     "supply",
    "water", "room",   "ambient", "lethality", "f0",        "saturation", "theoretical"};

/// Words in small letters, cut at all that is neither letter nor figure; a degree sign is "deg".
std::vector<std::string> tokensOf(std::string_view text)
{
    std::vector<std::string> tokens(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool isCapital = c >= 'A' && c <= 'Z';
        // The degree sign, and the ordinal mark that is written in its place.
        if (text.substr(i, 2) == "\xC2\xB0" || text.substr(i, 2) == "\xC2\xBA") {
            tokens.push_back("deg");
            ++i;
        } else if (isCapital || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
            tokens.back() += isCapital ? static_cast<char>(c - 'A' + 'a') : c;
        } else if (!tokens.back().empty()) {
            tokens.emplace_back();
        }
    }
    std::erase(tokens, "");
    // Made one: deg C, in Hg, mm Hg.
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
        const std::string pair = tokens[i] + tokens[i + 1];
        if (pair == "degc" || pair == "degf" || pair == "inhg" || pair == "mmhg") {
            tokens[i] = pair;
            tokens.erase(tokens.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        }
    }
    return tokens;
}

bool has(const std::vector<std::string>& tokens, std::string_view word)
{
    return std::ranges::find(tokens, word) != tokens.end();
}

/// Whether a token is that word or begins with it: "pressure", "press".
bool hasBegin(const std::vector<std::string>& tokens, std::string_view begin)
{
    return std::ranges::any_of(tokens, [&](const std::string& t) { return t.starts_with(begin); });
}

/// Whether a word stands anywhere, also within one: "chambertemp".
bool hasWithin(const std::vector<std::string>& tokens, std::string_view word)
{
    return std::ranges::any_of(
        tokens, [&](const std::string& t) { return t.find(word) != std::string::npos; });
}

void readUnit(const std::vector<std::string>& tokens, HeaderWords& words)
{
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        std::string_view token = tokens[i];
        std::optional<RecorderUnit> unit = valueOf(unitTokens, token);
        if (!unit && token.size() > 3) { // psia, barg, kpaa
            unit = valueOf(unitTokens, token.substr(0, token.size() - 1));
            const auto zero = valueOf(zeroTokens, token.substr(token.size() - 1));
            unit = unit && zero && !isTemperature(*unit) ? unit : std::nullopt;
            words.zero = unit ? zero : words.zero;
        }
        // A whole word is worth more than a letter.
        if (unit && (!words.unit || words.unitIsLetter)) {
            words.unit = unit;
            words.unitIsLetter = token.size() == 1;
        }
        if (token.size() > 1 || (i > 0 && valueOf(unitTokens, tokens[i - 1]))) {
            const auto zero = valueOf(zeroTokens, token);
            words.zero = zero ? zero : words.zero;
        }
    }
}

void readTimeForm(const std::vector<std::string>& tokens, HeaderWords& words)
{
    const bool hours = has(tokens, "hh") || has(tokens, "h");
    const bool minutes = has(tokens, "mm") || has(tokens, "m") || has(tokens, "min");
    const bool seconds = has(tokens, "ss") || has(tokens, "s") || has(tokens, "sec");
    if (hours && minutes) {
        words.form = seconds ? TimeForm::hoursMinutesSeconds : TimeForm::hoursMinutes;
    } else if (minutes && seconds) {
        words.form = TimeForm::minutesSeconds;
    } else {
        for (const std::string& token : tokens) {
            const auto form = valueOf(timeTokens, token);
            words.form = form ? form : words.form;
        }
    }
}

void readRole(const std::vector<std::string>& tokens, HeaderWords& words)
{
    const bool isPressure = hasWithin(tokens, "press") || hasWithin(tokens, "vacuum")
                            || (words.unit && !isTemperature(*words.unit));
    const bool isWarmth = hasWithin(tokens, "temp")
                          || (words.unit && isTemperature(*words.unit) && !words.unitIsLetter);
    const bool inLoad = hasWithin(tokens, "load") || hasWithin(tokens, "probe")
                        || hasWithin(tokens, "product") || has(tokens, "pack");
    const bool inDrain = hasWithin(tokens, "drain") || hasWithin(tokens, "discharge");
    const bool inChamber = hasWithin(tokens, "chamber");
    words.saysPlace = inLoad || inDrain || inChamber;
    if (isPressure && !hasWithin(tokens, "temp")) {
        words.role = ChannelRole::chamberPressure;
    } else if (isWarmth || (words.unit && words.saysPlace)) {
        words.role = inDrain  ? ChannelRole::drainTemperature
                     : inLoad ? ChannelRole::loadTemperature
                              : ChannelRole::chamberTemperature;
    }
}

} // namespace

HeaderWords wordsOf(std::string_view header, std::string_view unit)
{
    HeaderWords words;
    std::vector<std::string> tokens = tokensOf(header);
    const std::vector<std::string> below = tokensOf(unit);
    tokens.insert(tokens.end(), below.begin(), below.end());
    words.saysTime = hasWithin(tokens, "time") || has(tokens, "elapsed") || has(tokens, "clock");
    words.saysDate = hasBegin(tokens, "date");
    words.saysCounter = (hasWithin(tokens, "cycle") || hasWithin(tokens, "counter"))
                        && (tokens.size() == 1 || has(tokens, "no") || has(tokens, "nr")
                            || hasWithin(tokens, "num") || hasWithin(tokens, "count"));
    words.saysOther = std::ranges::any_of(otherWords, [&](std::string_view word) {
        return word.size() > 3 ? hasWithin(tokens, word) : hasBegin(tokens, word);
    });
    readTimeForm(tokens, words);
    if (words.saysTime || words.saysDate || words.saysCounter) {
        return words;
    }
    readUnit(tokens, words);
    readRole(tokens, words);
    return words;
}

bool isUnitAlone(std::string_view text)
{
    const std::vector<std::string> tokens = tokensOf(text);
    return !tokens.empty() && std::ranges::all_of(tokens, [](const std::string& token) {
        const bool hasZero =
            token.size() > 3
            && valueOf(unitTokens, std::string_view(token).substr(0, token.size() - 1));
        return valueOf(unitTokens, token) || valueOf(zeroTokens, token)
               || valueOf(timeTokens, token) || token == "hh" || token == "mm" || token == "ss"
               || token == "h" || token == "m" || hasZero;
    });
}

} // namespace loadwarden
