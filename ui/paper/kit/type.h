#pragma once

#include <QFont>
#include <QString>

#include <cstdint>
#include <string_view>
#include <vector>

namespace loadwarden::paper {

/// The sizes of type on paper. Nothing is smaller than 9 pt.
enum class Type : std::uint8_t {
    body,    ///< 9 pt
    field,   ///< 10 pt: what is filled in or ticked
    section, ///< 11 pt
    steps,   ///< 14 pt: followed while it hangs on a wall
    title,   ///< 17 pt
    answer,  ///< 23 pt: read at two paces
    poster,  ///< 30 pt
    shout    ///< 40 pt: read from the other side of a room
};

[[nodiscard]] double pointsOf(Type type);

/// Height of one line of it, in units of paper.
[[nodiscard]] double lineHeight(Type type);

enum class Face : std::uint8_t {
    plain,
    strong,
    struck ///< what a correction took away
};

[[nodiscard]] QFont fontOf(Type type, Face face = Face::plain);

/// A piece of text in one face.
struct Run {
    QString text;
    Face face = Face::plain;

    friend bool operator==(const Run&, const Run&) = default;
};

/// Text in several faces, wrapped as one. A line feed ends a line.
using Runs = std::vector<Run>;

[[nodiscard]] QString text(std::string_view utf8);

[[nodiscard]] Runs plain(const QString& words);
[[nodiscard]] Runs strong(const QString& words);

} // namespace loadwarden::paper
