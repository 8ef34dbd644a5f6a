#include "ui/look/colours.h"

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

QColor rgb(unsigned value)
{
    return QColor::fromRgb(value);
}

Colours lightColours()
{
    return {.window = rgb(0xEFEDE6),
            .surface = rgb(0xFBFAF7),
            .field = rgb(0xFFFFFF),
            .line = rgb(0xD9D5C9),
            .edge = rgb(0x7C8480),
            .ink = rgb(0x17211F),
            .muted = rgb(0x4F5955),
            .accent = rgb(0x0F5A54),
            .accentOver = rgb(0x0B4640),
            .onAccent = rgb(0xFFFFFF),
            .accentSoft = rgb(0xDCE9E4),
            .focus = rgb(0xB4500F),
            .bezel = rgb(0x16302E),
            .bezelOver = rgb(0x23443F),
            .onBezel = rgb(0xF4F2EB),
            .bezelMuted = rgb(0xB9C7C2),
            .good = {rgb(0x1D5F3B), rgb(0xDFECDF)},
            .waiting = {rgb(0x7A4A00), rgb(0xF6E8CB)},
            .bad = {rgb(0x98232B), rgb(0xF6DFDB)},
            .neutral = {rgb(0x3D4C5C), rgb(0xE2E5E6)}};
}

Colours darkColours()
{
    return {.window = rgb(0x121817),
            .surface = rgb(0x1A2221),
            .field = rgb(0x0E1413),
            .line = rgb(0x2E3937),
            .edge = rgb(0x82908B),
            .ink = rgb(0xE9ECE7),
            .muted = rgb(0xABB6B1),
            .accent = rgb(0x7CCABB),
            .accentOver = rgb(0x9ADBCE),
            .onAccent = rgb(0x07211D),
            .accentSoft = rgb(0x1F3B37),
            .focus = rgb(0xF2A35E),
            .bezel = rgb(0x0A1110),
            .bezelOver = rgb(0x1B2A28),
            .onBezel = rgb(0xEDF0EB),
            .bezelMuted = rgb(0xA3B2AD),
            .good = {rgb(0x86CF9F), rgb(0x1B3325)},
            .waiting = {rgb(0xE9BD6C), rgb(0x38301C)},
            .bad = {rgb(0xF29A94), rgb(0x3F2321)},
            .neutral = {rgb(0xB4C2CF), rgb(0x2A3238)}};
}

double linear(double channel)
{
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour)
{
    return 0.2126 * linear(static_cast<double>(colour.redF()))
           + 0.7152 * linear(static_cast<double>(colour.greenF()))
           + 0.0722 * linear(static_cast<double>(colour.blueF()));
}

} // namespace

const Colours& coloursOf(Theme theme)
{
    static const Colours light = lightColours();
    static const Colours dark = darkColours();
    return theme == Theme::light ? light : dark;
}

double contrastOf(const QColor& a, const QColor& b)
{
    const double first = luminance(a) + 0.05;
    const double second = luminance(b) + 0.05;
    return std::max(first, second) / std::min(first, second);
}

} // namespace loadwarden::ui
