#include "ui/paper/kit/table.h"

#include "ui/paper/kit/page_size.h"
#include "ui/paper/kit/wrapped_text.h"

#include <QPainter>

#include <algorithm>
#include <utility>

namespace loadwarden::paper {
namespace {

constexpr double gap = points(5);     ///< between the texts of two columns
constexpr double above = points(1.2); ///< and below the text of a row
constexpr double inBox = points(3);

struct Span {
    double left = 0;
    double width = 0;
};

std::vector<Span> spansOf(const std::vector<Column>& columns, double width)
{
    double all = 0;
    for (const Column& column : columns) {
        all += column.share;
    }
    std::vector<Span> spans;
    double left = 0;
    for (const Column& column : columns) {
        spans.push_back({left, width * column.share / all});
        left += spans.back().width;
    }
    return spans;
}

class Laying {
public:
    Laying(const Table& table, double width)
        : m_table(table), m_width(width), m_spans(spansOf(table.columns, width))
    {
    }

    [[nodiscard]] std::shared_ptr<const Block> head() const
    {
        const bool isNamed = std::ranges::any_of(
            m_table.columns, [](const Column& column) { return !column.head.isEmpty(); });
        if (!isNamed) {
            return nullptr;
        }
        std::vector<Runs> cells;
        for (const Column& column : m_table.columns) {
            cells.push_back(strong(column.head));
        }
        const std::vector<WrappedText> texts = wrap(cells);
        const int lines = mostLines(texts);
        return std::make_shared<const Block>(
            piece(texts, 0, lines, {.edge = 1.0, .edgeBelow = 1.0}, 0));
    }

    void row(Blocks& blocks, const Row& row, double most,
             const std::shared_ptr<const Block>& head) const
    {
        const std::vector<WrappedText> texts = wrap(row.cells);
        const int lines = std::max(1, mostLines(texts));
        const int atOnce =
            std::max(1, static_cast<int>((most - 2 * padding()) / lineHeight(m_table.type)));
        for (int first = 0; first < lines; first += atOnce) {
            const bool begins = first == 0 && row.beginsGroup;
            const bool isLast = first + atOnce >= lines;
            Block block =
                piece(texts, first, std::min(atOnce, lines - first),
                      {.edge = begins ? 0.5 : 0.0, .edgeBelow = 0.0}, isLast ? row.least : 0);
            block.again = head;
            blocks.push_back(std::move(block));
        }
    }

private:
    struct Edges {
        double edge = 0; ///< points; 0: none
        double edgeBelow = 0;
    };

    [[nodiscard]] double padding() const { return m_table.rules == Rules::boxes ? inBox : above; }

    [[nodiscard]] std::vector<WrappedText> wrap(const std::vector<Runs>& cells) const
    {
        std::vector<WrappedText> texts;
        const bool boxes = m_table.rules == Rules::boxes;
        for (std::size_t i = 0; i < cells.size() && i < m_spans.size(); ++i) {
            const bool isLast = i + 1 == m_spans.size();
            const double spare = boxes ? 2 * inBox : isLast ? 0 : gap;
            texts.emplace_back(cells[i], m_spans[i].width - spare, m_table.type);
        }
        return texts;
    }

    static int mostLines(const std::vector<WrappedText>& texts)
    {
        int most = 0;
        for (const WrappedText& each : texts) {
            most = std::max(most, each.lines());
        }
        return most;
    }

    [[nodiscard]] Block piece(const std::vector<WrappedText>& texts, int first, int count,
                              Edges edges, double least) const
    {
        Block block;
        block.height = std::max(least, count * lineHeight(m_table.type) + 2 * padding());
        const bool boxes = m_table.rules == Rules::boxes;
        block.paint = [texts, first, count, edges, boxes, spans = m_spans, width = m_width,
                       height = block.height, pad = padding()](QPainter& painter, QPointF at) {
            if (boxes) {
                painter.setPen(QPen(Qt::black, points(0.7)));
                for (const Span& span : spans) {
                    painter.drawRect(QRectF(at.x() + span.left, at.y(), span.width, height));
                }
            } else {
                for (const auto& [edge, y] :
                     {std::pair(edges.edge, at.y()), std::pair(edges.edgeBelow, at.y() + height)}) {
                    if (edge > 0) {
                        painter.setPen(QPen(Qt::black, points(edge)));
                        painter.drawLine(QPointF(at.x(), y), QPointF(at.x() + width, y));
                    }
                }
            }
            painter.setPen(Qt::black);
            for (std::size_t i = 0; i < texts.size(); ++i) {
                texts[i].paint(painter, at + QPointF(spans[i].left + (boxes ? inBox : 0), pad),
                               first, count);
            }
        };
        return block;
    }

    const Table& m_table;
    double m_width;
    std::vector<Span> m_spans;
};

} // namespace

void append(Blocks& blocks, const Table& table, double width, double mostHeight)
{
    const Laying laying(table, width);
    const auto head = laying.head();
    if (head) {
        Block block = *head;
        block.keepsWithNext = true;
        blocks.push_back(std::move(block));
    }
    const double most = mostHeight - (head ? head->height : 0);
    for (const Row& row : table.rows) {
        laying.row(blocks, row, most, head);
    }
}

} // namespace loadwarden::paper
