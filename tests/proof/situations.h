#pragma once

#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <rapidcheck/gtest.h>

#include <cstddef>
#include <vector>

/// What the properties of the decision start from, and what they do to it. For RapidCheck's
/// properties only: every call draws from its random source.
namespace loadwarden::proof {

/// A record with the policy and the moment by which it is decided.
struct Situation {
    EvidenceRecord record;
    Policy policy;
    Instant now;
};

/// A worked cases' base, by one of some policies, with up to three things wrong with it.
[[nodiscard]] Situation anySituation();

/// Takes away or spoils one pass, or makes one failure invalid. False where there was none to take.
[[nodiscard]] bool degrade(EvidenceRecord& record, Instant now);

/// Takes an entry out of the register of products and lots, or a vial's link to it. False where
/// there was none to take.
[[nodiscard]] bool takeFromRegister(EvidenceRecord& record);

/// Says of something that it cannot be obtained. False where there was nothing to say it of.
[[nodiscard]] bool sayLost(EvidenceRecord& record, Instant now);

/// Whether two decisions say the same.
[[nodiscard]] bool isSame(const Decision& a, const Decision& b);

/// Every chemical indicator of a load, in its PCDs and its packages.
[[nodiscard]] std::vector<ChemicalIndicator*> indicatorsOf(EvidenceRecord& record);

[[nodiscard]] std::vector<Vial*> vialsOf(EvidenceRecord& record);

/// One element of a list, or null where it is empty.
template <class T>
T* pick(std::vector<T>& from)
{
    return from.empty() ? nullptr : &from[*rc::gen::inRange(std::size_t{0}, from.size())];
}
template <class T>
T* pick(const std::vector<T*>& from)
{
    return from.empty() ? nullptr : from[*rc::gen::inRange(std::size_t{0}, from.size())];
}

} // namespace loadwarden::proof
