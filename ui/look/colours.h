#pragma once

#include <QColor>

namespace loadwarden::ui {

enum class Theme : std::uint8_t { light, dark };

/// A colour for marks and text, and one for what stands behind them.
struct Tone {
    QColor ink;  ///< readable on `soft`, on `surface` and on `window`
    QColor soft; ///< a surface on which `Colours::ink` is readable, too
};

/// Every colour of the program. Text has a contrast of at least 4.5:1 on what it stands on (WCAG
/// 2.2, 1.4.3), and what must be seen of a control at least 3:1 (1.4.11).
struct Colours {
    QColor window;     ///< behind everything
    QColor surface;    ///< panels and rows
    QColor field;      ///< what is typed into
    QColor line;       ///< hair lines, no meaning
    QColor edge;       ///< outline of what can be used
    QColor ink;        ///< text
    QColor muted;      ///< text beside other text
    QColor accent;     ///< the one thing to do; links, what is chosen
    QColor accentOver; ///< the same under the pointer
    QColor onAccent;   ///< text on accent
    QColor accentSoft; ///< behind what is chosen
    QColor focus;      ///< the ring around what has the keyboard
    QColor bezel;      ///< the frame of the program
    QColor bezelOver;  ///< the same under the pointer
    QColor onBezel;    ///< text on it
    QColor bezelMuted; ///< text on it that is not chosen
    Tone good;         ///< release, passed
    Tone waiting;      ///< quarantine, pending
    Tone bad;          ///< reprocess, failed
    Tone neutral;      ///< no verdict: running, void
};

[[nodiscard]] const Colours& coloursOf(Theme theme);

/// Contrast ratio of two opaque colours, from 1 to 21 (WCAG 2.2, definition of contrast ratio and
/// relative luminance).
[[nodiscard]] double contrastOf(const QColor& a, const QColor& b);

} // namespace loadwarden::ui
