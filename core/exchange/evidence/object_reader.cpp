#include "core/exchange/evidence/object_reader.h"

#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/exchange/evidence/text_rule.h"
#include "core/quantities/decimal.h"
#include "core/quantities/unseen.h"

#include <algorithm>

namespace loadwarden::evidence_format {

namespace {

/// Whether a name of the file may be repeated in a pointer; else the pointer ends before it.
bool isPrintable(std::string_view name)
{
    constexpr std::size_t most = 200;
    return name.size() <= most && !findUnseen(name);
}

} // namespace

bool ObjectReader::read(const ObjectType& type, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind == JsonKind::end) {
        return stop(0, "there is no record: the text is empty");
    }
    if (kind != JsonKind::object) {
        refuseKind(kind, std::string(type.name) + " { ... }");
        return false;
    }
    if (!readObject(type, owner)) {
        return false;
    }
    if (m_scanner.peek() != JsonKind::end) {
        return stop(m_scanner.mark(),
                    "something stands after the end of the record; a record is one object { ... }");
    }
    return m_problems.empty();
}

bool ObjectReader::offsetsFit(const Zone& zone) const
{
    return std::ranges::all_of(m_offsets, [&zone](const WithOffset& each) {
        return each.offset == zone.offsetAt(each.time);
    });
}

std::vector<ReadProblem> ObjectReader::takeProblems()
{
    std::ranges::stable_sort(m_problems, {}, &Problem::at);
    std::vector<std::size_t> bytes;
    for (const Problem& problem : m_problems) {
        bytes.push_back(problem.at);
    }
    const std::vector<TextPlace> places = placesOf(m_text, bytes, m_begin);
    std::vector<ReadProblem> taken;
    for (std::size_t i = 0; i < places.size(); ++i) {
        taken.push_back(
            {places[i], std::move(m_problems[i].pointer), std::move(m_problems[i].message)});
    }
    return taken;
}

/// The opening bracket comes next.
bool ObjectReader::readObject(const ObjectType& type, void* owner)
{
    const std::size_t begin = m_scanner.mark();
    if (++m_objects > mostObjects) {
        return stop(begin, "the record has more than " + std::to_string(mostObjects)
                               + " objects; a record is of one load");
    }
    (void)m_scanner.take('{');
    const std::size_t before = m_problems.size();
    FieldSet present = 0;
    if (!m_scanner.take('}')) {
        bool more = true;
        while (more) {
            if (!readField(type, owner, present) || !goesOn('}', begin, more)) {
                return false;
            }
        }
    }
    return finishObject(type, owner, present, begin, m_problems.size() == before);
}

/// What stands after a value in an object or list that began there: a comma and then more, or its
/// end.
bool ObjectReader::goesOn(char close, std::size_t begin, bool& more)
{
    if (m_scanner.take(',')) {
        more = true;
        return true;
    }
    if (m_scanner.take(close)) {
        more = false;
        return true;
    }
    return mendComma(close, begin, more);
}

/// Says what is missing after a value, and goes on where that can only have been a comma.
bool ObjectReader::mendComma(char close, std::size_t begin, bool& more)
{
    const std::size_t here = m_scanner.endOfLast();
    const JsonKind kind = m_scanner.peek();
    if (kind == JsonKind::end) {
        return stop(here, std::string("the record ends here, but ") + close
                              + " is missing: " + openSince(begin));
    }
    const char stands = m_scanner.next();
    if (stands == '}' || stands == ']') {
        return stop(m_scanner.mark(), std::string(1, stands) + " stands here where " + close
                                          + " is missing: " + openSince(begin));
    }
    const bool mayFollow =
        close == '}' ? kind == JsonKind::text : kind != JsonKind::none && kind != JsonKind::end;
    if (mayFollow && kind != JsonKind::number) {
        more = true;
        return complain(here, "a comma is missing here");
    }
    const bool afterText = here > 0 && m_text[here - 1] == '"';
    return stop(here, std::string("a comma or ") + close + " is missing here"
                          + (afterText ? ", or a quotation mark before it on this line" : ""));
}

/// "the { of line 3, column 1 is still open".
std::string ObjectReader::openSince(std::size_t bracket) const
{
    const TextPlace place = placesOf(m_text, {&bracket, 1}, m_begin).front();
    return std::string("the ") + m_text[bracket] + " of line " + std::to_string(place.line)
           + ", column " + std::to_string(place.column) + " is still open";
}

bool ObjectReader::readField(const ObjectType& type, void* owner, FieldSet& present)
{
    if (!m_scanner.isNext('"')) {
        (void)m_scanner.peek();
        const char first = m_scanner.next();
        const std::size_t comma = m_scanner.endOfLast() - 1;
        return stop(first == '}' ? comma : m_scanner.mark(), noName(first));
    }
    std::string_view name;
    if (!m_scanner.text(name)) {
        return stopJson();
    }
    const Field* const field = type.index.find(type.fields, name);
    if (field == nullptr) {
        return passOver(name, unknownField(type, name));
    }
    const auto index = static_cast<std::size_t>(field - type.fields.data());
    const FieldSet bit = FieldSet{1} << index;
    if ((present & bit) != 0) {
        return passOver(field->name, "the field " + quoted(name) + " stands twice in "
                                         + std::string(type.name) + "; leave one of them out");
    }
    present |= bit;
    if (!m_scanner.take(':')) {
        return stopAtColon(name);
    }
    const std::size_t before = m_problems.size();
    const bool goOn = take(*field, owner) && (!m_scanner.atDecimalComma() || mendDecimal());
    if (m_problems.size() != before) {
        addStep(before, pointerStep(field->name));
    }
    return goOn;
}

/// Refuses a field by its name, which has just been taken, and passes over its value.
bool ObjectReader::passOver(std::string_view name, std::string message)
{
    if (!m_scanner.take(':')) {
        return stopAtColon(name); // what was taken for the name may be more than that
    }
    const std::string step = isPrintable(name) ? pointerStep(name) : std::string();
    if (!complain(m_scanner.mark(), std::move(message), step)) {
        return false;
    }
    if (!m_scanner.skipValue()) {
        return stop(m_scanner.problemAt(), m_scanner.problem(), step);
    }
    return !m_scanner.atDecimalComma() || mendDecimal(step);
}

bool ObjectReader::stopAtColon(std::string_view name)
{
    return stop(m_scanner.endOfLast(), "a colon is missing after the name " + quoted(name)
                                           + ", or a quotation mark before it");
}

/// Refuses a number that goes on after a comma, and passes over the rest of it.
bool ObjectReader::mendDecimal(const std::string& pointer)
{
    const std::size_t at = m_scanner.mark();
    return complain(
        at, "a number is written with a point, not with a comma: " + m_scanner.takeDecimalComma(),
        pointer);
}

/// What goes beyond the single fields of an object, unless one of them is wrong already.
bool ObjectReader::finishObject(const ObjectType& type, void* owner, FieldSet present,
                                std::size_t begin, bool isGood)
{
    if ((present & type.needed) != type.needed) {
        return complain(begin, missingFields(type, present));
    }
    if (type.act != nullptr && (present & type.recordedAt) == 0) {
        Act& act = *type.act(owner);
        act.recordedAt = act.happenedAt;
    }
    if (type.check == nullptr || !isGood) {
        return true;
    }
    Complaint complaint;
    if (type.check(owner, present, complaint)) {
        return true;
    }
    const std::size_t at = begin + findPointer(m_text.substr(begin), complaint.field);
    return complain(at, std::move(complaint.message), std::move(complaint.field));
}

bool ObjectReader::takeText(std::string_view& text, bool& goOn)
{
    if (!m_scanner.isNext('"')) {
        goOn = refuseKind(m_scanner.peek(), "a text in quotation marks");
        return false;
    }
    goOn = m_scanner.text(text) || stopJson();
    return goOn;
}

bool ObjectReader::take(const TextRule& rule, void* owner)
{
    std::string_view text;
    bool goOn = true;
    if (!takeText(text, goOn)) {
        return goOn;
    }
    if (const auto length = wrongLengthIn(text, rule)) {
        return refuse(wrongLength(rule, *length));
    }
    if (const auto unseen = wrongCharacterIn(text, rule)) {
        return refuse(wrongCharacter(rule, *unseen));
    }
    rule.store(owner, text);
    return true;
}

bool ObjectReader::take(FormStore store, void* owner)
{
    std::string_view text;
    bool goOn = true;
    if (!takeText(text, goOn)) {
        return goOn;
    }
    std::string message;
    return store(owner, text, m_library, message) || refuse(std::move(message));
}

bool ObjectReader::take(const WordRule& rule, void* owner)
{
    std::string_view text;
    bool goOn = true;
    if (!takeText(text, goOn)) {
        return goOn;
    }
    for (std::size_t i = 0; i < rule.words.size(); ++i) {
        if (isSameText(rule.words[i], text)) {
            rule.store(owner, i);
            return true;
        }
    }
    return refuse(wrongWord(rule, text));
}

bool ObjectReader::take(const TimeRule& rule, void* owner)
{
    std::string_view text;
    bool goOn = true;
    if (!takeText(text, goOn)) {
        return goOn;
    }
    const std::optional<WrittenInstant> written = parseWrittenInstant(text);
    if (!written || written->moment < firstMoment || written->moment > lastMoment) {
        return refuse(wrongTime(text));
    }
    const Instant time = written->moment;
    if (const std::optional<Duration>& offset = written->offset) {
        if (m_zone != nullptr && *offset != m_zone->offsetAt(time)) {
            return refuse(wrongOffset(text, time, *m_zone));
        }
        m_offsets.push_back({time, *offset});
    }
    rule.store(owner, time);
    return true;
}

bool ObjectReader::take(const DateRule& rule, void* owner)
{
    std::string_view text;
    bool goOn = true;
    if (!takeText(text, goOn)) {
        return goOn;
    }
    const std::optional<Date> date = parseDate(text);
    if (!date) {
        return refuse(wrongDate(text));
    }
    rule.store(owner, *date);
    return true;
}

bool ObjectReader::take(const FlagRule& rule, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind != JsonKind::boolean) {
        return refuseKind(kind, "true or false, without quotation marks");
    }
    bool flag = false;
    if (!m_scanner.boolean(flag)) {
        return stopJson();
    }
    rule.store(owner, flag);
    return true;
}

bool ObjectReader::take(const NumberRule& rule, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind != JsonKind::number) {
        return refuseKind(kind, "a number, without quotation marks");
    }
    std::string_view written;
    if (!m_scanner.number(written)) {
        return stopJson();
    }
    const std::optional<std::int64_t> scaled = parseDecimal(written, rule.decimals);
    if (!scaled || *scaled < rule.least || *scaled > rule.most) {
        return refuse(wrongNumber(rule, written));
    }
    rule.store(owner, *scaled, written);
    return true;
}

bool ObjectReader::take(const ObjectRule& rule, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind != JsonKind::object) {
        return refuseKind(kind, std::string(rule.type->name) + " { ... }");
    }
    return readObject(*rule.type, rule.open(owner));
}

bool ObjectReader::take(const TextOrObjectRule& rule, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind == JsonKind::text) {
        return take(rule.text, owner);
    }
    if (kind == JsonKind::object) {
        return take(rule.object, owner);
    }
    return refuseKind(kind, std::string(rule.object.type->name)
                                + " { ... }, or the name of a stored one in quotation marks");
}

bool ObjectReader::take(const ListRule& rule, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind != JsonKind::list) {
        return refuseKind(kind, "a list [ ... ]");
    }
    const std::size_t begin = m_scanner.mark();
    (void)m_scanner.take('[');
    void* const list = rule.open(owner);
    std::size_t count = 0;
    if (!m_scanner.take(']')) {
        bool more = true;
        while (more) {
            const std::size_t before = m_problems.size();
            const bool goOn = take(*rule.element, list);
            if (m_problems.size() != before) {
                addStep(before, '/' + std::to_string(count));
            }
            if (!goOn || !goesOn(']', begin, more)) {
                return false;
            }
            ++count;
        }
    }
    return count >= rule.least
           || complain(begin, "the list is empty; leave the field out when there is nothing to "
                              "say");
}

/// Refuses a value of the wrong kind and passes over it.
bool ObjectReader::refuseKind(JsonKind found, std::string_view wanted)
{
    if (found == JsonKind::none || found == JsonKind::end) {
        const char first = m_scanner.next();
        const bool isMissing = first == '\0' || first == ',' || first == '}' || first == ']';
        return stop(isMissing ? m_scanner.endOfLast() : m_scanner.mark(), noValue(first));
    }
    return refuse(wrongKind(found, wanted)) && (m_scanner.skipValue() || stopJson());
}

/// Notes one thing that is wrong; false when there are too many.
bool ObjectReader::complain(std::size_t at, std::string message, std::string pointer)
{
    if (m_problems.size() == mostProblems) {
        m_more = true;
        return false;
    }
    m_problems.push_back({at, std::move(pointer), std::move(message)});
    return true;
}

/// Notes what is wrong where the text cannot be followed any further; always false.
bool ObjectReader::stop(std::size_t at, std::string message, std::string pointer)
{
    (void)complain(at, std::move(message), std::move(pointer));
    return false;
}

/// Puts a step before the pointers of all problems from that one on.
void ObjectReader::addStep(std::size_t firstProblem, const std::string& step)
{
    for (std::size_t i = firstProblem; i < m_problems.size(); ++i) {
        m_problems[i].pointer.insert(0, step);
    }
}

} // namespace loadwarden::evidence_format
