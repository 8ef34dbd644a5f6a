#include "core/acts/fold/members.h"

#include <algorithm>

namespace loadwarden {
namespace {

struct Seat {
    Member member;
    bool in = false;
};

enum class Way : std::uint8_t { in, out, neither, mentioned };

/// What a fact does to the membership of its item in a load.
Way wayOf(const Fact& fact, std::string_view cycle)
{
    const AnyAct& act = fact.current().act;
    if (const auto* moved = std::get_if<ItemMoved>(&act)) {
        return moved->to == cycle ? Way::in : moved->from == cycle ? Way::out : Way::neither;
    }
    if (std::holds_alternative<ItemAdded>(act)) {
        return Way::in;
    }
    if (std::holds_alternative<ItemRemoved>(act)) {
        return Way::out;
    }
    const bool saysSomething = std::holds_alternative<PackageChecked>(act)
                               || std::holds_alternative<ItemReported>(act)
                               || std::holds_alternative<PackageCheckLost>(act)
                               || std::holds_alternative<ItemConfirmed>(act);
    return saysSomething ? Way::mentioned : Way::neither;
}

} // namespace

std::int64_t startOf(const FactBook& book, std::string_view cycle)
{
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && std::holds_alternative<CycleStarted>(fact.origin->act)
            && isSigned(actOf(fact.current()))) {
            return fact.origin->seq;
        }
    }
    return 0;
}

std::string lotOf(const FactBook& book, std::string_view cycle)
{
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        if (!fact.stands()) {
            continue;
        }
        if (const auto* reserved = std::get_if<CycleReserved>(&fact.current().act)) {
            return reserved->lot;
        }
    }
    return std::string(cycle);
}

std::vector<Member> membersOf(Folding& folding, std::string_view cycle, bool own)
{
    const FactBook& book = folding.book();
    const std::int64_t start = startOf(book, cycle);
    std::vector<Seat> seats;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        const Way way = wayOf(fact, cycle);
        if (way == Way::neither) {
            continue;
        }
        const std::string_view item = fact.origin->subject("it");
        if (item.empty()) {
            continue;
        }
        folding.take(fact, own);
        if (!fact.stands()) {
            continue;
        }
        auto seat = std::ranges::find(
            seats, item, [](const Seat& each) -> std::string_view { return each.member.id; });
        if (seat == seats.end()) {
            seats.push_back({.member = {.id = std::string(item), .recorded = {}}});
            seat = seats.end() - 1;
        }
        const bool afterStart = start != 0 && fact.origin->seq > start;
        switch (way) {
        case Way::in:
            if (!seat->in || !afterStart || !seat->member.recorded) {
                seat->member.recorded = actOf(*fact.origin);
            }
            seat->in = true;
            break;
        case Way::out:
            if (!seat->in) {
                folding.misfit(*fact.origin, MisfitWhy::notInLoad);
            } else if (afterStart) {
                folding.misfit(*fact.origin, MisfitWhy::afterStart);
            } else {
                seat->in = false;
                seat->member.recorded.reset();
            }
            break;
        case Way::mentioned:
            if (!seat->in) {
                folding.misfit(*fact.origin, MisfitWhy::notInLoad);
                seat->in = true;
            }
            break;
        case Way::neither: break;
        }
    }
    std::vector<Member> members;
    for (Seat& seat : seats) {
        if (seat.in) {
            members.push_back(std::move(seat.member));
        }
    }
    return members;
}

std::vector<std::string> otherLotsOf(Folding& folding, std::string_view item,
                                     std::string_view cycle)
{
    const FactBook& book = folding.book();
    std::vector<std::string_view> cycles;
    for (const std::uint32_t index : book.about(item)) {
        for (const std::string& id : book.facts()[index].origin->subjects) {
            if (hasPrefix(id, "ld") && id != cycle
                && std::ranges::find(cycles, id) == cycles.end()) {
                cycles.push_back(id);
            }
        }
    }
    std::vector<std::string> lots;
    for (const std::string_view other : cycles) {
        const std::vector<Member> members = membersOf(folding, other, false);
        const auto isIt = [item](const Member& member) { return member.id == item; };
        if (std::ranges::any_of(members, isIt)) {
            lots.push_back(lotOf(book, other));
        }
    }
    return lots;
}

} // namespace loadwarden
