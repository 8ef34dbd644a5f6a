#include "ui/questions/floor_desk.h"

#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <utility>

namespace loadwarden::ui {

FloorDesk::FloorDesk(const Workstation& workstation, QObject* parent)
    : QObject(parent), m_workstation(workstation)
{
}

void FloorDesk::record(Act act, const QString& place, const QString& by, const QString& done,
                       const QString& next, std::function<void(bool isDone)> ended)
{
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), act = std::move(act)](Office& office) {
            return Recorder(office).record(
                who, act(office.place().ids, office.zone().dateOf(office.now())));
        },
        [this, place, by, done, next, ended](const OrRefusal<Appended>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told said = say(*refusal, m_workstation.desk.style());
                emit says(text(said.says), text(said.next));
                ended(false);
                return;
            }
            m_place = place;
            m_by = by;
            m_places.removeAll(place);
            m_places.prepend(place);
            emit says(done, next);
            ended(true);
        },
        [ended] { ended(false); });
}

} // namespace loadwarden::ui
