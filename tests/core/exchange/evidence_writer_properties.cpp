#include "core/exchange/evidence_writer.h"
#include "tests/core/exchange/evidence_support.h"
#include "tests/core/exchange/evidence_tables.h"

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iterator>

// What must be so for every record that can be read.

namespace loadwarden::tests {

namespace {

std::vector<TableJson> startingRecords()
{
    std::vector<TableJson> records = fullRecords();
    for (const char* folder : {"resources/schema/examples", "demo/evidence"}) {
        for (const auto& entry : std::filesystem::directory_iterator(
                 std::string(LOADWARDEN_SOURCE_DIR) + '/' + folder)) {
            if (entry.path().extension() == ".json") {
                const std::string file = entry.path().filename().string();
                records.push_back(TableJson::parse(fileText(std::string(folder) + '/' + file)));
            }
        }
    }
    return records;
}

template <class List>
const auto& pick(const List& list)
{
    return list[*rc::gen::inRange<std::size_t>(0, list.size())];
}

/// Takes a field, or an element of a list, out of a record.
void takeOut(TableJson& record)
{
    TableJson* parent = &record;
    while (true) {
        const auto at = *rc::gen::inRange<std::size_t>(0, parent->size());
        const auto child = std::next(parent->begin(), static_cast<std::ptrdiff_t>(at));
        if (!child->is_structured() || child->empty() || *rc::gen::inRange(0, 4) == 0) {
            if (parent->is_array()) {
                parent->erase(at);
            } else {
                parent->erase(std::string(child.key()));
            }
            return;
        }
        parent = &*child;
    }
}

/// A record that the reader takes: one of ours or one with every field, and a few changes to it.
TableJson anyRecord()
{
    static const std::vector<TableJson> starts = startingRecords();
    TableJson record = pick(starts);
    const int changes = *rc::gen::inRange(0, 12);
    for (int i = 0; i < changes; ++i) {
        if (*rc::gen::arbitrary<bool>()) {
            TableJson changed = record;
            takeOut(changed);
            if (readTable(changed)) {
                record = std::move(changed);
            }
        } else {
            const Leaf& leaf = pick(allLeaves());
            (void)grow(record, leaf, pick(valuesOf(leaf)));
        }
    }
    return record;
}

RC_GTEST_PROP(EvidenceWriterProperties, WhatIsWrittenIsReadAsTheSameRecord, ())
{
    const auto record = readTable(anyRecord());
    RC_ASSERT(record.has_value());
    const std::string text = writeEvidence(*record);
    const EvidenceRecord again = mustRead(text);
    RC_ASSERT(again == *record);
    RC_ASSERT(writeEvidence(again) == text);
    RC_ASSERT(nlohmann::json::accept(text));
}

RC_GTEST_PROP(EvidenceWriterProperties, TextsComeBackCharacterByCharacter, ())
{
    const auto characters = *rc::gen::container<std::vector<char32_t>>(rc::gen::oneOf(
        rc::gen::inRange<char32_t>(0x20, 0x7F), rc::gen::inRange<char32_t>(0xA0, 0x800),
        rc::gen::inRange<char32_t>(0x800, 0xD800), rc::gen::inRange<char32_t>(0xE000, 0x10000),
        rc::gen::inRange<char32_t>(0x10000, 0x110000),
        rc::gen::element<char32_t>('"', '\\', '/', '\t', '\n')));
    EvidenceRecord record;
    for (const char32_t code : characters) {
        const auto last = static_cast<char>(0x80U | (code & 0x3FU));
        const auto third = static_cast<char>(0x80U | (code >> 6U & 0x3FU));
        const auto second = static_cast<char>(0x80U | (code >> 12U & 0x3FU));
        if (code < 0x80) {
            record.comment += static_cast<char>(code);
        } else if (code < 0x800) {
            record.comment += {static_cast<char>(0xC0U | code >> 6U), last};
        } else if (code < 0x10000) {
            record.comment += {static_cast<char>(0xE0U | code >> 12U), third, last};
        } else {
            record.comment += {static_cast<char>(0xF0U | code >> 18U), second, third, last};
        }
    }
    RC_ASSERT(mustRead(writeEvidence(record)) == record);
}

/// A moment is the same, whatever the local time that was written.
RC_GTEST_PROP(EvidenceWriterProperties, EveryMomentOfTheFormatComesBack, ())
{
    EvidenceRecord record;
    const Instant begin = parseInstant("2000-01-01T00:00Z").value();
    const Instant end = parseInstant("2099-12-31T23:59:59.999Z").value();
    const Instant edge = *rc::gen::element(begin, end);
    const Instant near =
        edge + Duration::milliseconds(*rc::gen::inRange(-100'000'000, 100'000'000));
    const Instant any{*rc::gen::inRange(begin.ms, end.ms + 1)};
    record.decideAt = std::clamp(*rc::gen::element(edge, near, any), begin, end);
    RC_ASSERT(mustRead(writeEvidence(record)) == record);
}

} // namespace

} // namespace loadwarden::tests
