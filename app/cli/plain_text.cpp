#include "app/cli/plain_text.h"

#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

namespace loadwarden::cli {

namespace {

constexpr std::size_t lineWidth = 98;

constexpr std::array outcomesWorstFirst = {Outcome::fails, Outcome::review, Outcome::waits,
                                           Outcome::note};

/// Width in characters of a word of UTF-8.
std::size_t widthOf(std::string_view word)
{
    return static_cast<std::size_t>(std::count_if(word.begin(), word.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

/// Text from a record, on one line and without what would move a terminal's cursor.
std::string oneLine(std::string_view text)
{
    std::string line(text);
    for (char& c : line) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
            c = ' ';
        }
    }
    return line;
}

/// Appends a paragraph: `lead` on the first line, the lines after it as far in as the lead's text.
void appendParagraph(std::string& out, std::size_t indent, std::string_view lead,
                     std::string_view text)
{
    out.append(indent, ' ');
    out += lead;
    const std::string clean = oneLine(text);
    std::size_t column = indent + widthOf(lead);
    bool lineHasWord = false;
    for (std::size_t at = 0; at < clean.size();) {
        const std::size_t begin = clean.find_first_not_of(' ', at);
        if (begin == std::string::npos) {
            break;
        }
        const std::size_t end = std::min(clean.find(' ', begin), clean.size());
        const std::string_view word = std::string_view(clean).substr(begin, end - begin);
        const std::size_t width = widthOf(word);
        if (lineHasWord && column + 1 + width > lineWidth) {
            out += '\n';
            out.append(indent + 2, ' ');
            column = indent + 2;
        } else if (lineHasWord) {
            out += ' ';
            ++column;
        }
        out += word;
        column += width;
        lineHasWord = true;
        at = end;
    }
    out += '\n';
}

void appendReasons(std::string& out, std::size_t indent, std::span<const Finding> findings,
                   const HouseStyle& style)
{
    for (const Outcome outcome : outcomesWorstFirst) {
        for (const Finding& finding : findings) {
            if (finding.outcome != outcome) {
                continue;
            }
            const Said said = say(finding, style);
            appendParagraph(out, indent, say(outcome) + ": ", said.says);
            if (!said.next.empty()) {
                appendParagraph(out, indent + 2, "Next: ", said.next);
            }
            appendParagraph(out, indent + 2, "Source: ",
                            said.source + " [" + std::string(textOf(finding.key)) + "]");
        }
    }
}

/// A moment in local time, up to a minute late and never early.
std::string sayNotBefore(Instant moment, const HouseStyle& style)
{
    constexpr std::int64_t minute = 60'000;
    const Instant rounded{(moment.ms + minute - 1) / minute * minute};
    return sayTime(rounded, style);
}

void appendHead(std::string& out, std::string_view what, std::string_view lot,
                std::string_view verdict, const Occasion& occasion, const HouseStyle& style)
{
    out += what;
    out += lot.empty() ? "without a lot number" : oneLine(lot);
    out += ": ";
    out += verdict;
    out += "\n  As of ";
    out += sayTime(occasion.now, style);
    out += ", ";
    out += occasion.zone.name();
    out += ".\n";
}

/// The findings of one item, or of the load (-1), which stand together.
std::span<const Finding> findingsOf(const Decision& decision, std::int32_t item)
{
    const auto isOfItem = [&](const Finding& finding) { return finding.item == item; };
    const auto first = std::find_if(decision.findings.begin(), decision.findings.end(), isOfItem);
    const auto last = std::find_if_not(first, decision.findings.end(), isOfItem);
    return {first, last};
}

std::string itemsText(std::size_t count)
{
    return count == 1 ? "1 item" : std::to_string(count) + " items";
}

std::string verdictText(const Decision& decision)
{
    const auto worse = static_cast<std::size_t>(
        std::count_if(decision.items.begin(), decision.items.end(),
                      [&](const ItemDecision& item) { return item.verdict != decision.verdict; }));
    if (worse == 0) {
        return say(decision.verdict);
    }
    return say(decision.verdict) + ", except " + itemsText(worse) + " named below";
}

} // namespace

void appendPlain(std::string& out, const Decision& decision, const Occasion& occasion)
{
    const HouseStyle style{.zone = occasion.zone};
    appendHead(out, "Load ", decision.lot, verdictText(decision), occasion, style);
    if (decision.findings.empty()) {
        out += "  Nothing speaks against it.\n";
    }
    appendReasons(out, 2, findingsOf(decision, -1), style);
    std::size_t unnamed = 0;
    std::int32_t index = 0;
    for (const ItemDecision& item : decision.items) {
        const std::span<const Finding> findings = findingsOf(decision, index);
        ++index;
        if (findings.empty() && item.verdict == decision.verdict) {
            ++unnamed;
            continue;
        }
        out += "  Item " + oneLine(item.label) + ": " + say(item.verdict) + "\n";
        appendReasons(out, 4, findings, style);
    }
    if (unnamed != 0) {
        out += "  " + itemsText(unnamed) + (unnamed == decision.items.size() ? "" : " more")
               + ", as the load: " + say(decision.verdict) + "\n";
    }
    if (decision.nextChangeAt) {
        out +=
            "  Time alone changes this at " + sayNotBefore(*decision.nextChangeAt, style) + ".\n";
    }
    out += '\n';
}

void appendPlain(std::string& out, const TestJudgement& judgement, const Occasion& occasion)
{
    const HouseStyle style{.zone = occasion.zone};
    appendHead(out, "Test ", judgement.lot, say(judgement.result), occasion, style);
    appendReasons(out, 2, judgement.findings, style);
    out += '\n';
}

void appendCaution(std::string& out)
{
    appendParagraph(out, 0, "", caution());
}

} // namespace loadwarden::cli
