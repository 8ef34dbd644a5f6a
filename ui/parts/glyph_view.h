#pragma once

#include "ui/look/glyphs.h"
#include "ui/look/look.h"

#include <QWidget>

namespace loadwarden::ui {

/// Which tone of the colours.
enum class ToneOf : std::uint8_t { good, waiting, bad, neutral, bezel };

[[nodiscard]] Tone toneOf(const Colours& colours, ToneOf which);
[[nodiscard]] ToneOf toneOf(Verdict verdict);
[[nodiscard]] ToneOf toneOf(TestResult result);

/// A mark beside words that say the same: a screen reader passes over it.
class GlyphView : public QWidget {
    Q_OBJECT

public:
    GlyphView(Look& look, Glyph glyph, ToneOf tone, int side, QWidget* parent = nullptr);

    void show(Glyph glyph, ToneOf tone);

    [[nodiscard]] QSize sizeHint() const override { return {m_side, m_side}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Look& m_look;
    Glyph m_glyph;
    ToneOf m_tone;
    int m_side;
};

} // namespace loadwarden::ui
