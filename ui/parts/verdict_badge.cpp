#include "ui/parts/verdict_badge.h"

#include "core/words/say.h"
#include "ui/look/text.h"

#include <QHBoxLayout>

namespace loadwarden::ui {
namespace {

QString propertyOf(ToneOf tone)
{
    switch (tone) {
    case ToneOf::good: return QStringLiteral("good");
    case ToneOf::waiting: return QStringLiteral("waiting");
    case ToneOf::bad: return QStringLiteral("bad");
    case ToneOf::neutral:
    case ToneOf::bezel: break;
    }
    return QStringLiteral("neutral");
}

} // namespace

VerdictBadge::VerdictBadge(Look& look, Size size, QWidget* parent)
    : QWidget(parent),
      m_glyph(
          new GlyphView(look, Glyph::quarantine, ToneOf::waiting, size == Size::page ? 40 : 20)),
      m_word(makeLabel({}, size == Size::page ? Type::verdict : Type::strong, false))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(size == Size::page ? space::medium : space::small);
    row->addWidget(m_glyph);
    row->addWidget(m_word, 1);
}

void VerdictBadge::show(Verdict verdict)
{
    show(glyphOf(verdict), toneOf(verdict), text(say(verdict)));
}

void VerdictBadge::show(TestResult result)
{
    show(glyphOf(result), toneOf(result), text(say(result)));
}

void VerdictBadge::show(Glyph glyph, ToneOf tone, const QString& word)
{
    m_glyph->show(glyph, tone);
    m_word->setText(word);
    setStyleProperty(m_word, "tone", propertyOf(tone));
    setAccessibleName(word);
}

} // namespace loadwarden::ui
