#pragma once

#include <cstdint>
#include <string>

namespace loadwarden {

/// Appends a number given in thousandths as a plain decimal without zeros at its end: 131900 is
/// "131.9", -500 is "-0.5".
inline void appendThousandths(std::string& out, std::int64_t thousandths)
{
    // Negated as unsigned, so that the least integer survives.
    auto magnitude = static_cast<std::uint64_t>(thousandths);
    if (thousandths < 0) {
        out += '-';
        magnitude = 0 - magnitude;
    }
    out += std::to_string(magnitude / 1000);
    const auto rest = static_cast<unsigned>(magnitude % 1000);
    if (rest == 0) {
        return;
    }
    const char digits[] = {static_cast<char>('0' + rest / 100),
                           static_cast<char>('0' + rest / 10 % 10),
                           static_cast<char>('0' + rest % 10)};
    const std::size_t shown = rest % 100 == 0 ? 1 : rest % 10 == 0 ? 2 : 3;
    out += '.';
    out.append(digits, shown);
}

[[nodiscard]] inline std::string thousandthsText(std::int64_t thousandths)
{
    std::string text;
    appendThousandths(text, thousandths);
    return text;
}

} // namespace loadwarden
