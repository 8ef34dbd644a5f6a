#pragma once

#include <QPointF>

#include <functional>
#include <memory>
#include <vector>

class QPainter;

namespace loadwarden::paper {

/// A piece of a sheet that is not divided between pages, as wide as the sheet.
struct Block {
    double height = 0;
    std::function<void(QPainter&, QPointF)> paint; ///< with its upper left corner there
    bool keepsWithNext = false;                    ///< a heading does not stay behind alone
    bool beginsPage = false;
    std::shared_ptr<const Block> again; ///< painted above it where it begins a page
};

/// The pieces of a sheet from top to bottom.
using Blocks = std::vector<Block>;

} // namespace loadwarden::paper
