#include "ui/load/cycle_desk.h"

#include "core/desk/recorder.h"
#include "core/desk/verify_and_release.h"
#include "core/words/say_refusal.h"
#include "ui/look/text.h"

#include <QApplication>

#include <utility>

namespace loadwarden::ui {
namespace {

/// Acts that say themselves when they happened keep that.
void stamp(std::vector<ToRecord>& acts, const Later& later)
{
    for (ToRecord& act : acts) {
        if (!act.happenedAt) {
            act.happenedAt = later.at;
        }
        if (kindOf(act.act).fromPaper) {
            act.paper = later.paper;
        }
    }
}

} // namespace

CycleDesk::CycleDesk(Workstation& workstation, std::string cycle, QObject* parent)
    : QObject(parent), m_workstation(workstation), m_cycle(std::move(cycle))
{
    constexpr int unnoticedMs = 150;
    m_workTimer.setSingleShot(true);
    m_workTimer.setInterval(unnoticedMs);
    connect(&m_workTimer, &QTimer::timeout, this, [this] {
        m_saysWork = true;
        emit working(true);
    });
}

void CycleDesk::lookAtWorkSoon()
{
    QMetaObject::invokeMethod(this, &CycleDesk::lookAtWork, Qt::QueuedConnection);
}

void CycleDesk::lookAtWork()
{
    const bool isAtWork = m_isAsking || m_isRecording;
    if (isAtWork && !m_workTimer.isActive() && !m_saysWork) {
        m_workTimer.start();
    } else if (!isAtWork) {
        m_workTimer.stop();
        if (std::exchange(m_saysWork, false)) {
            emit working(false);
        }
    }
}

QString CycleDesk::lot() const
{
    if (!m_sheet) {
        return {};
    }
    const std::string& number = m_sheet->state.lot;
    return text(number.empty() ? m_cycle : number);
}

void CycleDesk::refresh()
{
    if (m_isAsking) {
        m_asksAgain = true;
        return;
    }
    m_isAsking = true;
    lookAtWork();
    m_workstation.desk.ask(
        this,
        [cycle = m_cycle](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return loadSheetOf(snapshot, office.entries(), cycle, office.now());
        },
        [this](std::optional<LoadSheet> sheet) {
            m_isAsking = false;
            if (sheet) {
                m_sheet = std::move(sheet);
                emit changed();
            }
            if (std::exchange(m_asksAgain, false)) {
                refresh();
            }
            lookAtWorkSoon();
        },
        [this] {
            m_isAsking = false;
            lookAtWorkSoon();
        });
}

void CycleDesk::record(Acts acts, const QString& done, std::function<void()> then,
                       std::function<void(const QString&)> refused,
                       std::function<void(const QString&)> ofTime)
{
    if (m_later && !m_later->wrong.isEmpty()) {
        emit says(tr("It is not recorded yet."), m_later->wrong);
        if (refused) {
            refused({});
        }
        emit wrongTime(m_later->wrong);
        return;
    }
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    lookAtWork();
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), acts = std::move(acts),
         later = m_later](Office& office) {
            std::vector<ToRecord> made = acts(office);
            if (later) {
                stamp(made, *later);
            }
            return Recorder(office).record(who, made);
        },
        [this, done, then = std::move(then), refused = std::move(refused),
         ofTime = std::move(ofTime)](const OrRefusal<Appended>& answer) {
            m_isRecording = false;
            lookAtWorkSoon(); // what was recorded is read first
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refuse(*refusal, refused, ofTime);
                return;
            }
            emit says(done, {});
            if (then) {
                then();
            }
        },
        [this] {
            m_isRecording = false;
            lookAtWorkSoon();
        });
}

void CycleDesk::refuse(const Refusal& refusal, const std::function<void(const QString&)>& refused,
                       const std::function<void(const QString&)>& ofTime)
{
    const Told told = say(refusal, style());
    const QString words = text(told.says) + u' ' + text(told.next);
    if (isOfTime(refusal.why) && ofTime) {
        ofTime(words);
    } else if (isOfTime(refusal.why) && m_later) {
        emit says(text(told.says), text(told.next));
        if (refused) {
            refused({});
        }
        emit wrongTime(words);
    } else if (refused) {
        refused(words);
    } else {
        emit says(text(told.says), text(told.next));
    }
}

void CycleDesk::record(AnyAct act, std::vector<std::string> subjects, const QString& done,
                       std::function<void()> then, std::function<void(const QString&)> refused)
{
    subjects.push_back(m_cycle);
    const ToRecord toRecord{.act = std::move(act), .subjects = std::move(subjects)};
    record([toRecord](Office&) { return std::vector{toRecord}; }, done, std::move(then),
           std::move(refused));
}

void CycleDesk::askPin(ToSign toSign, const QString& done, std::function<void()> then)
{
    auto* const dialog =
        new SigningDialog(m_workstation.look, m_workstation.desk, m_workstation.session,
                          std::move(toSign), QApplication::activeWindow());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, done, then = std::move(then)] {
        emit says(done, {});
        if (then) {
            then();
        }
    });
    // Also what was refused may have found something newer than what is shown.
    connect(dialog, &QDialog::finished, this, &CycleDesk::refresh);
    dialog->open();
}

void CycleDesk::sign(const QString& what, const QStringList& seen, const QString& button, Acts acts,
                     const QString& done, std::function<void()> then)
{
    ToSign toSign{.what = what,
                  .seen = seen,
                  .button = button,
                  .signing = [acts](Office& office, const SignedIn& who, Signature signature) {
                      const std::vector<ToRecord> made = acts(office);
                      return Recorder(office).record(who, made, std::move(signature));
                  }};
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    // What is refused whoever signs is said before anybody types a PIN.
    m_workstation.desk.ask(
        this,
        [who = *m_workstation.session.who(), acts = std::move(acts)](Office& office) {
            const std::vector<ToRecord> made = acts(office);
            return Recorder(office).whyNot(who, made);
        },
        [this, toSign = std::move(toSign), done,
         then = std::move(then)](const std::optional<Refusal>& refusal) {
            m_isRecording = false;
            if (refusal) {
                const Told told = say(*refusal, style());
                emit says(text(told.says), text(told.next));
                return;
            }
            askPin(toSign, done, then);
        },
        [this] { m_isRecording = false; });
}

void CycleDesk::signOnSight(const QString& what, const QStringList& seen, const QString& button,
                            Resting resting, const QString& done, std::function<void()> then)
{
    askPin({.what = what,
                   .seen = seen,
                   .button = button,
                   .signing =
                       [resting = std::move(resting), sight = sightFrom(m_sheet->view())](
                           Office& office, const SignedIn& who, Signature signature) {
                           return resting(office, who, std::move(signature), sight);
                       }},
                  done, std::move(then));
}

void CycleDesk::verifyAndRelease(const QString& what, const QStringList& seen,
                                 const QString& button, const QString& done)
{
    askPin({.what = what,
                   .seen = seen,
                   .button = button,
                   .signing = {},
                   .signingTwice =
                       [sight = sightFrom(m_sheet->view())](Office& office, const SignedIn& who,
                                                            Signature first, Signature second) {
                           return loadwarden::verifyAndRelease(office, who, std::move(first),
                                                               std::move(second), sight);
                       }},
                  done, {});
}

} // namespace loadwarden::ui
