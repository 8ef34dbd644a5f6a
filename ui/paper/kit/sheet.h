#pragma once

#include "ui/paper/kit/pages.h"
#include "ui/paper/kit/table.h"
#include "ui/paper/kit/type.h"

#include <functional>
#include <utility>
#include <vector>

namespace loadwarden::paper {

/// Something with a name before it.
struct Named {
    QString name;
    Runs value;
};

/// A word beside its shape, and what is said of it.
struct Statement {
    std::function<void(QPainter&, const QRectF&)> mark; ///< none: the word alone
    QString word;
    Runs says;
};

/// Lays out one sheet from top to bottom.
class Sheet {
public:
    Sheet(Frame frame, PageSize size);

    /// A heading, which stays with what follows.
    void section(const QString& heading, Type type = Type::section);
    void paragraph(const Runs& runs, Type type = Type::body);
    /// Names and values in so many columns, read along the lines.
    void grid(const std::vector<Named>& fields, int columns);
    void table(const Table& table);
    /// Boxes beside each other, each with a shape and a word.
    void statements(const std::vector<Statement>& statements, Type word = Type::title,
                    Type says = Type::body);
    /// Named lines to write on, in so many columns.
    void writeLines(const std::vector<QString>& names, int columns, double height);
    /// Empty lines to write on.
    void emptyLines(int count, double height);
    /// A picture over the whole width, painted into its rectangle.
    void picture(double height, std::function<void(QPainter&, const QRectF&)> paint);
    void space(double height);
    /// What follows stands on a page of its own.
    void newPage();

    /// What is left of the first page; below 0 where it is full.
    [[nodiscard]] double left() const;
    [[nodiscard]] double width() const { return m_width; }
    [[nodiscard]] Pages pages() &&;

private:
    Frame m_frame;
    PageSize m_size;
    double m_width;
    double m_mostHeight;
    Blocks m_blocks;
};

} // namespace loadwarden::paper
