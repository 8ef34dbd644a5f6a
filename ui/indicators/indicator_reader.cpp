#include "ui/indicators/indicator_reader.h"

#include "core/words/say_reading.h"
#include "ui/indicators/colour_reader.h"
#include "ui/indicators/front_reader.h"
#include "ui/indicators/sheet_reader.h"
#include "ui/look/text.h"

#include <QFontMetrics>

namespace loadwarden::ui {

IndicatorReader* makeReader(Look& look, Response response, const ReadingGuide& guide,
                            AnswersBy answersBy)
{
    switch (response) {
    case Response::movingFront: return new FrontReader(look, guide, answersBy);
    case Response::colour: return new ColourReader(look, guide, answersBy);
    case Response::sheet: return new SheetReader(look, answersBy);
    case Response::growth: break;
    }
    return nullptr;
}

SeenLine::SeenLine(Look& look, const QString& before, int lines, QWidget* parent)
    : QLabel(parent), m_before(before)
{
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    setAlignment(Qt::AlignTop | Qt::AlignLeft);
    setProperty("type", "strong");
    const auto keepRoom = [this, &look, lines] {
        setMinimumHeight(lines * QFontMetrics(look.font(Type::strong)).lineSpacing());
    };
    connect(&look, &Look::changed, this, keepRoom);
    keepRoom();
    show(std::nullopt);
}

void SeenLine::show(std::optional<Seen> seen)
{
    setText(seen ? ui::text(say(ruleOf(*seen)).says) : m_before);
    const char* tone = "";
    if (seen) {
        switch (readAsOf(*seen)) {
        case ReadAs::accept: tone = "good"; break;
        case ReadAs::reject: tone = "bad"; break;
        case ReadAs::unclear: tone = "waiting"; break;
        }
    }
    setStyleProperty(this, "tone", tone);
}

} // namespace loadwarden::ui
