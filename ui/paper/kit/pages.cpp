#include "ui/paper/kit/pages.h"

#include <QPainter>

#include <utility>

namespace loadwarden::paper {
namespace {

/// How much a run of blocks that stay together needs, from one on.
double heightTogether(const Blocks& blocks, std::size_t first)
{
    double height = blocks[first].height;
    while (blocks[first].keepsWithNext && first + 1 < blocks.size()) {
        height += blocks[++first].height;
    }
    return height;
}

} // namespace

double bodyWidth(PageSize size)
{
    return paintableOf(size).width();
}

double bodyHeight(PageSize size, const Frame& frame)
{
    const QRectF paintable = paintableOf(size);
    return paintable.height() - headHeight(frame, paintable.width())
           - footHeight(frame, paintable.width());
}

Pages::Pages(Frame frame, PageSize size, Blocks blocks)
    : m_frame(std::move(frame)), m_size(size), m_blocks(std::move(blocks)), m_pages(1)
{
    const double most = bodyHeight(size, m_frame);
    double left = most;
    for (std::size_t i = 0; i < m_blocks.size(); ++i) {
        const bool followsAHeading = i > 0 && m_blocks[i - 1].keepsWithNext;
        const double needs = followsAHeading ? m_blocks[i].height : heightTogether(m_blocks, i);
        if ((needs > left || m_blocks[i].beginsPage) && !m_pages.back().empty()) {
            m_pages.emplace_back();
            left = most - (m_blocks[i].again ? m_blocks[i].again->height : 0);
        }
        m_pages.back().push_back(i);
        left -= m_blocks[i].height;
    }
}

void Pages::paint(QPainter& painter, int page) const
{
    const QRectF paintable = paintableOf(m_size);
    painter.save();
    const double scale = painter.device()->logicalDpiX() / unitsPerInch;
    painter.scale(scale, scale);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::black);
    paintHead(painter, m_frame, paintable.topLeft(), paintable.width(), page + 1, count());
    QPointF at = paintable.topLeft() + QPointF(0, headHeight(m_frame, paintable.width()));
    bool isFirst = true;
    for (const std::size_t index : m_pages[static_cast<std::size_t>(page)]) {
        const Block& block = m_blocks[index];
        if (isFirst && block.again) {
            painter.setPen(Qt::black);
            block.again->paint(painter, at);
            at.ry() += block.again->height;
        }
        isFirst = false;
        painter.setPen(Qt::black);
        block.paint(painter, at);
        at.ry() += block.height;
    }
    painter.setPen(Qt::black);
    const double foot = footHeight(m_frame, paintable.width());
    paintFoot(painter, m_frame, {paintable.left(), paintable.bottom() - foot}, paintable.width());
    painter.restore();
}

} // namespace loadwarden::paper
