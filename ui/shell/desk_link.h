#pragma once

#include "core/desk/desk_thread.h"
#include "core/desk/kept_today.h"
#include "core/desk/people.h"
#include "core/desk/sign_in.h"
#include "core/store/store_error.h"
#include "core/words/say.h"

#include <QFuture>
#include <QObject>
#include <QPointer>
#include <QString>

#include <memory>
#include <optional>

namespace loadwarden::ui {

/// What went wrong, in words for a person.
struct Trouble {
    QString says;
    QString next;
};

/// Runs on the window's thread inside a catch block.
[[nodiscard]] Trouble troubleNow();

/// What the window needs to know of a journal before it shows anything.
struct Opened {
    std::string facility;
    std::string journal; ///< its id
    std::optional<Zone> zone;
    std::optional<std::string> staleLock; ///< somebody's desktop that ended badly, in words
    std::string notSealed;                ///< why this day has no seal; empty: it has one
};

/// The window's way to a journal: it owns the thread on which that is open, and answers come back
/// on the window's thread. Whoever asks gives himself as `context`: once he is gone, nobody is
/// called any more.
class DeskLink : public QObject {
    Q_OBJECT

public:
    DeskLink(const std::filesystem::path& file, const Workplace& place, QObject* parent = nullptr);
    ~DeskLink() override;

    [[nodiscard]] const std::filesystem::path& file() const { return m_file; }
    [[nodiscard]] const Workplace& place() const { return m_place; }
    [[nodiscard]] const Clock& clock() const { return m_place.clock; }
    [[nodiscard]] Instant now() const { return m_place.clock.now(); }
    /// Known after opened().
    [[nodiscard]] const Opened& about() const { return m_about; }
    /// Times in the facility's zone; temperatures that nobody typed as the house wants them.
    [[nodiscard]] HouseStyle style() const;
    /// For work on the desk's thread alone.
    [[nodiscard]] const std::shared_ptr<KeptToday>& keptToday() const { return m_today; }
    void setFahrenheit(bool fahrenheit) { m_fahrenheit = fahrenheit; }

    /// Has `work(Office&)` done on the desk's thread and `done(value)` called here. What it throws
    /// becomes trouble(); `failed()`, where there is one, is called, too.
    template <class Work, class Done>
    void ask(QObject* context, Work work, Done done, std::function<void()> failed = {})
    {
        using Value = std::invoke_result_t<Work, Office&>;
        struct Asked {
            QPointer<QObject> context;
            Done done;
            std::function<void()> failed;
        };
        auto asked =
            std::make_shared<Asked>(Asked{QPointer(context), std::move(done), std::move(failed)});
        // Not then(context, ...): Qt 6.4 stops the program where a context has gone meanwhile.
        m_thread->ask(std::move(work))
            .then(QtFuture::Launch::Sync, [this, asked](QFuture<Value> future) {
                auto answer = std::make_shared<QFuture<Value>>(std::move(future));
                QMetaObject::invokeMethod(
                    this, [this, asked, answer] { answered(*asked, *answer); },
                    Qt::QueuedConnection);
            });
    }

    /// The same for work that records: an answer that is no refusal says recorded().
    template <class Work, class Done>
    void record(QObject* context, Work work, Done done, std::function<void()> failed = {})
    {
        ask(
            context, std::move(work),
            [self = QPointer(this), done = std::move(done)](auto answer) mutable {
                const bool isDone = !std::holds_alternative<Refusal>(answer);
                done(std::move(answer));
                if (isDone && self != nullptr) {
                    emit self->recorded();
                }
            },
            std::move(failed));
    }

    /// The thread itself, for long work with progress (DeskThread::askLong).
    [[nodiscard]] DeskThread& thread() { return *m_thread; }

signals:
    void opened();
    void notOpened(const QString& says, const QString& next);
    void trouble(const QString& says, const QString& next);
    /// Something was recorded from here: what is shown may be old.
    void recorded();

private:
    void nowOpen(QFuture<Opened>& future);
    /// On the window's thread.
    template <class Asked, class Value>
    void answered(Asked& asked, QFuture<Value>& future)
    {
        if (asked.context == nullptr) {
            return;
        }
        std::optional<Value> value;
        try {
            // Not takeResult(): Qt 6.4 takes the state back with it, and the promise, which the
            // desk's thread may not have let go yet, then takes itself for unfinished and answers
            // again.
            value.emplace(future.result());
        } catch (...) {
            const Trouble what = troubleNow();
            if (asked.failed) {
                asked.failed();
            }
            emit trouble(what.says, what.next);
            return;
        }
        asked.done(*std::move(value));
    }

    std::filesystem::path m_file;
    Workplace m_place;
    std::unique_ptr<DeskThread> m_thread;
    std::shared_ptr<KeptToday> m_today = std::make_shared<KeptToday>();
    Opened m_about;
    bool m_fahrenheit = false;
};

} // namespace loadwarden::ui
