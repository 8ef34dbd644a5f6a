#pragma once

#include "core/exchange/evidence/bind.h"
#include "core/quantities/method_words.h"
#include "core/quantities/role_words.h"

namespace loadwarden::evidence_format {

// Objects of the format that stand in several places.

extern const ObjectType actType;
extern const ObjectType specificationType;
extern const ObjectType readingType;
extern const ObjectType printoutType;
extern const ObjectType printoutStatementType;
extern const ObjectType lostReadingType;
extern const ObjectType traceType;
extern const ObjectType productType;
extern const ObjectType lotType;
extern const ObjectType indicatorType;
extern const ObjectType sheetType;
extern const ObjectType vialType;
extern const ObjectType controlType;
extern const ObjectType incubatorType;
extern const ObjectType packagingType;
extern const ObjectType packageCheckType;
extern const ObjectType itemType;
extern const ObjectType cycleType;
extern const ObjectType sterilizerType;
extern const ObjectType loadType;
extern const ObjectType recordType;

/// An act is recorded when it happened, unless it says otherwise.
template <auto... Path>
Fetched<Instant> fetchRecordedAt(const void* owner)
{
    const Instant recorded = memberOf<Path..., &Act::recordedAt>(owner);
    const bool isAssumed = recorded == memberOf<Path..., &Act::happenedAt>(owner);
    return {isAssumed ? Stated::assumed : Stated::yes, recorded};
}

/// The fields of an act; Path leads to it, none where the object is an act and nothing else.
template <auto... Path>
consteval auto actFields()
{
    return fields(nameOrNone<Path..., &Act::by>("by"), word<roleWords, Path..., &Act::role>("role"),
                  time<Path..., &Act::happenedAt>("happenedAt").must(),
                  Field{"recordedAt", TimeRule{[](void* owner, Instant value) {
                                                   memberAt<Path..., &Act::recordedAt>(owner) =
                                                       value;
                                               },
                                               fetchRecordedAt<Path...>}});
}

/// Methods that instructions state; `unknown` is none of them.
inline constexpr Field methodElement{
    "", WordRule{std::span(wordTexts<methodWords>).first(4),
                 [](void* set, std::size_t which) {
                     static_cast<MethodSet*>(set)->add(methodWords[which].value);
                 },
                 [](const void* method) {
                     return placeOf<methodWords>(
                         Fetched<Method>{Stated::yes, *static_cast<const Method*>(method)});
                 }}};

/// A method of a set, which has them in the order of their words.
template <auto... Path>
const void* methodAt(const void* owner, std::size_t index)
{
    const MethodSet& set = memberOf<Path...>(owner);
    for (const Word<Method>& word : methodWords) {
        if (set.contains(word.value) && index-- == 0) {
            return &word.value;
        }
    }
    return nullptr;
}

template <auto... Path>
consteval Field methods(std::string_view name)
{
    return {name, ListRule{0, [](void* owner) -> void* { return &memberAt<Path...>(owner); },
                           &methodElement, methodAt<Path...>}};
}

} // namespace loadwarden::evidence_format
