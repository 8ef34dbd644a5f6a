#include "ui/questions/topic_paper.h"

#include "ui/look/text.h"
#include "ui/paper/sheets/answer_card.h"
#include "ui/paper/sheets/in_service_sheet.h"

#include <utility>

namespace loadwarden::ui {

void TopicPaper::ask(TopicSheet sheet, std::shared_ptr<const Guide> guide,
                     const TopicAnswer& answer)
{
    m_sheet = sheet;
    m_guide = std::move(guide);
    m_answer = answer;
    const QString of =
        sheet == TopicSheet::answerCard ? tr("the answer card") : tr("the in-service sheet");
    askFor(of, text(answer.topic->id));
}

PaperAsk::Making TopicPaper::making() const
{
    return [sheet = m_sheet, guide = m_guide, answer = m_answer,
            day = today()](const paper::House& house) {
        return sheet == TopicSheet::answerCard
                   ? paper::answerCard(answer, house, day)
                   : paper::inServiceSheet(answer, guide->library(), house, day);
    };
}

} // namespace loadwarden::ui
