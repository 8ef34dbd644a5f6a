#include "core/exchange/evidence_reader.h"
#include "core/exchange/specification_library.h"
#include "core/quantities/thousandths.h"
#include "tests/core/exchange/evidence_tables.h"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>

namespace loadwarden::tests {

namespace {

using namespace evidence_format;

const ObjectType* objectOf(const Rule& rule)
{
    if (const auto* object = std::get_if<ObjectRule>(&rule)) {
        return object->type;
    }
    if (const auto* either = std::get_if<TextOrObjectRule>(&rule)) {
        return either->object.type;
    }
    return nullptr;
}

const Rule& elementOf(const Field& field)
{
    const auto* list = std::get_if<ListRule>(&field.rule);
    return list == nullptr ? field.rule : list->element->rule;
}

void addLeaves(const ObjectType& type, std::vector<Leaf::Step>& way, std::vector<Leaf>& leaves)
{
    for (const Field& field : type.fields) {
        way.push_back({&type, &field});
        const Rule& rule = elementOf(field);
        const ObjectType* const object = objectOf(rule);
        if (object == nullptr || std::holds_alternative<TextOrObjectRule>(rule)) {
            leaves.push_back({way});
        }
        if (object != nullptr) {
            addLeaves(*object, way, leaves);
        }
        way.pop_back();
    }
}

std::string repeated(std::string_view character, std::size_t count)
{
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        text += character;
    }
    return text;
}

TableJson numberJson(std::int64_t scaled, int decimals)
{
    for (int i = decimals; i < 3; ++i) {
        scaled *= 10;
    }
    return TableJson::parse(thousandthsText(scaled));
}

struct Values {
    std::string_view name;

    std::vector<TableJson> operator()(const TextRule& rule) const
    {
        std::vector<TableJson> values{"A", "\"a\\/\" \xC3\xA9",
                                      repeated("\xF0\x9F\xA7\xAA", rule.most)};
        if (rule.least == 0) {
            values.emplace_back("");
        }
        if (rule.isFree) {
            values.emplace_back("\t\n\xE2\x80\xA8</script>\n");
        }
        return values;
    }
    std::vector<TableJson> operator()(const FormRule&) const
    {
        if (name == "timeZone") {
            return {"UTC", "America/Chicago", "Etc/GMT+5"};
        }
        if (name == "testHour") {
            return {"06:30", "00:00", "23:59"};
        }
        throw std::logic_error("no text of the form of " + std::string(name) + " is known here");
    }
    std::vector<TableJson> operator()(const WordRule& rule) const
    {
        std::vector<TableJson> values;
        for (const std::string_view word : rule.words) {
            values.emplace_back(word);
        }
        return values;
    }
    std::vector<TableJson> operator()(const TimeRule&) const
    {
        return {"2000-01-01T00:00Z", "2031-03-04T07:14:05.006Z", "2031-03-04T13:14:05Z",
                "2099-12-31T23:59:59.999Z"};
    }
    std::vector<TableJson> operator()(const DateRule&) const
    {
        return {"2032-02-29", "2000-01-01", "2099-12-31"};
    }
    std::vector<TableJson> operator()(const FlagRule&) const { return {true, false}; }
    std::vector<TableJson> operator()(const NumberRule& rule) const
    {
        std::set<std::int64_t> numbers{rule.least, rule.most};
        for (const std::int64_t inside : {rule.least + 1, rule.most - 1, std::int64_t{0}}) {
            if (inside > rule.least && inside < rule.most) {
                numbers.insert(inside);
            }
        }
        std::vector<TableJson> values;
        for (const std::int64_t number : numbers) {
            values.push_back(numberJson(number, rule.decimals));
        }
        return values;
    }
    std::vector<TableJson> operator()(const TextOrObjectRule&) const
    {
        return {"steam-prevacuum-132-wrapped@1", "steam-gravity-132-wrapped@1"};
    }
    std::vector<TableJson> operator()(const ObjectRule&) const { return {}; }
    std::vector<TableJson> operator()(const ListRule&) const { return {}; }
};

std::vector<TableJson> valuesOfRule(const Rule& rule, std::string_view name)
{
    return std::visit(Values{name}, rule);
}

/// An object of a type with what it needs, and nothing else.
TableJson least(const ObjectType& type)
{
    TableJson object = TableJson::object();
    for (const Field& field : type.fields) {
        if (!field.needed) {
            continue;
        }
        const std::string name(field.name);
        if (std::holds_alternative<ListRule>(field.rule)) {
            object[name] = TableJson::array();
        } else if (const ObjectType* const below = objectOf(field.rule)) {
            object[name] = least(*below);
        } else {
            object[name] = valuesOfRule(field.rule, field.name).front();
        }
    }
    return object;
}

TableJson with(TableJson object, const TableJson& fields)
{
    object.update(fields);
    return object;
}

/// Every parameter, and every parameter with a value in each unit.
std::vector<TableJson> measurements(const TableJson& object, std::string_view prefix)
{
    std::vector<TableJson> all;
    for (std::size_t i = 0; i < parameterCount; ++i) {
        const auto parameter = static_cast<Parameter>(i);
        const TableJson bare = with(object, {{"parameter", textOf(parameter)}});
        all.push_back(bare);
        for (std::size_t j = 0; j < unitCount; ++j) {
            const auto unit = static_cast<Unit>(j);
            const bool ofLimit = !prefix.empty();
            if (fits(parameter, unit) && !(ofLimit && unit == Unit::seconds)) {
                std::string name(textOf(unit));
                if (ofLimit) {
                    name[0] = static_cast<char>(name[0] - 'a' + 'A');
                }
                all.push_back(with(bare, {{std::string(prefix) + name, 1}}));
            }
        }
    }
    return all;
}

/// What may stand beside a field of an object: its type's checks ask for it.
std::vector<TableJson> surroundings(const ObjectType& type)
{
    const TableJson bare = least(type);
    if (&type == &recordType) {
        std::vector<TableJson> all{with(bare, {{"load", TableJson::object()}})};
        for (const char* kind : {"warm-up", "bowie-dick", "leak", "qualification"}) {
            all.push_back(with(bare, {{"test", with(least(cycleType), {{"kind", kind}})}}));
        }
        return all;
    }
    if (&type == &cycleType) {
        return {with(bare, {{"kind", "leak"}}), with(bare, {{"kind", "load"}})};
    }
    if (&type == &productType) {
        return {with(bare, {{"kind", "chemical"}, {"response", "colour"}, {"type", 5}}),
                with(bare, {{"kind", "biological"},
                            {"response", "growth"},
                            {"species", "other"},
                            {"releaseMinutes", 1}})};
    }
    if (&type == &readingType) {
        return measurements(bare, "");
    }
    if (type.name == "a limit") {
        return measurements(bare, "least");
    }
    return {bare};
}

std::vector<TableJson> objectsWith(const Leaf& leaf, std::size_t step, const TableJson& value)
{
    const auto [type, field] = leaf.steps[step];
    const std::string name(field->name);
    const bool isList = std::holds_alternative<ListRule>(field->rule);
    const bool isLast = step + 1 == leaf.steps.size();
    const std::vector<TableJson> below =
        isLast ? std::vector<TableJson>{value} : objectsWith(leaf, step + 1, value);
    std::vector<TableJson> objects;
    for (const TableJson& beside : surroundings(*type)) {
        for (const TableJson& each : below) {
            TableJson object = beside;
            if (isList) {
                object[name] = TableJson::array({each});
            } else if (!isLast && object.contains(name)) {
                object[name].update(each);
            } else {
                object[name] = each;
            }
            objects.push_back(std::move(object));
        }
    }
    return objects;
}

/// Sets the leaf in the objects that are there, and makes those that are not.
void setFirst(TableJson& object, const Leaf& leaf, std::size_t step, const TableJson& value)
{
    const Field& field = *leaf.steps[step].field;
    const bool isLast = step + 1 == leaf.steps.size();
    TableJson* at = &object[std::string(field.name)];
    if (std::holds_alternative<ListRule>(field.rule)) {
        if (at->is_null()) {
            *at = TableJson::array();
        }
        if (at->empty() || isLast) {
            at->push_back(nullptr);
        }
        at = isLast ? &at->back() : &at->front();
    }
    if (isLast) {
        *at = value;
        return;
    }
    if (!at->is_object()) {
        *at = least(*leaf.steps[step + 1].type);
    }
    setFirst(*at, leaf, step + 1, value);
}

/// The list of objects on the way that is nearest to the leaf and whose owner is there, and the
/// step of its elements; null: there is none.
std::pair<TableJson*, std::size_t> nearestList(TableJson& record, const Leaf& leaf)
{
    std::pair<TableJson*, std::size_t> nearest{nullptr, 0};
    TableJson* at = &record;
    for (std::size_t i = 0; i + 1 < leaf.steps.size() && at->is_object(); ++i) {
        const Field& field = *leaf.steps[i].field;
        const std::string name(field.name);
        if (std::holds_alternative<ListRule>(field.rule)) {
            at = &(*at)[name];
            if (at->is_null()) {
                *at = TableJson::array();
            }
            nearest = {at, i + 1};
            if (at->empty()) {
                break;
            }
            at = &at->front();
        } else if (at->contains(name)) {
            at = &at->at(name);
        } else {
            break;
        }
    }
    return nearest;
}

/// Takes a record in the place of another, where it is read as another.
bool replace(TableJson& record, TableJson& by)
{
    const auto read = readTable(by);
    if (!read || read == readTable(record)) {
        return false;
    }
    record = std::move(by);
    return true;
}

/// In the first element of each list on the way or, where that is not taken, in another of the
/// nearest.
bool setInPlace(TableJson& record, const Leaf& leaf, const TableJson& value)
{
    TableJson changed = record;
    setFirst(changed, leaf, 0, value);
    if (replace(record, changed)) {
        return true;
    }
    changed = record;
    const auto [list, step] = nearestList(changed, leaf);
    for (std::size_t i = 1; list != nullptr && i < list->size(); ++i) {
        const TableJson before = (*list)[i];
        setFirst((*list)[i], leaf, step, value);
        if (replace(record, changed)) {
            return true;
        }
        (*list)[i] = before;
    }
    return false;
}

/// In a new element of the nearest list.
bool setInNew(TableJson& record, const Leaf& leaf, const TableJson& value)
{
    TableJson changed = record;
    const auto [list, step] = nearestList(changed, leaf);
    if (list == nullptr) {
        return false;
    }
    list->push_back(nullptr);
    for (TableJson& element : objectsWith(leaf, step, value)) {
        list->back() = std::move(element);
        if (replace(record, changed)) {
            return true;
        }
    }
    return false;
}

/// The record with all the fields below one of its own, or with all that it can have.
TableJson fullRecord(TableJson record, std::string_view below = {})
{
    std::size_t count = 0;
    for (const Leaf& leaf : allLeaves()) {
        ++count;
        if (!below.empty() && leaf.steps.front().field->name != below) {
            continue;
        }
        // Names of their own, and times that differ from the one before.
        std::vector<TableJson> values = valuesOf(leaf);
        const auto first = static_cast<std::ptrdiff_t>(count % values.size());
        std::ranges::rotate(values, values.begin() + first);
        const auto* text = std::get_if<TextRule>(&leaf.rule());
        if (text != nullptr && !text->isFree) {
            values.insert(values.begin(), "N" + std::to_string(count));
        }
        const auto set = [&](auto how) {
            return std::ranges::any_of(
                values, [&](const TableJson& value) { return how(record, leaf, value); });
        };
        (void)(set(setInPlace) || set(setInNew));
    }
    return record;
}

} // namespace

const Rule& Leaf::rule() const
{
    return elementOf(*steps.back().field);
}

std::string Leaf::name() const
{
    std::string name;
    for (const Step& step : steps) {
        name += '/';
        name += step.field->name;
        if (std::holds_alternative<ListRule>(step.field->rule)) {
            name += "/0";
        }
    }
    return name;
}

const std::vector<Leaf>& allLeaves()
{
    static const std::vector<Leaf> leaves = [] {
        std::vector<Leaf> all;
        std::vector<Leaf::Step> way;
        addLeaves(recordType, way, all);
        return all;
    }();
    return leaves;
}

const std::vector<TableJson>& valuesOf(const Leaf& leaf)
{
    static std::map<const Rule*, std::vector<TableJson>> known;
    const Rule* const rule = &leaf.rule();
    const auto found = known.find(rule);
    return found != known.end()
               ? found->second
               : known.emplace(rule, valuesOfRule(*rule, leaf.steps.back().field->name))
                     .first->second;
}

std::vector<TableJson> recordsWith(const Leaf& leaf, const TableJson& value)
{
    return objectsWith(leaf, 0, value);
}

std::optional<EvidenceRecord> readTable(const TableJson& json)
{
    static const SpecificationLibrary library = SpecificationLibrary::builtIn();
    auto read = readEvidence(json.dump(), "table", 1, &library);
    if (std::holds_alternative<ReadError>(read)) {
        return std::nullopt;
    }
    return std::get<EvidenceRecord>(std::move(read));
}

bool grow(TableJson& record, const Leaf& leaf, const TableJson& value)
{
    return setInPlace(record, leaf, value) || setInNew(record, leaf, value);
}

const std::vector<TableJson>& fullRecords()
{
    static const std::vector<TableJson> records = [] {
        const std::vector<TableJson> least = surroundings(recordType);
        return std::vector<TableJson>{fullRecord(least[0]), fullRecord(least[1], "test")};
    }();
    return records;
}

} // namespace loadwarden::tests
