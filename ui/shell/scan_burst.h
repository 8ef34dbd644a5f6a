#pragma once

#include <QString>

#include <cstdint>
#include <optional>

namespace loadwarden::ui {

/// Tells a scanner from a person: its keys come closer together than fingers can, and end with
/// Enter. Knows no window.
class ScanBurst {
public:
    struct Timing {
        std::int64_t mostMs = 40; ///< between two keys of a burst
        qsizetype leastKeys = 4;  ///< before Enter
    };

    explicit ScanBurst(Timing timing) : m_timing(timing) {}

    /// A key with a character came at a moment. True where it begins anew, false where it goes on.
    bool key(QChar character, std::int64_t atMs);

    /// Enter came: the text where what came before it was a burst. Begins anew.
    [[nodiscard]] std::optional<QString> enter(std::int64_t atMs);

    /// Something else came: what came before it was no burst.
    void reset() { m_text.clear(); }

    [[nodiscard]] const QString& text() const { return m_text; }
    [[nodiscard]] const Timing& timing() const { return m_timing; }

private:
    Timing m_timing;
    QString m_text;
    std::int64_t m_lastMs = 0;
};

} // namespace loadwarden::ui
