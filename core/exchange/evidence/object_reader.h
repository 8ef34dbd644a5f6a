#pragma once

#include "core/exchange/evidence/field.h"
#include "core/exchange/evidence/json_scanner.h"
#include "core/quantities/zone.h"

#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::evidence_format {

/// Objects that a record may have at most, so that a small file cannot ask for much memory.
inline constexpr std::size_t mostObjects = 20'000;

/// Reads one JSON text into structs, by the tables of field.h. What is wrong with a value does not
/// hide what is wrong with the next: it goes on as far as the text can be followed, and as long as
/// there are not more than mostProblems.
class ObjectReader {
public:
    /// The text begins at that place of its file.
    /// A zone refuses times that are written with an offset which the zone has not at that moment.
    ObjectReader(std::string_view json, TextPlace begin, const SpecificationLibrary* library,
                 const Zone* zone = nullptr) noexcept
        : m_text(json), m_begin(begin), m_scanner(json), m_library(library), m_zone(zone)
    {
    }

    /// Whether the text is one object of that type, and nothing else; its fields are then in owner.
    [[nodiscard]] bool read(const ObjectType& type, void* owner);

    /// Whether every time that was read is written in UTC or as the zone shows it.
    [[nodiscard]] bool offsetsFit(const Zone& zone) const;

    // After a false:

    /// In the order of their places.
    [[nodiscard]] std::vector<ReadProblem> takeProblems();
    [[nodiscard]] bool hasMore() const { return m_more; }

private:
    // Readers of a part answer whether the rest can still be read; what is wrong they add to
    // m_problems, with pointers from their part on.

    bool readObject(const ObjectType& type, void* owner);
    bool readField(const ObjectType& type, void* owner, FieldSet& present);
    bool passOver(std::string_view name, std::string message);
    bool finishObject(const ObjectType& type, void* owner, FieldSet present, std::size_t begin,
                      bool isGood);
    bool goesOn(char close, std::size_t begin, bool& more);
    bool mendComma(char close, std::size_t begin, bool& more);
    bool mendDecimal(const std::string& pointer = {});

    bool take(const TextRule& rule, void* owner);
    bool take(FormStore store, void* owner);
    bool take(const FormRule& rule, void* owner) { return take(rule.store, owner); }
    bool take(const WordRule& rule, void* owner);
    bool take(const TimeRule& rule, void* owner);
    bool take(const DateRule& rule, void* owner);
    bool take(const FlagRule& rule, void* owner);
    bool take(const NumberRule& rule, void* owner);
    bool take(const ObjectRule& rule, void* owner);
    bool take(const TextOrObjectRule& rule, void* owner);
    bool take(const ListRule& rule, void* owner);

    bool take(const Field& field, void* owner)
    {
        return std::visit([&](const auto& rule) { return take(rule, owner); }, field.rule);
    }

    /// Whether a text comes next, and takes it. If not, goOn says whether the rest can be read.
    bool takeText(std::string_view& text, bool& goOn);
    bool refuseKind(JsonKind found, std::string_view wanted);
    bool refuse(std::string message) { return complain(m_scanner.mark(), std::move(message)); }
    bool complain(std::size_t at, std::string message, std::string pointer = {});
    bool stop(std::size_t at, std::string message, std::string pointer = {});
    bool stopAtColon(std::string_view name);
    bool stopJson() { return stop(m_scanner.problemAt(), m_scanner.problem()); }
    void addStep(std::size_t firstProblem, const std::string& step);
    [[nodiscard]] std::string openSince(std::size_t bracket) const;

    /// `at` in bytes.
    struct Problem {
        std::size_t at;
        std::string pointer;
        std::string message;
    };

    std::string_view m_text;
    TextPlace m_begin;
    JsonScanner m_scanner;
    /// A time that was written with an offset of its own.
    struct WithOffset {
        Instant time;
        Duration offset;
    };

    const SpecificationLibrary* m_library;
    const Zone* m_zone;
    std::vector<WithOffset> m_offsets;
    std::size_t m_objects = 0;
    std::vector<Problem> m_problems;
    bool m_more = false;
};

} // namespace loadwarden::evidence_format
