#include "app/cli/desk/history_file.h"

#include "app/cli/desk/json_line.h"
#include "app/cli/desk/typed_time.h"
#include "core/acts/nfc.h"
#include "core/journal/canonical_json.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <istream>
#include <optional>
#include <stdexcept>
#include <string_view>

namespace loadwarden::cli {

namespace {

using nlohmann::json;

constexpr std::string_view kind = "history.imported";
constexpr std::array<std::string_view, 8> fields = {"source",     "lot",     "start",  "end",
                                                    "sterilizer", "outcome", "labels", "record"};
constexpr std::array<std::string_view, 4> needed = {"source", "lot", "start", "outcome"};
constexpr std::size_t lengthOfDate = 10;

/// A time as old records have it, and whether only its day is known.
struct OldTime {
    JournalTime time;
    bool dayOnly = false;
};

std::optional<int> twoDigits(std::string_view text)
{
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return text.size() == 2 && error == std::errc{} && end == text.data() + 2 ? std::optional(value)
                                                                              : std::nullopt;
}

/// "2030-03-04T07:14-06:00"; without an offset, and without a time of day, by the zone.
std::optional<OldTime> oldTime(std::string_view text, const Zone& zone)
{
    if (const auto typed = typedTime(text)) {
        return OldTime{*typed, false};
    }
    const auto date = parseDate(text.substr(0, lengthOfDate));
    if (!date) {
        return std::nullopt;
    }
    if (text.size() == lengthOfDate) {
        return OldTime{journalTime(zone.resolve(*date, 0), zone), true};
    }
    const std::string_view rest = text.substr(lengthOfDate);
    const bool isTime = rest.size() == 6 && (rest[0] == 'T' || rest[0] == ' ') && rest[3] == ':';
    const auto hour = isTime ? twoDigits(rest.substr(1, 2)) : std::nullopt;
    const auto minute = isTime ? twoDigits(rest.substr(4, 2)) : std::nullopt;
    if (!hour || !minute || *hour > 23 || *minute > 59) {
        return std::nullopt;
    }
    return OldTime{journalTime(zone.resolve(*date, *hour * 60 + *minute), zone), false};
}

/// Texts in normalization form C and with the line ends of this program.
void tidy(json& value)
{
    if (value.is_string()) {
        std::string text = toNfc(value.get_ref<const std::string&>());
        for (std::size_t at = text.find("\r\n"); at != std::string::npos; at = text.find("\r\n")) {
            text.erase(at, 1);
        }
        value = text;
    } else if (value.is_array()) {
        std::ranges::for_each(value, tidy);
    }
}

/// What an act says that has these members; a fault in words where one is not as it should be.
std::variant<HistoryImported, std::string> decoded(const json& body)
{
    auto read = decodeBody(kind, 1, canonicalJson(body));
    if (auto* const fault = std::get_if<ActFault>(&read)) {
        return fault->what;
    }
    return std::get<HistoryImported>(std::get<ActBody>(std::move(read)).act);
}

class LineReader {
public:
    LineReader(const std::string& source, const Zone& zone, HistoryFile& into)
        : m_source(source), m_zone(zone), m_into(into)
    {
    }

    void read(const std::string& text, std::int64_t line)
    {
        m_line = line;
        const std::size_t before = m_into.problems.size();
        try {
            json object = objectOf(text);
            if (!m_source.empty()) {
                object.emplace("source", m_source);
            }
            OldLoad load = loadOf(object);
            if (m_into.problems.size() == before) {
                m_into.loads.push_back(std::move(load));
            }
        } catch (const std::exception& error) {
            problem("", error.what());
        }
    }

private:
    void problem(std::string_view field, std::string says)
    {
        m_into.problems.push_back({m_line, std::string(field), std::move(says)});
    }

    OldLoad loadOf(json& object)
    {
        OldLoad load{.said = {}, .start = {}, .sterilizer = {}, .line = m_line};
        for (const auto& [member, value] : object.items()) {
            if (std::ranges::find(fields, member) == fields.end()) {
                problem(member, "there is no such field");
            }
        }
        for (const std::string_view field : needed) {
            if (!object.contains(field)) {
                problem(field, "must not be left out");
            }
        }
        json body = json::object();
        if (const auto start = timeOf(object, "start")) {
            load.start = start->time;
            if (start->dayOnly) {
                body["dayOnly"] = true;
            }
        }
        if (const auto end = timeOf(object, "end")) {
            if (end->dayOnly) {
                problem("end", "needs a time of day; where it is not known, leave it out");
            }
            body["end"] = {end->time.at.ms, end->time.offsetMinutes};
        }
        for (const char* const field :
             {"source", "lot", "sterilizer", "outcome", "labels", "record"}) {
            const auto found = object.find(field);
            if (found == object.end() || found->is_null() || *found == "") {
                continue; // an empty cell of a table says nothing
            }
            tidy(*found);
            if (field == std::string_view("sterilizer") && isRegistered(*found)) {
                load.sterilizer = found->get<std::string>();
                continue;
            }
            take(field, *found, body);
        }
        auto said = decoded(body);
        if (auto* const read = std::get_if<HistoryImported>(&said)) {
            load.said = std::move(*read);
        }
        return load;
    }

    static bool isRegistered(const json& name)
    {
        return name.is_string() && name.get_ref<const std::string&>().starts_with("sz-");
    }

    std::optional<OldTime> timeOf(const json& object, const char* field)
    {
        const auto found = object.find(field);
        if (found == object.end() || found->is_null() || *found == "") {
            return std::nullopt;
        }
        const auto time = found->is_string() ? oldTime(found->get_ref<const std::string&>(), m_zone)
                                             : std::nullopt;
        if (!time) {
            problem(field, "must be a text such as \"2030-03-04T07:14\", in the facility's time, "
                           "or \"2030-03-04T07:14-06:00\" with its offset; of a start also "
                           "\"2030-03-04\"");
        }
        return time;
    }

    /// Takes a field into the body, and says what is wrong with it alone.
    void take(const char* field, const json& value, json& body)
    {
        json alone = {{"source", "-"}, {"lot", "-"}, {"outcome", "-"}};
        alone[field] = value;
        try {
            if (const auto read = decoded(alone);
                const auto* const says = std::get_if<std::string>(&read)) {
                // "In an entry of the kind … the member "lot" must be …."
                const std::size_t must = says->find(" must ");
                std::string short_ = must == std::string::npos ? *says : says->substr(must + 1);
                short_.erase(short_.find_last_not_of('.') + 1);
                problem(field, std::move(short_));
            }
        } catch (const json::exception&) {
            problem(field, "must be a text");
        }
        body[field] = value;
    }

    const std::string& m_source;
    const Zone& m_zone;
    HistoryFile& m_into;
    std::int64_t m_line = 0;
};

} // namespace

HistoryFile readHistory(std::istream& in, const std::string& name, const std::string& source,
                        const Zone& zone)
{
    HistoryFile file;
    LineReader reader(source, zone, file);
    std::string line;
    for (std::int64_t number = 1; std::getline(in, line); ++number) {
        if (line.find_first_not_of(" \t\r") != std::string::npos) {
            ++file.lines;
            reader.read(line, number);
        }
    }
    if (in.bad()) {
        throw std::runtime_error(name + ": could not be read to its end");
    }
    if (file.lines == 0) {
        throw std::runtime_error(name + ": there is no load in it");
    }
    return file;
}

} // namespace loadwarden::cli
