#include "core/exchange/evidence/object_writer.h"

#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/exchange/evidence/text_rule.h"
#include "core/quantities/decimal.h"
#include "core/quantities/json_text.h"
#include "core/quantities/thousandths.h"

#include <stdexcept>

namespace loadwarden::evidence_format {

namespace {

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
    if (type.canState != nullptr && !type.canState(owner)) {
        refuse("it has a value for which there is no field");
    }
    m_out += '{';
    ++m_objects;
    bool any = false;
    for (const Field& field : type.fields) {
        const std::size_t before = m_out.size();
        const std::size_t objectsBefore = m_objects;
        m_way.push_back({.name = field.name, .index = 0, .isList = false});
        if (any) {
            m_out += ',';
        }
        m_out += '"';
        m_out += field.name;
        m_out += "\":";
        if (put(field, owner, field.isNeededIn(owner))) {
            any = true;
        } else {
            m_out.resize(before);
            m_objects = objectsBefore;
        }
        m_way.pop_back();
    }
    m_out += '}';
    return any;
}

template <class Value>
bool ObjectWriter::isWritten(const Fetched<Value>& fetched, bool needed) const
{
    if (fetched.stated == Stated::no && needed) {
        refuse("it is needed and there is no value for it");
    }
    return fetched.stated == Stated::yes || (fetched.stated == Stated::assumed && needed);
}

void ObjectWriter::refuse(const std::string& why) const
{
    std::string message = "evidence cannot state ";
    for (const Step& step : m_way) {
        message += pointerStep(step.name);
        if (step.isList) {
            message += '/' + std::to_string(step.index);
        }
    }
    throw std::out_of_range(message + ": " + why);
}

bool ObjectWriter::put(const TextRule& rule, const void* owner, bool needed)
{
    const auto text = rule.fetch(owner);
    if (!isWritten(text, needed)) {
        return false;
    }
    if (const auto length = wrongLengthIn(text.value, rule)) {
        refuse(wrongLength(rule, *length));
    }
    if (const auto unseen = wrongCharacterIn(text.value, rule)) {
        refuse(wrongCharacter(rule, *unseen));
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
    if (which.value >= rule.words.size()) {
        refuse("it has a value for which there is no word");
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
    if (time.value < firstMoment || time.value > lastMoment) {
        refuse("the years are 2000 to 2099, not " + formatUtc(time.value));
    }
    appendJsonString(m_out, formatUtc(time.value));
    return true;
}

bool ObjectWriter::put(const DateRule& rule, const void* owner, bool needed)
{
    const auto date = rule.fetch(owner);
    if (!isWritten(date, needed)) {
        return false;
    }
    const std::string text = formatDate(date.value);
    if (!parseDate(text)) {
        refuse("the years are 2000 to 2099, not " + text);
    }
    appendJsonString(m_out, text);
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
    const std::size_t begin = m_out.size();
    appendNumber(m_out, number.value, rule.decimals);
    const auto [scaled, written, isExact] = number.value;
    if (scaled < rule.least || scaled > rule.most) {
        refuse(wrongNumber(rule, std::string_view(m_out).substr(begin)));
    }
    if (!isExact) {
        refuse("lies between two numbers with at most " + std::to_string(rule.decimals)
               + " decimals");
    }
    return true;
}

bool ObjectWriter::put(const ObjectRule& rule, const void* owner, bool needed)
{
    const auto object = rule.fetch(owner);
    if (!isWritten(object, needed) && object.stated == Stated::no) {
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
    std::size_t count = 0;
    for (const void* element = nullptr; (element = rule.at(owner, count)) != nullptr; ++count) {
        if (count != 0) {
            m_out += ',';
        }
        m_way.back().index = count;
        m_way.back().isList = true;
        (void)put(*rule.element, element, true);
    }
    m_out += ']';
    if (count < rule.least) {
        refuse("the list has too few elements");
    }
    return true;
}

} // namespace loadwarden::evidence_format
