#pragma once

#include "ui/parts/glyph_view.h"

class QLabel;

namespace loadwarden::ui {

/// The answer: a verdict or a test's result as a shape and a word; its colour only repeats them.
class VerdictBadge : public QWidget {
    Q_OBJECT

public:
    enum class Size : std::uint8_t { row, page };

    VerdictBadge(Look& look, Size size, QWidget* parent = nullptr);

    void show(Verdict verdict);
    void show(TestResult result);
    /// What has neither yet.
    void show(Glyph glyph, ToneOf tone, const QString& word);

private:
    GlyphView* m_glyph;
    QLabel* m_word;
};

} // namespace loadwarden::ui
