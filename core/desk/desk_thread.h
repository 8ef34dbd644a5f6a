#pragma once

#include "core/desk/office.h"
#include "core/store/progress.h"

#include <QFuture>
#include <QPromise>

#include <algorithm>
#include <cstdint>
#include <exception>
#include <filesystem>
#include <functional>
#include <memory>
#include <type_traits>
#include <utility>

namespace loadwarden {

/// Says how far work has come to whoever watches its future, and ends it when that is cancelled.
template <class Value>
class FutureProgress final : public Progress {
public:
    explicit FutureProgress(QPromise<Value>& promise) : m_promise(promise) {}

    bool goOn(std::int64_t done, std::int64_t total) override
    {
        constexpr std::int64_t steps = 1'000;
        m_promise.setProgressRange(0, static_cast<int>(steps));
        m_promise.setProgressValue(
            static_cast<int>(total <= 0 ? steps : done * steps / std::max(total, done)));
        return !m_promise.isCanceled();
    }

private:
    QPromise<Value>& m_promise;
};

/// A journal that is open on a thread of its own, so that no window ever waits for a disk. Values
/// go in and futures of values come out; the office, its connection and everything that refers to
/// it stay on that thread. What the work throws, the future throws. Work is done in the order in
/// which it was asked for; the thread ends when it has been done.
class DeskThread {
public:
    /// Opens the journal on the thread; opened() says how that went.
    DeskThread(std::filesystem::path file, Access access, Workplace place);
    ~DeskThread();
    DeskThread(const DeskThread&) = delete;
    DeskThread& operator=(const DeskThread&) = delete;

    /// Finished when the journal is open. Throws the StoreError with which it could not be opened.
    [[nodiscard]] QFuture<void> opened() const { return m_opened; }

    /// Has `work(Office&)` done. Throws the StoreError with which the journal could not be opened.
    template <class Work>
    [[nodiscard]] auto ask(Work work) -> QFuture<std::invoke_result_t<Work, Office&>>
    {
        return askLong(
            [work = std::move(work)](Office& office, Progress&) mutable { return work(office); });
    }

    /// Has `work(Office&, Progress&)` done, which shows its progress and can be cancelled.
    template <class Work>
    [[nodiscard]] auto askLong(Work work) -> QFuture<std::invoke_result_t<Work, Office&, Progress&>>
    {
        using Value = std::invoke_result_t<Work, Office&, Progress&>;
        auto promise = std::make_shared<QPromise<Value>>();
        promise->start();
        QFuture<Value> future = promise->future();
        post([this, promise, work = std::move(work)]() mutable {
            try {
                if (!promise->isCanceled()) {
                    FutureProgress<Value> progress(*promise);
                    if constexpr (std::is_void_v<Value>) {
                        work(office(), progress);
                    } else {
                        promise->addResult(work(office(), progress));
                    }
                }
            } catch (...) {
                promise->setException(std::current_exception());
            }
            promise->finish();
        });
        return future;
    }

private:
    struct Worker;

    void post(std::function<void()> work);
    /// On the thread; throws the StoreError with which it could not be opened.
    [[nodiscard]] Office& office();

    std::unique_ptr<Worker> m_worker;
    QFuture<void> m_opened;
};

} // namespace loadwarden
