#include "core/desk/desk_thread.h"

#include <QObject>
#include <QThread>

#include <optional>

namespace loadwarden {

/// Lives on the thread, and so does the office.
struct DeskThread::Worker {
    std::filesystem::path file;
    Access access;
    Workplace place;
    QThread thread;
    QObject* there = nullptr; ///< owned by the thread: deleted when it ends
    std::unique_ptr<Office> office;
    std::exception_ptr notOpened;
};

DeskThread::DeskThread(std::filesystem::path file, Access access, Workplace place)
    : m_worker(std::make_unique<Worker>(std::move(file), access, std::move(place)))
{
    m_worker->there = new QObject;
    m_worker->there->moveToThread(&m_worker->thread);
    QObject::connect(&m_worker->thread, &QThread::finished, m_worker->there, &QObject::deleteLater);
    m_worker->thread.start();
    auto promise = std::make_shared<QPromise<void>>();
    promise->start();
    m_opened = promise->future();
    post([worker = m_worker.get(), promise] {
        try {
            worker->office = std::make_unique<Office>(worker->file, worker->access, worker->place);
        } catch (...) {
            worker->notOpened = std::current_exception();
            promise->setException(worker->notOpened);
        }
        promise->finish();
    });
}

DeskThread::~DeskThread()
{
    // A connection is closed on the thread that opened it.
    post([worker = m_worker.get()] {
        worker->office.reset();
        worker->thread.quit();
    });
    m_worker->thread.wait();
}

void DeskThread::post(std::function<void()> work)
{
    QMetaObject::invokeMethod(m_worker->there, std::move(work), Qt::QueuedConnection);
}

Office& DeskThread::office()
{
    if (m_worker->office == nullptr) {
        std::rethrow_exception(m_worker->notOpened);
    }
    return *m_worker->office;
}

} // namespace loadwarden
