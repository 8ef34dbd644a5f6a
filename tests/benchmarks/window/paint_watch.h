#pragma once

#include <QApplication>
#include <QEventLoop>
#include <QTimer>

#include <cstdint>
#include <functional>
#include <optional>

namespace loadwarden::benchmarks {

/// Two clocks, in ms: what a person waits, and what the processors worked for it meanwhile. On a
/// machine with other work the second says more of the program.
struct Moment {
    double wall = 0;
    double processor = 0; ///< of all threads

    [[nodiscard]] static Moment now();
};

struct Taken {
    double wall = 0;
    double processor = 0;
};

[[nodiscard]] inline Taken operator-(const Moment& end, const Moment& begin)
{
    return {end.wall - begin.wall, end.processor - begin.processor};
}

/// An application that knows when its widgets were painted.
class PaintWatch : public QApplication {
public:
    PaintWatch(int& argc, char** argv);

    /// Waits until `isThere` holds and the window was painted after that, and says when the last of
    /// that painting was done. Throws std::runtime_error where that does not come.
    Moment painted(const std::function<bool()>& isThere);
    /// Waits without a look at the painting.
    void until(const std::function<bool()>& what);

    bool notify(QObject* receiver, QEvent* event) override;

private:
    std::function<bool()> m_isThere;
    std::optional<Moment> m_painted; ///< since it was there
    QEventLoop* m_loop = nullptr;
    QTimer m_quiet; ///< runs from the last painting
};

} // namespace loadwarden::benchmarks
