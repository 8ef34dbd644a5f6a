#pragma once

#include "ui/look/colours.h"

#include <QFont>
#include <QObject>

class QApplication;

namespace loadwarden::ui {

/// Distances in pixels, and what a finger in a glove hits.
namespace space {
inline constexpr int hair = 4;
inline constexpr int small = 8;
inline constexpr int medium = 16;
inline constexpr int large = 24;
inline constexpr int page = 32;
inline constexpr int target = 44;
} // namespace space

enum class TextSize : std::uint8_t { normal, large, largest };

/// What a text is on a page; the style sheet knows them by the property "type".
enum class Type : std::uint8_t { body, strong, heading, title, verdict };

/// How the program looks: its colours and sizes of text, applied to the whole application.
class Look : public QObject {
    Q_OBJECT

public:
    /// Nothing changes before apply().
    explicit Look(QApplication& application);

    void apply(Theme theme, TextSize size);

    [[nodiscard]] Theme theme() const { return m_theme; }
    [[nodiscard]] TextSize textSize() const { return m_size; }
    [[nodiscard]] const Colours& colours() const { return coloursOf(m_theme); }
    /// For what is painted by hand; digits have one width.
    [[nodiscard]] QFont font(Type type) const;

signals:
    void changed();

private:
    QApplication& m_application;
    Theme m_theme = Theme::light;
    TextSize m_size = TextSize::normal;
};

/// Points of a text: never below 11.
[[nodiscard]] double pointsOf(Type type, TextSize size);

} // namespace loadwarden::ui
