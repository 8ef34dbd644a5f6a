#pragma once

#include "ui/paper/kit/block.h"
#include "ui/paper/kit/type.h"

#include <vector>

namespace loadwarden::paper {

struct Column {
    QString head;     ///< empty everywhere: the table has no head
    double share = 1; ///< of the width, against the others
};

struct Row {
    std::vector<Runs> cells;
    bool beginsGroup = true; ///< a line above it, from edge to edge
    double least = 0;        ///< height that it has at least
};

/// How a table is drawn.
enum class Rules : std::uint8_t {
    rows, ///< a thin line between groups of rows
    boxes ///< a box around every cell, to write in
};

struct Table {
    std::vector<Column> columns;
    std::vector<Row> rows;
    Type type = Type::body;
    Rules rules = Rules::rows;
};

/// A table of that width in rows that may stand on different pages, its head on each; a row that is
/// higher than `mostHeight` goes on as a further one.
void append(Blocks& blocks, const Table& table, double width, double mostHeight);

} // namespace loadwarden::paper
