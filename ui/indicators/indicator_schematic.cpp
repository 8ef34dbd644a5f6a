#include "ui/indicators/indicator_schematic.h"

#include <QFontMetrics>
#include <QPainter>

namespace loadwarden::ui {
namespace {

constexpr int drawn = 520; ///< pixels across
constexpr int stripHeight = 40;

/// Lines instead of colours: what is marked stays marked in print and for everybody's eyes.
QBrush hatching(const QColor& ink)
{
    return {ink, Qt::BDiagPattern};
}

} // namespace

IndicatorSchematic::IndicatorSchematic(Look& look, Response response, QWidget* parent)
    : QWidget(parent), m_look(look), m_response(response)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(response == Response::movingFront
                          ? tr("A strip with one boundary line; the front has gone past it into the "
                               "accept zone without filling it.")
                      : response == Response::sheet
                          ? tr("A grid that has changed alike all over, and one with a pale centre.")
                          : tr("A patch before and after the end colour is reached."));
}

QSize IndicatorSchematic::sizeHint() const
{
    const int line = QFontMetrics(m_look.font(Type::body)).height();
    return {drawn, m_response == Response::sheet ? 4 * line + 96 : stripHeight + 3 * line + 24};
}

void IndicatorSchematic::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(m_look.font(Type::body));
    painter.setPen(QPen(m_look.colours().ink, 2));
    switch (m_response) {
    case Response::movingFront: paintFront(painter); break;
    case Response::sheet: paintSheet(painter); break;
    case Response::colour:
    case Response::growth: paintColour(painter); break;
    }
}

void IndicatorSchematic::paintFront(QPainter& painter) const
{
    const Colours& colours = m_look.colours();
    const int line = painter.fontMetrics().height();
    const QRectF strip(2, line + 8, drawn - 4, stripHeight);
    const double boundary = strip.left() + strip.width() * 0.55;
    const double front = strip.left() + strip.width() * 0.68;
    painter.fillRect(strip, colours.field);
    painter.fillRect(QRectF(strip.left(), strip.top() + 10, front - strip.left(), stripHeight - 20),
                     hatching(colours.ink));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(strip);
    painter.setPen(QPen(colours.accent, 4));
    painter.drawLine(QPointF(boundary, strip.top() - 4), QPointF(boundary, strip.bottom() + 4));
    painter.setPen(QPen(colours.ink, 2));
    painter.drawLine(QPointF(front, strip.top() + 4), QPointF(front, strip.bottom() - 4));
    painter.setPen(colours.ink);
    painter.drawText(QRectF(strip.left(), 0, boundary - strip.left() - 8, line), Qt::AlignRight,
                     tr("short of the boundary: reject"));
    painter.drawText(QRectF(boundary + 8, 0, strip.right() - boundary, line), Qt::AlignLeft,
                     tr("accept zone"));
    painter.drawText(QRectF(strip.left(), strip.bottom() + 6, front - strip.left() + 60, line),
                     Qt::AlignRight, tr("the front, past the boundary: accept"));
}

void IndicatorSchematic::paintColour(QPainter& painter) const
{
    const Colours& colours = m_look.colours();
    const int line = painter.fontMetrics().height();
    const int side = stripHeight;
    const QString words[] = {tr("unchanged: reject"), tr("in part: reject"),
                             tr("end colour: accept")};
    for (int i = 0; i < 3; ++i) {
        const QRectF patch(2 + i * drawn / 3.0, 8, drawn / 3.0 - 20, side);
        painter.fillRect(patch, colours.field);
        QRectF filled = patch;
        filled.setWidth(patch.width() * i / 2.0);
        painter.fillRect(filled, hatching(colours.ink));
        painter.drawRect(patch);
        painter.drawText(QRectF(patch.left(), patch.bottom() + 6, patch.width() + 18, 2 * line),
                         Qt::AlignLeft | Qt::TextWordWrap, words[i]);
    }
}

void IndicatorSchematic::paintSheet(QPainter& painter) const
{
    const Colours& colours = m_look.colours();
    const int line = painter.fontMetrics().height();
    constexpr int cells = 5;
    constexpr double cell = 18;
    const QString words[] = {tr("alike and complete all over: accept"),
                             tr("a pale patch anywhere: reject")};
    for (int sheet = 0; sheet < 2; ++sheet) {
        const double left = 2 + sheet * drawn / 2.0;
        for (int i = 0; i < cells * cells; ++i) {
            const QRectF square(left + i % cells * cell, 4 + i / cells * cell, cell, cell);
            const bool isPale = sheet == 1 && i % cells >= 1 && i % cells <= 3 && i / cells >= 1
                                && i / cells <= 3;
            painter.fillRect(square, colours.field);
            if (!isPale) {
                painter.fillRect(square, hatching(colours.ink));
            }
            painter.drawRect(square);
        }
        painter.drawText(QRectF(left, cells * cell + 10, drawn / 2.0 - 20, 3 * line),
                         Qt::AlignLeft | Qt::TextWordWrap, words[sheet]);
    }
}

} // namespace loadwarden::ui
