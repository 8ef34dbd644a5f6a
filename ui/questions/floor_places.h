#pragma once

#include <QString>
#include <QStringList>

namespace loadwarden::ui {

/// From where the last questions and reports came, for the next ones.
class FloorPlaces {
public:
    void remember(const QString& place, const QString& by)
    {
        m_last = place;
        m_lastBy = by;
        m_all.removeAll(place);
        m_all.prepend(place);
    }

    [[nodiscard]] const QString& last() const { return m_last; }
    [[nodiscard]] const QString& lastBy() const { return m_lastBy; }
    /// The newest first.
    [[nodiscard]] const QStringList& all() const { return m_all; }

private:
    QString m_last;
    QString m_lastBy;
    QStringList m_all;
};

} // namespace loadwarden::ui
