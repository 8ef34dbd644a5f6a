#include "ui/trace/trace_style.h"

#include <array>

namespace loadwarden::ui {

QPen penOf(const TraceSeries& series, const Colours& colours, double scale)
{
    QPen pen(colours.accent, 2 * scale);
    pen.setCapStyle(Qt::FlatCap);
    QList<qreal> dashes;
    switch (series.role) {
    case ChannelRole::chamberTemperature: break;
    case ChannelRole::drainTemperature:
        pen.setColor(colours.waiting.ink);
        dashes = {6, 2};
        break;
    case ChannelRole::loadTemperature:
        pen.setColor(colours.neutral.ink);
        dashes = {6, 2, 1, 2};
        break;
    case ChannelRole::chamberPressure:
        pen.setColor(colours.muted);
        pen.setWidthF(1.5 * scale);
        dashes = {1.5, 1.5};
        break;
    case ChannelRole::notUsed: break;
    }
    // A second sensor of its kind has one dot more, a third two.
    if (series.order > 0 && dashes.isEmpty()) {
        dashes = {12, 2};
    }
    for (int i = 0; i < series.order % 4; ++i) {
        dashes += {1, 2};
    }
    if (!dashes.isEmpty()) {
        pen.setDashPattern(dashes);
    }
    return pen;
}

} // namespace loadwarden::ui
