#include "ui/parts/glyph_view.h"

#include <QPainter>

namespace loadwarden::ui {

Tone toneOf(const Colours& colours, ToneOf which)
{
    switch (which) {
    case ToneOf::good: return colours.good;
    case ToneOf::waiting: return colours.waiting;
    case ToneOf::bad: return colours.bad;
    case ToneOf::neutral: return colours.neutral;
    case ToneOf::bezel: return {colours.onBezel, colours.bezel};
    }
    return colours.neutral;
}

ToneOf toneOf(Verdict verdict)
{
    return verdict == Verdict::release      ? ToneOf::good
           : verdict == Verdict::quarantine ? ToneOf::waiting
                                            : ToneOf::bad;
}

ToneOf toneOf(TestResult result)
{
    switch (result) {
    case TestResult::failed: return ToneOf::bad;
    case TestResult::voided: return ToneOf::neutral;
    case TestResult::pending: return ToneOf::waiting;
    case TestResult::passed: return ToneOf::good;
    }
    return ToneOf::neutral;
}

GlyphView::GlyphView(Look& look, Glyph glyph, ToneOf tone, int side, QWidget* parent)
    : QWidget(parent), m_look(look), m_glyph(glyph), m_tone(tone), m_side(side)
{
    setFixedSize(side, side);
    connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
}

void GlyphView::show(Glyph glyph, ToneOf tone)
{
    m_glyph = glyph;
    m_tone = tone;
    update();
}

void GlyphView::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    const Tone tone = toneOf(m_look.colours(), m_tone);
    paintGlyph(painter, m_glyph, QRectF(rect()), tone.ink,
               m_tone == ToneOf::bezel ? tone.soft : m_look.colours().surface);
}

} // namespace loadwarden::ui
