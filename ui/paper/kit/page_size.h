#pragma once

#include <QRectF>
#include <QSizeF>

#include <cstdint>

namespace loadwarden::paper {

enum class PageSize : std::uint8_t { letter, a4 };

/// Everything on paper is measured in 1/600 inch, whatever the device paints.
inline constexpr double unitsPerInch = 600.0;

[[nodiscard]] constexpr double millimetres(double length)
{
    return length * unitsPerInch / 25.4;
}

[[nodiscard]] constexpr double points(double length)
{
    return length * unitsPerInch / 72.0;
}

/// The whole sheet, upright: Letter 8.5 x 11 in, A4 210 x 297 mm (ISO 216).
[[nodiscard]] inline QSizeF sizeOf(PageSize size)
{
    return size == PageSize::letter ? QSizeF(8.5 * unitsPerInch, 11.0 * unitsPerInch)
                                    : QSizeF(millimetres(210.0), millimetres(297.0));
}

/// What may be painted on: a left margin wide enough for a binder, the others for any printer.
[[nodiscard]] inline QRectF paintableOf(PageSize size)
{
    return QRectF(QPointF(0, 0), sizeOf(size))
        .adjusted(millimetres(18), millimetres(12), -millimetres(12), -millimetres(12));
}

} // namespace loadwarden::paper
