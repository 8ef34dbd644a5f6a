// The picture of a trace on other devices than the screen: always in light colours.
#include "ui/trace/trace_chart.h"
#include "ui/trace/trace_legend.h"
#include "ui/trace/trace_plot.h"

#ifdef LOADWARDEN_SVG
#include <QSvgGenerator>
#endif

#include <QImage>
#include <QPainter>
#include <QPicture>

namespace loadwarden::ui {
namespace {

constexpr QSize pictureSize(1600, 1000);
constexpr int picturePadding = 24;

} // namespace

bool TracePlot::canSaveSvg()
{
#ifdef LOADWARDEN_SVG
    return true;
#else
    return false;
#endif
}

void TracePlot::paint(QPainter& painter, const QRectF& in, Part part) const
{
    const Colours& colours = coloursOf(Theme::light);
    // It is laid out as large as on a screen, and then fitted to the rectangle.
    const int width = pictureSize.width();
    const int height = static_cast<int>(width * in.height() / std::max(in.width(), 1.0));
    QFont font = m_look.font(Type::body);
    constexpr int pixels = 18;
    font.setPixelSize(pixels);
    TraceLegend legend;
    legend.show(m_scene, colours, font);
    const int above = legend.heightForWidth(width) + 8;

    QPicture picture;
    if (!m_scene->seconds.empty()) {
        TraceChart chart;
        chart.show(m_scene, colours, font);
        chart.setBackground(Qt::NoBrush);
        chart.resize(width, height - above);
        if (part == Part::seen) {
            chart.view(m_chart->viewed().lower, m_chart->viewed().upper);
        }
        QCPPainter on(&picture);
        on.setMode(QCPPainter::pmVectorized);
        on.setMode(QCPPainter::pmNoCaching);
        chart.toPainter(&on, width, height - above);
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(in.topLeft());
    painter.scale(in.width() / width, in.width() / width);
    legend.paint(&painter, width);
    painter.drawPicture(0, above, picture);
    painter.restore();
}

bool TracePlot::save(const QString& file) const
{
    const QRectF in =
        QRectF(QPointF(), pictureSize)
            .adjusted(picturePadding, picturePadding, -picturePadding, -picturePadding);
#ifdef LOADWARDEN_SVG
    if (file.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive)) {
        QSvgGenerator svg;
        svg.setFileName(file);
        svg.setSize(pictureSize);
        svg.setViewBox(QRect(QPoint(), pictureSize));
        svg.setTitle(accessibleName());
        svg.setDescription(accessibleDescription());
        QPainter painter;
        if (!painter.begin(&svg)) {
            return false;
        }
        paint(painter, in, Part::seen);
        return painter.end();
    }
#endif
    QImage image(pictureSize, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paint(painter, in, Part::seen);
    painter.end();
    return image.save(file, "PNG");
}

} // namespace loadwarden::ui
