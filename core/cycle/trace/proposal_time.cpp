#include "core/cycle/trace/header_words.h"
#include "core/cycle/trace/proposal_sheet.h"
#include "core/cycle/trace/text_values.h"

#include <algorithm>
#include <optional>

namespace loadwarden {
namespace {

/// How a column's fields read as one form of time.
struct FormFit {
    bool isSo = false;     ///< all that are filled read, and there are some
    bool increases = true; ///< and none is before the one above it
    double first = 0;
    double most = 0;
    double step = 0; ///< between the first two
};

FormFit fitOf(const std::vector<std::string_view>& texts, const TimeColumn& form,
              DecimalMark decimal)
{
    FormFit fit;
    double before = 0;
    std::size_t count = 0;
    for (const std::string_view text : texts) {
        if (text.empty()) {
            continue;
        }
        const std::optional<WrittenTime> time = readTime(text, {}, form, decimal);
        if (!time) {
            return {};
        }
        const double seconds = static_cast<double>(time->day) * 86'400 + time->seconds;
        fit.increases = fit.increases && (count == 0 || seconds >= before);
        fit.first = count == 0 ? seconds : fit.first;
        fit.step = count == 1 ? seconds - before : fit.step;
        fit.most = std::max(fit.most, seconds);
        before = seconds;
        ++count;
    }
    fit.isSo = count != 0;
    return fit;
}

bool areDays(const std::vector<std::string_view>& texts, DateOrder order)
{
    return !texts.empty() && std::ranges::all_of(texts, [order](std::string_view text) {
        return readDay(text, order).has_value();
    });
}

constexpr DateOrder orders[] = {DateOrder::yearMonthDay, DateOrder::monthDayYear,
                                DateOrder::dayMonthYear};

class TimeProposal {
public:
    TimeProposal(const CutText& sheet, const std::vector<std::string>& header,
                 const std::vector<std::string>& units, MappingProposal& proposal)
        : m_sheet(sheet), m_proposal(proposal), m_time(proposal.mapping.time)
    {
        for (std::size_t i = 0; i < sheet.columns && i < mostTraceColumns; ++i) {
            m_texts.push_back(sheet.column(i));
            m_words.push_back(wordsOf(i < header.size() ? header[i] : std::string_view(),
                                      i < units.size() ? units[i] : std::string_view()));
            m_names.push_back(headWords(header, units, i));
        }
    }

    void propose()
    {
        if (proposeClock() || proposeNumbers()) {
            return;
        }
        note(ProposedItem::timeColumn, Sureness::guessed, ProposalReason::noHint);
        note(ProposedItem::timeForm, Sureness::guessed, ProposalReason::noHint);
    }

private:
    [[nodiscard]] FormFit fit(std::size_t column, TimeForm form,
                              DateOrder order = DateOrder::yearMonthDay) const
    {
        return fitOf(m_texts[column], {.form = form, .order = order}, m_sheet.decimal);
    }

    /// A date-time in one column, or h:m:s, h:m, m:s with or without a date beside it.
    bool proposeClock()
    {
        for (std::size_t i = 0; i < m_texts.size(); ++i) {
            std::vector<DateOrder> fitting;
            std::ranges::copy_if(orders, std::back_inserter(fitting), [&](DateOrder order) {
                return fit(i, TimeForm::dateTime, order).isSo;
            });
            if (!fitting.empty()) {
                m_time = {.column = i, .form = TimeForm::dateTime};
                noteColumn(i);
                note(ProposedItem::timeForm, Sureness::stated, ProposalReason::valuesFit);
                noteOrder(fitting, m_texts[i].front());
                return true;
            }
        }
        for (std::size_t i = 0; i < m_texts.size(); ++i) {
            const bool three = fit(i, TimeForm::hoursMinutesSeconds).isSo;
            const bool hours = fit(i, TimeForm::hoursMinutes).isSo;
            const bool minutes = fit(i, TimeForm::minutesSeconds).isSo;
            if (three || hours || minutes) {
                m_time = {.column = i, .form = TimeForm::hoursMinutesSeconds};
                noteColumn(i);
                if (three) {
                    note(ProposedItem::timeForm, Sureness::stated, ProposalReason::valuesFit);
                } else {
                    chooseTwoParts(hours, minutes);
                }
                findDate();
                return true;
            }
        }
        return false;
    }

    void chooseTwoParts(bool hours, bool minutes)
    {
        const FormFit asMinutes = fit(m_time.column, TimeForm::minutesSeconds);
        const bool isOnlyOne = hours != minutes;
        const std::optional<TimeForm> said = m_words[m_time.column].form;
        const bool isBeyondDay = asMinutes.most >= 24 * 60;
        const bool beginsAtZero = asMinutes.first < 60;
        if (said == TimeForm::minutesSeconds || said == TimeForm::hoursMinutes) {
            m_time.form = *said;
            note(ProposedItem::timeForm, Sureness::stated, ProposalReason::headerWords);
        } else if (isOnlyOne || isBeyondDay) {
            m_time.form = minutes ? TimeForm::minutesSeconds : TimeForm::hoursMinutes;
            note(ProposedItem::timeForm, Sureness::likely, ProposalReason::valuesFit);
        } else {
            m_time.form = beginsAtZero ? TimeForm::minutesSeconds : TimeForm::hoursMinutes;
            note(ProposedItem::timeForm, Sureness::guessed, ProposalReason::valuesFit);
        }
    }

    /// A date of its own beside a clock.
    void findDate()
    {
        if (!endsAtMidnight(m_time.form)) {
            return;
        }
        for (std::size_t i = 0; i < m_texts.size(); ++i) {
            std::vector<DateOrder> fitting;
            std::ranges::copy_if(orders, std::back_inserter(fitting),
                                 [&](DateOrder order) { return areDays(m_texts[i], order); });
            if (i != m_time.column && !fitting.empty()) {
                m_time.form = TimeForm::dateTime;
                m_time.dateColumn = i;
                noteOrder(fitting, m_texts[i].front());
                return;
            }
        }
    }

    /// Numbers that increase, where the header says time, else the first such.
    bool proposeNumbers()
    {
        std::optional<std::size_t> found;
        for (std::size_t i = 0; i < m_texts.size(); ++i) {
            const FormFit asNumber = fit(i, TimeForm::seconds);
            if (!asNumber.isSo || !asNumber.increases || !(asNumber.most > asNumber.first)) {
                continue;
            }
            if (m_words[i].saysTime) {
                found = i;
                break;
            }
            if (!found && !m_words[i].role && !m_words[i].saysCounter) {
                found = i;
            }
        }
        if (!found) {
            return false;
        }
        m_time = {.column = *found, .form = TimeForm::seconds};
        noteColumn(*found);
        const std::optional<TimeForm> said = m_words[*found].form;
        if (said == TimeForm::seconds || said == TimeForm::minutes) {
            m_time.form = *said;
            note(ProposedItem::timeForm, Sureness::stated, ProposalReason::headerWords);
        } else {
            note(ProposedItem::timeForm, Sureness::guessed, ProposalReason::noHint);
        }
        return true;
    }

    void noteColumn(std::size_t column)
    {
        const bool isSaid = m_words[column].saysTime;
        note(ProposedItem::timeColumn, isSaid ? Sureness::stated : Sureness::likely,
             isSaid ? ProposalReason::headerWords : ProposalReason::valuesFit);
    }

    /// Of several orders that fit: of figures with points the day comes first, else the month.
    void noteOrder(const std::vector<DateOrder>& fitting, std::string_view example)
    {
        m_time.order = fitting.front();
        if (fitting.size() > 1 && example.find('.') < 3) {
            m_time.order = fitting.back();
        }
        const bool isSure = fitting.size() == 1;
        note(ProposedItem::dateOrder, isSure ? Sureness::stated : Sureness::guessed,
             isSure ? ProposalReason::valuesFit : ProposalReason::noHint);
    }

    void note(ProposedItem item, Sureness sureness, ProposalReason why)
    {
        const std::size_t column = m_time.column;
        m_proposal.notes.push_back({item, column + 1, sureness, why,
                                    why == ProposalReason::headerWords ? m_names[column] : ""});
    }

    const CutText& m_sheet;
    MappingProposal& m_proposal;
    TimeColumn& m_time;
    std::vector<std::vector<std::string_view>> m_texts;
    std::vector<HeaderWords> m_words;
    std::vector<std::string> m_names;
};

} // namespace

void proposeTime(const CutText& sheet, const std::vector<std::string>& header,
                 const std::vector<std::string>& units, MappingProposal& proposal)
{
    TimeProposal(sheet, header, units, proposal).propose();
}

} // namespace loadwarden
