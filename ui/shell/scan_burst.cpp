#include "ui/shell/scan_burst.h"

namespace loadwarden::ui {

bool ScanBurst::key(QChar character, std::int64_t atMs)
{
    const bool isNew = m_text.isEmpty() || atMs - m_lastMs > m_timing.mostMs;
    if (isNew) {
        m_text.clear();
    }
    m_text += character;
    m_lastMs = atMs;
    return isNew;
}

std::optional<QString> ScanBurst::enter(std::int64_t atMs)
{
    const bool isBurst = m_text.size() >= m_timing.leastKeys && atMs - m_lastMs <= m_timing.mostMs;
    const QString scanned = m_text;
    m_text.clear();
    return isBurst ? std::optional(scanned) : std::nullopt;
}

} // namespace loadwarden::ui
