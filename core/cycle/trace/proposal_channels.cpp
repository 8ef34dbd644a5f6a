#include "core/cycle/trace/header_words.h"
#include "core/cycle/trace/proposal_sheet.h"
#include "core/cycle/trace/text_values.h"

#include <algorithm>
#include <limits>
#include <set>

namespace loadwarden {
namespace {

/// What the values of a column span.
struct Range {
    double first = 0;
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();
    std::size_t count = 0;
};

Range rangeOf(const std::vector<std::string_view>& texts, DecimalMark decimal)
{
    Range range;
    for (const std::string_view text : texts) {
        if (const auto value = readNumber(text, decimal)) {
            range.first = range.count == 0 ? *value : range.first;
            range.least = std::min(range.least, *value);
            range.most = std::max(range.most, *value);
            ++range.count;
        }
    }
    return range;
}

class ChannelProposal {
public:
    ChannelProposal(const CutText& sheet, const std::vector<std::string>& header,
                    const std::vector<std::string>& units, MappingProposal& proposal)
        : m_sheet(sheet), m_header(header), m_units(units), m_proposal(proposal)
    {
    }

    void propose()
    {
        TraceMapping& mapping = m_proposal.mapping;
        std::set<std::string> names;
        for (std::size_t i = 0; i < mapping.columns; ++i) {
            if (i == mapping.time.column || mapping.time.dateColumn == i) {
                continue;
            }
            const HeaderWords words = wordsOf(nameOf(i), i < m_units.size() ? m_units[i] : "");
            const Range range = rangeOf(m_sheet.column(i), m_sheet.decimal);
            if (words.saysCounter && !mapping.counterColumn) {
                mapping.counterColumn = i;
                note(ProposedItem::counter, i, Sureness::stated, ProposalReason::headerWords);
            } else if (range.count != 0 || words.role) {
                mapping.channels.push_back({.column = i, .name = nameOf(i)});
                setRole(mapping.channels.back(), words);
            }
            if (!mapping.channels.empty() && mapping.channels.back().column == i
                && mapping.channels.back().role != ChannelRole::notUsed) {
                setUnit(mapping.channels.back(), words, range);
            }
        }
    }

private:
    [[nodiscard]] std::string nameOf(std::size_t column) const
    {
        return column < m_header.size() ? m_header[column] : std::string();
    }

    void setRole(MappedChannel& channel, const HeaderWords& words)
    {
        if (words.saysOther || !words.role) {
            note(ProposedItem::role, channel.column,
                 words.saysOther ? Sureness::stated : Sureness::guessed,
                 words.saysOther ? ProposalReason::headerWords : ProposalReason::noHint);
            return;
        }
        channel.role = *words.role;
        const bool isSure = words.saysPlace || !isTemperature(channel.role);
        note(ProposedItem::role, channel.column, isSure ? Sureness::stated : Sureness::guessed,
             ProposalReason::headerWords);
    }

    void setUnit(MappedChannel& channel, const HeaderWords& words, const Range& range)
    {
        if (words.unit && isTemperature(*words.unit) == isTemperature(channel.role)) {
            channel.unit = *words.unit;
            note(ProposedItem::unit, channel.column,
                 words.unitIsLetter ? Sureness::likely : Sureness::stated,
                 ProposalReason::headerWords);
        } else {
            channel.unit = isTemperature(channel.role) ? temperatureBy(range) : pressureBy(range);
            note(ProposedItem::unit, channel.column, Sureness::guessed, ProposalReason::valuesFit);
        }
        if (isTemperature(channel.role)) {
            return;
        }
        if (words.zero) {
            channel.zero = *words.zero;
            note(ProposedItem::zero, channel.column, Sureness::stated, ProposalReason::headerWords);
        } else {
            setZero(channel, range);
        }
    }

    /// Values of steam in one unit are hardly those of another.
    static RecorderUnit temperatureBy(const Range& range)
    {
        constexpr double mostCelsius = 200;
        constexpr double mostFahrenheit = 330;
        return range.most > mostFahrenheit && range.least > 250 ? RecorderUnit::kelvin
               : range.most > mostCelsius                       ? RecorderUnit::fahrenheit
                                                                : RecorderUnit::celsius;
    }

    static RecorderUnit pressureBy(const Range& range)
    {
        return range.most > 900  ? RecorderUnit::mbar
               : range.most > 45 ? RecorderUnit::kPa
               : range.most > 5  ? RecorderUnit::psi
                                 : RecorderUnit::bar;
    }

    /// A cycle begins at the atmosphere: that is zero by gauge. Below zero only gauge goes.
    void setZero(MappedChannel& channel, const Range& range)
    {
        const double atmosphere = channel.unit == RecorderUnit::kPa    ? 100
                                  : channel.unit == RecorderUnit::bar  ? 1
                                  : channel.unit == RecorderUnit::mbar ? 1000
                                  : channel.unit == RecorderUnit::psi  ? 14.5
                                  : channel.unit == RecorderUnit::inHg ? 29.5
                                                                       : 750;
        const bool isBelow = range.count != 0 && range.least < -0.1 * atmosphere;
        const bool beginsNearZero =
            range.count != 0 && range.first < 0.3 * atmosphere && range.first > -0.3 * atmosphere;
        const bool isAbsolute =
            range.count != 0 && range.first > 0.6 * atmosphere && range.first < 1.15 * atmosphere;
        channel.zero = isBelow || beginsNearZero ? PressureZero::gauge : PressureZero::absolute;
        const Sureness sureness = isBelow                        ? Sureness::likely
                                  : isAbsolute || beginsNearZero ? Sureness::likely
                                                                 : Sureness::guessed;
        note(ProposedItem::zero, channel.column, sureness,
             sureness == Sureness::likely ? ProposalReason::valuesFit : ProposalReason::noHint);
    }

    void note(ProposedItem item, std::size_t column, Sureness sureness, ProposalReason why)
    {
        m_proposal.notes.push_back({item, column + 1, sureness, why,
                                    why == ProposalReason::headerWords
                                        ? headWords(m_header, m_units, column)
                                        : std::string()});
    }

    const CutText& m_sheet;
    const std::vector<std::string>& m_header;
    const std::vector<std::string>& m_units;
    MappingProposal& m_proposal;
};

} // namespace

void proposeChannels(const CutText& sheet, const std::vector<std::string>& header,
                     const std::vector<std::string>& units, MappingProposal& proposal)
{
    ChannelProposal(sheet, header, units, proposal).propose();
}

} // namespace loadwarden
