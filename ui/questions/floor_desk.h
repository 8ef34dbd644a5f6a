#pragma once

#include "core/desk/to_record.h"
#include "ui/shell/area.h"

#include <QObject>
#include <QStringList>

#include <functional>

namespace loadwarden {
class IdSource;
}

namespace loadwarden::ui {

/// Records what came from the floor, and remembers from where it came for the next time. It
/// outlives the forms: what is refused is said, also when its form is gone.
class FloorDesk : public QObject {
    Q_OBJECT

public:
    explicit FloorDesk(const Workstation& workstation, QObject* parent = nullptr);

    /// Makes an act for a facility day, on the desk's thread.
    using Act = std::function<ToRecord(IdSource&, Date)>;
    /// Once it is recorded `done` is said, then `next`, and `ended` called with true; of a refusal
    /// or a failure with false.
    void record(Act act, const QString& place, const QString& by, const QString& done,
                const QString& next, std::function<void(bool isDone)> ended);

    [[nodiscard]] const QString& place() const { return m_place; }
    [[nodiscard]] const QString& by() const { return m_by; }
    /// The newest first.
    [[nodiscard]] const QStringList& places() const { return m_places; }

signals:
    void says(const QString& what, const QString& next);

private:
    Workstation m_workstation;
    QString m_place;
    QString m_by;
    QStringList m_places;
};

} // namespace loadwarden::ui
