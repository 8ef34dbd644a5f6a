#pragma once

#include "core/desk/desk_thread.h"
#include "ui/shell/desk_link.h"

#include <QFutureWatcher>
#include <QThreadPool>
#include <QWidget>

#include <functional>
#include <memory>

class QLabel;
class QProgressBar;
class QPushButton;

namespace loadwarden::ui {

/// Shows how far long work beside the window has come, and cancels it. One at a time.
class LongWork : public QWidget {
    Q_OBJECT

public:
    explicit LongWork(QWidget* parent = nullptr);
    /// Waits for what it cancels.
    ~LongWork() override;

    [[nodiscard]] bool isRunning() const { return m_isRunning; }

    /// Runs `work(Progress&)` on a thread of the pool and calls `done(value)` here. What it throws,
    /// and that it was cancelled, is said in the place of a result.
    template <class Work, class Done>
    void run(const QString& says, Work work, Done done)
    {
        using Value = std::invoke_result_t<Work, Progress&>;
        begin(says);
        auto promise = std::make_shared<QPromise<Value>>();
        promise->start();
        QFuture<Value> future = promise->future();
        m_cancel = [future]() mutable { future.cancel(); };
        m_wait = [future]() mutable { future.waitForFinished(); };
        auto* const watcher = new QFutureWatcher<Value>(this);
        connect(watcher, &QFutureWatcherBase::progressValueChanged, this, &LongWork::progressed);
        connect(watcher, &QFutureWatcherBase::finished, this, [this, watcher, future, done] {
            watcher->deleteLater();
            end();
            std::optional<Value> value;
            try {
                auto finished = future;
                finished.waitForFinished(); // throws what the work has thrown
                if (finished.resultCount() > 0) {
                    value.emplace(finished.resultAt(0));
                }
            } catch (...) {
                failed(troubleNow());
                return;
            }
            if (value) {
                done(*value);
            } else {
                cancelled();
            }
        });
        watcher->setFuture(future);
        QThreadPool::globalInstance()->start([promise, work = std::move(work)]() mutable {
            try {
                FutureProgress<Value> progress(*promise);
                promise->addResult(work(progress));
            } catch (...) {
                promise->setException(std::current_exception());
            }
            promise->finish();
        });
    }

    /// The result in words, in the place of the progress.
    void say(const QString& says, const QString& next = {}, const char* tone = "good");

signals:
    /// It began or ended.
    void changed();

private:
    void begin(const QString& says);
    void end();
    void progressed(int value);
    void failed(const Trouble& trouble);
    void cancelled();

    QLabel* m_says;
    QLabel* m_next;
    QProgressBar* m_bar;
    QPushButton* m_button;
    std::function<void()> m_cancel;
    std::function<void()> m_wait;
    bool m_isRunning = false;
    bool m_wantsNoMore = false;
};

} // namespace loadwarden::ui
