#include "ui/questions/topic_paper.h"

#include "ui/look/text.h"
#include "ui/paper/sheets/answer_card.h"
#include "ui/paper/sheets/in_service_sheet.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"

#include <QComboBox>

#include <utility>

namespace loadwarden::ui {

TopicPaper::TopicPaper(Workstation& workstation, QWidget* parent)
    : PaperAsk(workstation, parent), m_what(makeCombo())
{
    m_what->addItem(tr("Answer card"), static_cast<int>(TopicSheet::answerCard));
    m_what->addItem(tr("In-service sheet"), static_cast<int>(TopicSheet::inService));
    addFirst(new Field(tr("Which"), m_what));
}

void TopicPaper::ask(TopicSheet sheet, std::shared_ptr<const Guide> guide,
                     const TopicAnswer& answer)
{
    m_guide = std::move(guide);
    m_answer = answer;
    m_what->setCurrentIndex(m_what->findData(static_cast<int>(sheet)));
    const QString id = text(answer.topic->id);
    askFor(id, id
                   + (sheet == TopicSheet::answerCard ? QStringLiteral("-card")
                                                      : QStringLiteral("-in-service")));
}

PaperAsk::Making TopicPaper::making() const
{
    return [sheet = static_cast<TopicSheet>(m_what->currentData().toInt()), guide = m_guide,
            answer = m_answer, day = today()](const paper::House& house) {
        return sheet == TopicSheet::answerCard
                   ? paper::answerCard(answer, house, day)
                   : paper::inServiceSheet(answer, guide->library(), house, day);
    };
}

} // namespace loadwarden::ui
