#include "core/exchange/evidence/object_writer.h"

#include "core/quantities/decimal.h"
#include "core/quantities/json_text.h"
#include "core/quantities/thousandths.h"

namespace loadwarden::evidence_format {

namespace {

template <class Value>
bool isWritten(const Fetched<Value>& fetched, bool needed)
{
    return fetched.stated == Stated::yes || (fetched.stated == Stated::assumed && needed);
}

/// A moment as parseInstant() reads it. The years 2000 to 2099 are those of the local time that is
/// written, so a moment just outside them in UTC is written with the offset that goes furthest.
std::string timeText(Instant time)
{
    constexpr Instant begin{946'684'800'000}; // 2000-01-01T00:00Z
    constexpr Instant end{4'102'444'800'000}; // 2100-01-01T00:00Z
    constexpr Duration furthest = Duration::minutes(14 * 60 + 59);
    if (time < begin) {
        return formatAt(time, furthest);
    }
    if (time >= end) {
        return formatAt(time, -furthest);
    }
    return formatUtc(time);
}

void appendNumber(std::string& out, const Number& number, int decimals)
{
    // What was typed stays as it was typed, unless the number is another by now.
    if (!number.written.empty() && parseDecimal(number.written, decimals) == number.scaled) {
        out += number.written;
        return;
    }
    if (decimals == 0) {
        out += std::to_string(number.scaled);
        return;
    }
    std::int64_t thousandths = number.scaled;
    for (int i = decimals; i < 3; ++i) {
        thousandths *= 10;
    }
    appendThousandths(out, thousandths);
}

} // namespace

bool ObjectWriter::write(const ObjectType& type, const void* owner)
{
    m_out += '{';
    bool any = false;
    for (const Field& field : type.fields) {
        const std::size_t before = mark();
        if (any) {
            m_out += ',';
        }
        m_out += '"';
        m_out += field.name;
        m_out += "\":";
        if (put(field, owner, field.isNeededIn(owner))) {
            any = true;
        } else {
            backTo(before);
        }
    }
    m_out += '}';
    return any;
}

bool ObjectWriter::put(const TextRule& rule, const void* owner, bool needed)
{
    const auto text = rule.fetch(owner);
    if (!isWritten(text, needed)) {
        return false;
    }
    appendJsonString(m_out, text.value);
    return true;
}

bool ObjectWriter::put(const FormRule& rule, const void* owner, bool needed)
{
    const auto text = rule.fetch(owner);
    if (!isWritten(text, needed)) {
        return false;
    }
    appendJsonString(m_out, text.value);
    return true;
}

bool ObjectWriter::put(const WordRule& rule, const void* owner, bool needed)
{
    const auto which = rule.fetch(owner);
    if (!isWritten(which, needed)) {
        return false;
    }
    appendJsonString(m_out, rule.words[which.value]);
    return true;
}

bool ObjectWriter::put(const TimeRule& rule, const void* owner, bool needed)
{
    const auto time = rule.fetch(owner);
    if (!isWritten(time, needed)) {
        return false;
    }
    appendJsonString(m_out, timeText(time.value));
    return true;
}

bool ObjectWriter::put(const DateRule& rule, const void* owner, bool needed)
{
    const auto date = rule.fetch(owner);
    if (!isWritten(date, needed)) {
        return false;
    }
    appendJsonString(m_out, formatDate(date.value));
    return true;
}

bool ObjectWriter::put(const FlagRule& rule, const void* owner, bool needed)
{
    const auto flag = rule.fetch(owner);
    if (!isWritten(flag, needed)) {
        return false;
    }
    m_out += flag.value ? "true" : "false";
    return true;
}

bool ObjectWriter::put(const NumberRule& rule, const void* owner, bool needed)
{
    const auto number = rule.fetch(owner);
    if (!isWritten(number, needed)) {
        return false;
    }
    appendNumber(m_out, number.value, rule.decimals);
    return true;
}

bool ObjectWriter::put(const ObjectRule& rule, const void* owner, bool needed)
{
    const auto object = rule.fetch(owner);
    if (object.stated == Stated::no) {
        return false;
    }
    const bool any = write(*rule.type, object.value);
    return any || isWritten(object, needed);
}

bool ObjectWriter::put(const TextOrObjectRule& rule, const void* owner, bool needed)
{
    return put(rule.object, owner, needed);
}

bool ObjectWriter::put(const ListRule& rule, const void* owner, bool needed)
{
    if (!needed && rule.at(owner, 0) == nullptr) {
        return false;
    }
    m_out += '[';
    const void* element = nullptr;
    for (std::size_t i = 0; (element = rule.at(owner, i)) != nullptr; ++i) {
        if (i != 0) {
            m_out += ',';
        }
        (void)put(*rule.element, element, true);
    }
    m_out += ']';
    return true;
}

} // namespace loadwarden::evidence_format
