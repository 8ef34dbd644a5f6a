#pragma once

#include "ui/shell/desk_link.h"

#include <QFutureWatcher>
#include <QObject>

#include <functional>
#include <memory>
#include <optional>
#include <utility>

namespace loadwarden::ui {

/// A second way to the journal, for reading, on a thread and a connection of its own: what takes
/// long holds up nothing else. One work at a time; the journal is open only meanwhile.
class SecondDesk : public QObject {
    Q_OBJECT

public:
    explicit SecondDesk(const DeskLink& desk, QObject* parent = nullptr)
        : QObject(parent), m_desk(desk)
    {
    }
    ~SecondDesk() override { stop(); }

    [[nodiscard]] bool isBusy() const { return m_thread != nullptr; }

    /// Has `work(Office&, Progress&)` done and then one of these called here: `done(value)`,
    /// nullopt where it was cancelled before there was any, or `failed(trouble)`. Call it only
    /// while nothing else runs.
    template <class Work, class Done>
    void run(Work work, Done done, std::function<void(const Trouble&)> failed)
    {
        using Value = std::invoke_result_t<Work, Office&, Progress&>;
        m_thread = std::make_unique<DeskThread>(m_desk.file(), Access::read, m_desk.place());
        QFuture<Value> future = m_thread->askLong(std::move(work));
        auto* const watcher = new QFutureWatcher<Value>(this);
        m_cancel = [future]() mutable { future.cancel(); };
        connect(watcher, &QFutureWatcherBase::progressValueChanged, this, &SecondDesk::progress);
        connect(watcher, &QFutureWatcherBase::finished, this,
                [this, watcher, done = std::move(done), failed = std::move(failed)] {
                    watcher->deleteLater();
                    m_cancel = {};
                    m_thread.reset();
                    std::optional<Value> value;
                    try {
                        QFuture<Value> answer = watcher->future();
                        answer.waitForFinished(); // throws what the work has thrown
                        if (answer.resultCount() > 0) {
                            value.emplace(answer.resultAt(0));
                        }
                    } catch (...) {
                        failed(troubleNow());
                        return;
                    }
                    done(std::move(value));
                });
        watcher->setFuture(future);
    }

    /// Ends what runs as soon as it can be left.
    void cancel()
    {
        if (m_cancel) {
            m_cancel();
        }
    }

signals:
    /// Thousandths.
    void progress(int done);

private:
    void stop()
    {
        cancel();
        m_thread.reset();
    }

    const DeskLink& m_desk;
    std::unique_ptr<DeskThread> m_thread;
    std::function<void()> m_cancel;
};

} // namespace loadwarden::ui
