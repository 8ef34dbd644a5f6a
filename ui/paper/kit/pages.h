#pragma once

#include "ui/paper/kit/block.h"
#include "ui/paper/kit/frame.h"
#include "ui/paper/kit/page_size.h"

#include <vector>

class QPainter;

namespace loadwarden::paper {

/// A sheet laid out on pages, ready to be painted on anything.
class Pages {
public:
    /// Blocks that are not higher than bodyHeight() all come onto a page, in order.
    Pages(Frame frame, PageSize size, Blocks blocks);

    [[nodiscard]] PageSize size() const { return m_size; }
    [[nodiscard]] const Frame& frame() const { return m_frame; }
    [[nodiscard]] int count() const { return static_cast<int>(m_pages.size()); }

    /// Paints one page, counted from 0. The painter's origin is the corner of the paper itself, one
    /// of its units a dot of its device.
    void paint(QPainter& painter, int page) const;

private:
    Frame m_frame;
    PageSize m_size;
    Blocks m_blocks;
    std::vector<std::vector<std::size_t>> m_pages; ///< the blocks of each
};

/// Width and height that a sheet's blocks have on a page.
[[nodiscard]] double bodyWidth(PageSize size);
[[nodiscard]] double bodyHeight(PageSize size, const Frame& frame);

} // namespace loadwarden::paper
