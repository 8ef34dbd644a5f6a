#include "ui/paper/sheets/answer_card.h"

#include "ui/paper/sheets/topic_parts.h"

#include <algorithm>
#include <array>

namespace loadwarden::paper {
namespace {

struct CardTypes {
    Type answer;
    Type steps;
    Type prose;
};

/// From the largest to the smallest.
constexpr std::array triedTypes = {CardTypes{Type::poster, Type::title, Type::steps},
                                   CardTypes{Type::answer, Type::steps, Type::section},
                                   CardTypes{Type::title, Type::steps, Type::section},
                                   CardTypes{Type::title, Type::section, Type::field},
                                   CardTypes{Type::section, Type::body, Type::body}};

constexpr double groupGap = points(4);

class Card {
public:
    Card(const TopicAnswer& answer, const House& house, Date printed)
        : m_answer(answer),
          m_topic(*answer.topic),
          m_house(house),
          m_frame(topicFrame(house, tr("Answer card"), m_topic, printed))
    {
    }

    /// The card in those types, its small print at the foot of the page.
    [[nodiscard]] Pages make(const CardTypes& types) const
    {
        Sheet small(m_frame, m_house.size);
        appendGrounds(small, m_answer);
        const double foot = bodyHeight(m_house.size, m_frame) - small.left();

        Sheet sheet(m_frame, m_house.size);
        above(sheet, types);
        sheet.space(std::max(points(6), sheet.left() - foot - points(1)));
        appendGrounds(sheet, m_answer);
        return std::move(sheet).pages();
    }

private:
    void above(Sheet& sheet, const CardTypes& types) const
    {
        sheet.space(points(6));
        appendPolicyWarning(sheet, m_answer);
        sheet.statements({{nullptr, text(m_topic.shortAnswer), {}}}, types.answer);
        sheet.space(groupGap);
        const Type heading = std::max(types.prose, Type::section);
        sheet.section(tr("What to do now"), heading);
        appendSteps(sheet, m_topic, types.steps);
        appendPicture(sheet, m_topic);
        sheet.space(groupGap);
        sheet.section(tr("Why"), heading);
        sheet.paragraph(plain(text(m_topic.why)), types.prose);
        appendNote(sheet, m_answer, types.prose);
        sheet.space(groupGap);
        appendDecisions(sheet, m_answer, Reasoned::no, types.prose);
        appendCaution(sheet, m_topic, types.prose);
    }

    const TopicAnswer& m_answer;
    const Topic& m_topic;
    const House& m_house;
    Frame m_frame;
};

} // namespace

Pages answerCard(const TopicAnswer& answer, const House& house, Date printed)
{
    const Card card(answer, house, printed);
    for (const CardTypes& types : triedTypes) {
        Pages pages = card.make(types);
        if (pages.count() == 1) {
            return pages;
        }
    }
    return card.make(triedTypes.back());
}

} // namespace loadwarden::paper
