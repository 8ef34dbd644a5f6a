#pragma once

#include "core/desk/dispositions.h"
#include "core/desk/load_sheet.h"
#include "core/desk/to_record.h"
#include "ui/shell/area.h"
#include "ui/shell/session.h"
#include "ui/shell/signing_dialog.h"

#include <QObject>
#include <QString>
#include <QStringList>
#include <QTimer>

#include <functional>
#include <optional>
#include <vector>

namespace loadwarden::ui {

/// What was done before it is recorded.
struct Later {
    QString wrong; ///< why it cannot be recorded so; empty: nothing is
    std::optional<JournalTime> at;
    std::optional<FromPaper> paper; ///< who did it, where another types it
};

/// One cycle on its page: what is known of it, and the way to record more. What its parts share.
class CycleDesk : public QObject {
    Q_OBJECT

public:
    CycleDesk(Workstation& workstation, std::string cycle, QObject* parent = nullptr);

    [[nodiscard]] const std::string& cycle() const { return m_cycle; }
    /// Null until it was read.
    [[nodiscard]] const LoadSheet* sheet() const { return m_sheet ? &*m_sheet : nullptr; }
    [[nodiscard]] const Workstation& workstation() const { return m_workstation; }
    [[nodiscard]] Instant now() const { return m_workstation.desk.now(); }
    [[nodiscard]] HouseStyle style() const { return m_workstation.desk.style(); }
    /// The lot control number, or the id where there is none.
    [[nodiscard]] QString lot() const;
    /// Whether what stands here came from the journal and nothing newer was asked for.
    [[nodiscard]] bool isUpToDate() const { return m_sheet.has_value() && !m_isAsking; }

    /// Reads it anew.
    void refresh();

    /// From now on what is recorded, but for what is signed, is of that time and person; nullopt:
    /// of now and of who is signed in.
    void setLater(std::optional<Later> later) { m_later = std::move(later); }

    /// Makes the acts on the desk's thread, where new ids come from, and records them together.
    using Acts = std::function<std::vector<ToRecord>(Office&)>;

    /// Once they are recorded `done` is said and `then` called; of a refusal `refused` is called
    /// with its words, or, without it, they are said. What is wrong with a time is said where that
    /// is typed: by `ofTime`, where the acts bring their own, else by wrongTime() of the later one;
    /// `refused` is then called without words.
    void record(Acts acts, const QString& done, std::function<void()> then = {},
                std::function<void(const QString&)> refused = {},
                std::function<void(const QString&)> ofTime = {});
    /// The same for one act about the cycle and what else it is about.
    void record(AnyAct act, std::vector<std::string> subjects, const QString& done,
                std::function<void()> then = {}, std::function<void(const QString&)> refused = {});

    /// Asks for a PIN and records with it, unless it is refused whoever signs; `then` is called once that is done.
    void sign(const QString& what, const QStringList& seen, const QString& button, Acts acts,
              const QString& done, std::function<void()> then = {});
    /// The same for what rests on the decision that is shown.
    using Resting = std::function<OrRefusal<Appended>(Office&, const SignedIn&, Signature, const Sight&)>;
    void signOnSight(const QString& what, const QStringList& seen, const QString& button,
                     Resting resting, const QString& done, std::function<void()> then = {});
    /// Verification and release by one PIN.
    void verifyAndRelease(const QString& what, const QStringList& seen, const QString& button,
                          const QString& done);

signals:
    /// There is something newer to show.
    void changed();
    void says(const QString& what, const QString& next);
    /// Recording, or reading and deciding anew, takes long enough to be said, or no longer.
    void working(bool isWorking);
    /// What was done earlier cannot be recorded, because of the time that is set for it.
    void wrongTime(const QString& why);

private:
    void refuse(const Refusal& refusal, const std::function<void(const QString&)>& refused,
                const std::function<void(const QString&)>& ofTime);
    void lookAtWork();
    /// Once what goes on now has done all that it does.
    void lookAtWorkSoon();

    void askPin(ToSign toSign, const QString& done, std::function<void()> then);

    Workstation m_workstation;
    std::string m_cycle;
    std::optional<LoadSheet> m_sheet;
    std::optional<Later> m_later;
    bool m_isAsking = false;
    bool m_asksAgain = false;
    bool m_isRecording = false; ///< a second press meanwhile is none
    QTimer m_workTimer;         ///< what is done before it ends is not worth a word
    bool m_saysWork = false;
};

} // namespace loadwarden::ui
