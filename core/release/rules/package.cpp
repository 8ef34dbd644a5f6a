#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"

#include <tuple>

namespace loadwarden::rules {
namespace {

/// Whether an act happened before another or, at the same moment, was recorded before it.
bool isOlder(const Act& act, const Act& than)
{
    return std::tie(act.happenedAt, act.recordedAt) < std::tie(than.happenedAt, than.recordedAt);
}

/// The newest check that counts: standing, and made after the cycle ended.
const PackageCheck* newestCheck(const View& view, const Item& item)
{
    const auto& end = view.evidence.load.end;
    const PackageCheck* newest = nullptr;
    for (const PackageCheck& check : item.checks) {
        if (end && causeOf(check.act, end, view.now) == Cause::none
            && (newest == nullptr || !isOlder(check.act, newest->act))) {
            newest = &check;
        }
    }
    return newest;
}

/// Why the check that was recorded last does not count; none where there is no check. Of a cycle
/// whose end is not known every check is early.
Cause causeOfLast(const View& view, const Item& item)
{
    const Act* last = nullptr;
    for (const PackageCheck& check : item.checks) {
        last = lastRecorded(last, check.act);
    }
    if (last == nullptr) {
        return Cause::none;
    }
    const auto& end = view.evidence.load.end;
    const Cause cause = causeOf(*last, end, view.now);
    return cause == Cause::none && !end ? Cause::readEarly : cause;
}

void takeChecks(const View& view, const Item& item, FindingSink& sink)
{
    bool wet = false;
    bool torn = false;
    bool unsealed = false;
    for (const PackageCheck& check : item.checks) {
        wet = wet || check.dry == false;
        torn = torn || check.intact == false;
        unsealed = unsealed || check.sealed == false;
    }
    const auto fails = [&sink](bool found, Key key) {
        if (found) {
            sink.add(key, Outcome::fails);
        }
    };
    fails(wet, Key::itemWet);
    fails(torn, Key::itemTorn);
    fails(unsealed, Key::itemUnsealed);

    const PackageCheck* check = newestCheck(view, item);
    if (check == nullptr) {
        const bool lost = item.checkLost && stands(*item.checkLost, view.now);
        if (lost) {
            sink.add(Key::itemCheckLost, Outcome::fails);
        } else {
            sink.add(Key::itemNotChecked, Outcome::waits).cause = causeOfLast(view, item);
        }
        return;
    }
    if (!check->dry || !check->intact || !check->sealed || !check->cooled || !check->labelAgrees) {
        sink.add(Key::itemNotChecked, Outcome::waits);
    }
    if (check->cooled == false) {
        sink.add(Key::itemNotCooled, Outcome::waits);
    }
    if (check->labelAgrees == false) {
        sink.add(Key::itemLabelDiffers, Outcome::waits);
    }
}

} // namespace

void package(const View& view, std::size_t index, FindingSink& sink)
{
    const Item& item = view.load.items[index];
    if (view.isOpenTray(item)) {
        return;
    }
    takeChecks(view, item, sink);
    const Packaging* packaging = view.packagingOf(item);
    if (packaging == nullptr || packaging->form == PackageForm::openTray
        || (view.method != Method::unknown && !packaging->methods.contains(view.method))) {
        sink.add(Key::itemPackagingNotStated, Outcome::waits);
    }
    if (item.packagingExpires && view.evidence.load.day
        && *item.packagingExpires < *view.evidence.load.day) {
        sink.add(Key::itemPackagingExpired, Outcome::waits);
    }
}

} // namespace loadwarden::rules
