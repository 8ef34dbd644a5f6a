#include "ui/paper/kit/sheet.h"

#include "ui/paper/kit/wrapped_text.h"

#include <QPainter>

#include <algorithm>

namespace loadwarden::paper {
namespace {

constexpr double gridGap = points(8);
constexpr double markSide = points(25);

double columnWidth(double width, int columns)
{
    return (width - gridGap * (columns - 1)) / columns;
}

} // namespace

Sheet::Sheet(Frame frame, PageSize size)
    : m_frame(std::move(frame)),
      m_size(size),
      m_width(bodyWidth(size)),
      m_mostHeight(bodyHeight(size, m_frame))
{
}

void Sheet::section(const QString& heading, Type type)
{
    space(points(6));
    m_blocks.back().keepsWithNext = true;
    const WrappedText words(strong(heading), m_width, type);
    m_blocks.push_back(
        {.height = words.height() + points(1),
         .paint = [words](QPainter& painter, QPointF at) { words.paint(painter, at); },
         .keepsWithNext = true,
         .again = nullptr});
}

void Sheet::paragraph(const Runs& runs, Type type)
{
    const WrappedText words(runs, m_width, type);
    const int atOnce = std::max(1, static_cast<int>(m_mostHeight / lineHeight(type)) - 1);
    for (int first = 0; first < words.lines(); first += atOnce) {
        const int count = std::min(atOnce, words.lines() - first);
        m_blocks.push_back(
            {.height = count * lineHeight(type),
             .paint = [words, first, count](QPainter& painter,
                                            QPointF at) { words.paint(painter, at, first, count); },
             .keepsWithNext = false,
             .again = nullptr});
    }
}

void Sheet::grid(const std::vector<Named>& fields, int columns)
{
    const double width = columnWidth(m_width, columns);
    for (std::size_t first = 0; first < fields.size(); first += static_cast<std::size_t>(columns)) {
        std::vector<WrappedText> cells;
        double height = 0;
        const std::size_t end = std::min(fields.size(), first + static_cast<std::size_t>(columns));
        for (std::size_t i = first; i < end; ++i) {
            Runs runs{{fields[i].name + QStringLiteral(":  "), Face::plain}};
            for (const Run& run : fields[i].value) {
                runs.push_back({run.text, run.face == Face::plain ? Face::strong : run.face});
            }
            cells.emplace_back(runs, width, Type::body);
            height = std::max(height, cells.back().height());
        }
        m_blocks.push_back({.height = height + points(1.5),
                            .paint =
                                [cells, width](QPainter& painter, QPointF at) {
                                    for (const WrappedText& cell : cells) {
                                        cell.paint(painter, at);
                                        at.rx() += width + gridGap;
                                    }
                                },
                            .keepsWithNext = false,
                            .again = nullptr});
    }
}

void Sheet::table(const Table& table)
{
    append(m_blocks, table, m_width, m_mostHeight);
}

void Sheet::statements(const std::vector<Statement>& statements, Type type, Type saysType)
{
    const auto columns = static_cast<int>(statements.size());
    const double width = columnWidth(m_width, columns);
    const double side = std::max(markSide, lineHeight(type));
    const double inside = points(6);
    struct Laid {
        Statement statement;
        double left;
        WrappedText word;
        WrappedText says;
    };
    std::vector<Laid> laid;
    double height = 0;
    for (const Statement& each : statements) {
        const double left = each.mark ? side + points(8) : 0;
        Laid one{each, left, WrappedText(strong(each.word), width - 2 * inside - left, type),
                 WrappedText(each.says, width - 2 * inside - left, saysType)};
        height = std::max({height, one.word.height() + one.says.height(), each.mark ? side : 0.0});
        laid.push_back(std::move(one));
    }
    height += 2 * inside;
    m_blocks.push_back({.height = height + points(2),
                        .paint =
                            [laid, width, height, inside, side](QPainter& painter, QPointF at) {
                                for (const Laid& one : laid) {
                                    painter.setPen(QPen(Qt::black, points(1.5)));
                                    painter.drawRect(QRectF(at, QSizeF(width, height)));
                                    painter.setPen(Qt::black);
                                    const QPointF corner = at + QPointF(inside, inside);
                                    if (one.statement.mark) {
                                        one.statement.mark(painter,
                                                           QRectF(corner, QSizeF(side, side)));
                                    }
                                    const QPointF words = corner + QPointF(one.left, 0);
                                    one.word.paint(painter, words);
                                    one.says.paint(painter, words + QPointF(0, one.word.height()));
                                    at.rx() += width + gridGap;
                                }
                            },
                        .keepsWithNext = false,
                        .again = nullptr});
}

void Sheet::writeLines(const std::vector<QString>& names, int columns, double height)
{
    const double width = columnWidth(m_width, columns);
    for (std::size_t first = 0; first < names.size(); first += static_cast<std::size_t>(columns)) {
        std::vector<WrappedText> labels;
        const std::size_t end = std::min(names.size(), first + static_cast<std::size_t>(columns));
        double high = height;
        for (std::size_t i = first; i < end; ++i) {
            labels.emplace_back(plain(names[i]), width * 0.45, Type::body);
            high = std::max(high, labels.back().height() + points(4));
        }
        m_blocks.push_back({.height = high,
                            .paint =
                                [labels, width, high](QPainter& painter, QPointF at) {
                                    for (const WrappedText& label : labels) {
                                        const double foot = at.y() + high - points(2);
                                        label.paint(painter, {at.x(), foot - label.height()});
                                        painter.setPen(QPen(Qt::black, points(0.7)));
                                        painter.drawLine(QPointF(at.x() + width * 0.46, foot),
                                                         QPointF(at.x() + width, foot));
                                        painter.setPen(Qt::black);
                                        at.rx() += width + gridGap;
                                    }
                                },
                            .keepsWithNext = false,
                            .again = nullptr});
    }
}

void Sheet::emptyLines(int count, double height)
{
    for (int i = 0; i < count; ++i) {
        m_blocks.push_back({.height = height,
                            .paint =
                                [width = m_width, height](QPainter& painter, QPointF at) {
                                    painter.setPen(QPen(Qt::black, points(0.7)));
                                    const double y = at.y() + height - points(2);
                                    painter.drawLine(QPointF(at.x(), y),
                                                     QPointF(at.x() + width, y));
                                },
                            .keepsWithNext = false,
                            .again = nullptr});
    }
}

void Sheet::picture(double height, std::function<void(QPainter&, const QRectF&)> paint)
{
    const QSizeF size(m_width, std::min(height, m_mostHeight));
    m_blocks.push_back({.height = size.height(),
                        .paint =
                            [paint = std::move(paint), size](QPainter& painter, QPointF at) {
                                paint(painter, {at, size});
                            },
                        .keepsWithNext = false,
                        .again = nullptr});
}

void Sheet::space(double height)
{
    m_blocks.push_back({.height = height,
                        .paint = [](QPainter&, QPointF) {},
                        .keepsWithNext = false,
                        .again = nullptr});
}

void Sheet::newPage()
{
    space(0);
    m_blocks.back().beginsPage = true;
}

double Sheet::left() const
{
    double height = m_mostHeight;
    for (const Block& block : m_blocks) {
        height -= block.height;
    }
    return height;
}

Pages Sheet::pages() &&
{
    return {std::move(m_frame), m_size, std::move(m_blocks)};
}

} // namespace loadwarden::paper
