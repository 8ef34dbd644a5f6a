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

CycleDesk::CycleDesk(Workstation& workstation, QObject* parent)
    : QObject(parent), m_workstation(workstation)
{
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
        },
        [this] { m_isAsking = false; });
}

void CycleDesk::record(Acts acts, const QString& done, std::function<void()> then,
                       std::function<void(const QString&)> refused)
{
    if (m_later && !m_later->wrong.isEmpty()) {
        const QString why = tr("It is not recorded yet.");
        if (refused) {
            refused(why + u' ' + m_later->wrong);
        } else {
            emit says(why, m_later->wrong);
        }
        return;
    }
    if (std::exchange(m_isRecording, true)) {
        return;
    }
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
        [this, done, then = std::move(then),
         refused = std::move(refused)](const OrRefusal<Appended>& answer) {
            m_isRecording = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told told = say(*refusal, style());
                if (refused) {
                    refused(text(told.says) + u' ' + text(told.next));
                } else {
                    emit says(text(told.says), text(told.next));
                }
                return;
            }
            emit says(done, {});
            if (then) {
                then();
            }
        },
        [this] { m_isRecording = false; });
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
