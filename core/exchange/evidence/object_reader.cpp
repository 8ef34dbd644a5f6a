#include "core/exchange/evidence/object_reader.h"

#include "core/exchange/evidence/complaints.h"
#include "core/quantities/decimal.h"

#include <algorithm>
#include <cstring>

namespace loadwarden::evidence_format {

namespace {

/// Whether a name of the file may be repeated in a pointer; else the pointer ends before it.
bool isPrintable(std::string_view name)
{
    constexpr std::size_t most = 200;
    return name.size() <= most && std::ranges::all_of(name, [](char c) {
               return static_cast<unsigned char>(c) >= 0x20 && c != 0x7F;
           });
}

/// The field of that name; looked for first where the file most likely goes on, which in a file in
/// the order of the table is where it is.
const Field* findField(std::span<const Field> fields, std::string_view name, std::size_t likely)
{
    const std::size_t count = fields.size();
    for (std::size_t i = 0, at = likely; i < count; ++i, ++at) {
        if (at >= count) {
            at = 0;
        }
        const std::string_view candidate = fields[at].name;
        if (candidate.size() == name.size()
            && std::memcmp(candidate.data(), name.data(), name.size()) == 0) {
            return &fields[at];
        }
    }
    return nullptr;
}

} // namespace

bool ObjectReader::read(const ObjectType& type, void* owner)
{
    const JsonKind kind = m_scanner.peek();
    if (kind == JsonKind::end) {
        return refuse("there is no record: the text is empty");
    }
    if (kind != JsonKind::object) {
        return refuseKind(kind, std::string(type.name) + " { ... }");
    }
    if (!readObject(type, owner)) {
        return false;
    }
    return m_scanner.atEnd()
           || refuse("something stands after the end of the record, at " + m_scanner.place()
                     + "; a record is one object { ... }");
}

bool ObjectReader::readObject(const ObjectType& type, void* owner)
{
    if (++m_objects > mostObjects) {
        return refuse("the record has more than " + std::to_string(mostObjects)
                      + " objects; a record is of one load");
    }
    if (!m_scanner.demand('{')) {
        return refuseJson();
    }
    FieldSet present = 0;
    if (!m_scanner.take('}')) {
        std::size_t likely = 0;
        do {
            if (!readField(type, owner, present, likely)) {
                return false;
            }
        } while (m_scanner.take(','));
        if (!m_scanner.demand('}')) {
            return refuseJson();
        }
    }
    return finishObject(type, owner, present);
}

bool ObjectReader::readField(const ObjectType& type, void* owner, FieldSet& present,
                             std::size_t& likely)
{
    std::string_view name;
    if (!m_scanner.text(name)) {
        return refuseJson();
    }
    const Field* const field = findField(type.fields, name, likely);
    if (field == nullptr) {
        if (isPrintable(name)) {
            m_pointer = pointerStep(name);
        }
        return refuse(unknownField(type, name));
    }
    const auto index = static_cast<std::size_t>(field - type.fields.data());
    const FieldSet bit = FieldSet{1} << index;
    likely = index + 1;
    if ((present & bit) != 0) {
        m_pointer = pointerStep(name);
        return refuse("the field " + quoted(name) + " stands twice in " + std::string(type.name)
                      + "; leave one of them out");
    }
    present |= bit;
    if (!m_scanner.demand(':')) {
        return refuseJson();
    }
    if (!take(*field, owner)) {
        m_pointer.insert(0, pointerStep(field->name));
        return false;
    }
    return true;
}

bool ObjectReader::finishObject(const ObjectType& type, void* owner, FieldSet present)
{
    if ((present & type.needed) != type.needed) {
        return refuse(missingFields(type, present));
    }
    if (type.act != nullptr && (present & type.recordedAt) == 0) {
        Act& act = *type.act(owner);
        act.recordedAt = act.happenedAt;
    }
    if (type.check == nullptr) {
        return true;
    }
    Complaint complaint;
    if (type.check(owner, present, complaint)) {
        return true;
    }
    m_pointer = std::move(complaint.field);
    return refuse(std::move(complaint.message));
}

bool ObjectReader::takeText(std::string_view& text)
{
    const JsonKind kind = m_scanner.peek();
    if (kind != JsonKind::text) {
        return refuseKind(kind, "a text in quotation marks");
    }
    return m_scanner.text(text) || refuseJson();
}

bool ObjectReader::take(const TextRule& rule, void* owner)
{
    std::string_view text;
    if (!takeText(text)) {
        return false;
    }
    // Characters take one to four bytes each, so most lengths need no counting.
    if (text.size() < rule.least || text.size() > rule.most) {
        const std::size_t length = characters(text);
        if (length < rule.least || length > rule.most) {
            return refuse(wrongLength(rule, length));
        }
    }
    rule.store(owner, text);
    return true;
}

bool ObjectReader::take(const FormRule& rule, void* owner)
{
    std::string_view text;
    if (!takeText(text)) {
        return false;
    }
    std::string message;
    return rule.store(owner, text, m_library, message) || refuse(std::move(message));
}

bool ObjectReader::take(const WordRule& rule, void* owner)
{
    std::string_view text;
    if (!takeText(text)) {
        return false;
    }
    for (std::size_t i = 0; i < rule.words.size(); ++i) {
        if (rule.words[i] == text) {
            rule.store(owner, i);
            return true;
        }
    }
    return refuse(wrongWord(rule, text));
}

bool ObjectReader::take(const TimeRule& rule, void* owner)
{
    std::string_view text;
    if (!takeText(text)) {
        return false;
    }
    const std::optional<Instant> time = parseInstant(text);
    if (!time) {
        return refuse(wrongTime(text));
    }
    rule.store(owner, *time);
    return true;
}

bool ObjectReader::take(const DateRule& rule, void* owner)
{
    std::string_view text;
    if (!takeText(text)) {
        return false;
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
        return refuseJson();
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
        return refuseJson();
    }
    const std::optional<std::int64_t> scaled = parseDecimal(written, rule.decimals);
    if (!scaled || *scaled < rule.least || *scaled > rule.most) {
        return refuse(wrongNumber(rule));
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
    if (!m_scanner.demand('[')) {
        return refuseJson();
    }
    void* const list = rule.open(owner);
    std::size_t count = 0;
    if (!m_scanner.take(']')) {
        do {
            if (!take(*rule.element, list)) {
                m_pointer.insert(0, '/' + std::to_string(count));
                return false;
            }
            ++count;
        } while (m_scanner.take(','));
        if (!m_scanner.demand(']')) {
            return refuseJson();
        }
    }
    return count >= rule.least
           || refuse("the list is empty; leave the field out when there is nothing to say");
}

bool ObjectReader::refuseKind(JsonKind found, std::string_view wanted)
{
    if (found == JsonKind::none || found == JsonKind::end) {
        m_scanner.fail(found == JsonKind::end ? "the text ends where a value is missing"
                                              : "no value begins like this");
        return refuseJson();
    }
    return refuse(wrongKind(found, wanted));
}

bool ObjectReader::refuse(std::string message)
{
    m_message = std::move(message);
    return false;
}

bool ObjectReader::refuseJson()
{
    return refuse("not valid JSON at " + m_scanner.place() + ": " + m_scanner.problem());
}

} // namespace loadwarden::evidence_format
