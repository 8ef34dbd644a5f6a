#include "tests/benchmarks/window/paint_watch.h"

#include <QPaintEvent>
#include <QTest>

#include <ctime>
#include <stdexcept>

namespace loadwarden::benchmarks {
namespace {

constexpr int longestWaitMs = 120'000;
constexpr int quietMs = 16; ///< a frame without painting: it is done

double msOf(clockid_t clock)
{
    timespec time{};
    clock_gettime(clock, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

} // namespace

Moment Moment::now()
{
    return {msOf(CLOCK_MONOTONIC), msOf(CLOCK_PROCESS_CPUTIME_ID)};
}

PaintWatch::PaintWatch(int& argc, char** argv) : QApplication(argc, argv)
{
    setCursorFlashTime(0); // it would be painted again and again
    m_quiet.setSingleShot(true);
    m_quiet.setInterval(quietMs);
    m_quiet.callOnTimeout(this, [this] {
        if (m_loop != nullptr && m_painted) {
            m_loop->quit();
        }
    });
}

Moment PaintWatch::painted(const std::function<bool()>& isThere)
{
    m_isThere = isThere;
    m_painted.reset();
    QEventLoop loop;
    m_loop = &loop;
    QTimer::singleShot(longestWaitMs, &loop, &QEventLoop::quit);
    loop.exec();
    m_loop = nullptr;
    m_isThere = {};
    if (!m_painted) {
        throw std::runtime_error("nothing was painted");
    }
    return *m_painted;
}

void PaintWatch::until(const std::function<bool()>& what)
{
    if (!QTest::qWaitFor(what, longestWaitMs)) {
        throw std::runtime_error("what was waited for did not come");
    }
}

bool PaintWatch::notify(QObject* receiver, QEvent* event)
{
    const bool isPaint = event->type() == QEvent::Paint;
    const bool answer = QApplication::notify(receiver, event);
    if (isPaint && m_loop != nullptr && m_isThere()) {
        m_painted = Moment::now();
        m_quiet.start();
    }
    return answer;
}

} // namespace loadwarden::benchmarks
