#pragma once

#include "core/cycle/quantity.h"
#include "core/quantities/instant.h"
#include "ui/look/look.h"

#include <QObject>
#include <QString>

#include <optional>

class QSettings;

namespace loadwarden::ui {

/// What one workstation is set to: looks and units, nothing of the record. Kept in one file.
class LocalSettings : public QObject {
    Q_OBJECT

public:
    explicit LocalSettings(const QString& file);
    ~LocalSettings() override;

    [[nodiscard]] Theme theme() const;
    void setTheme(Theme theme);

    [[nodiscard]] TextSize textSize() const;
    void setTextSize(TextSize size);

    /// celsius or fahrenheit
    [[nodiscard]] Unit temperatureUnit() const;
    void setTemperatureUnit(Unit unit);

    /// One of kPaAbsolute, kPaGauge, barGauge, psiGauge, barAbsolute.
    [[nodiscard]] Unit pressureUnit() const;
    void setPressureUnit(Unit unit);

    /// Minutes without a key or a pointer until the window locks; from 1 to 60.
    [[nodiscard]] int idleMinutes() const;
    void setIdleMinutes(int minutes);

    /// The journal that was open last; empty: none.
    [[nodiscard]] QString journal() const;
    void setJournal(const QString& file);

    /// The folder of the facility's own topics (resources/guidance/README.md); empty: none.
    [[nodiscard]] QString topicsFolder() const;
    void setTopicsFolder(const QString& folder);

    /// The backup made last from this computer of a journal; nullopt: none.
    struct LastBackup {
        QString file;
        Instant at{};
    };
    [[nodiscard]] std::optional<LastBackup> lastBackup(const QString& journal) const;
    void setLastBackup(const QString& journal, const LastBackup& backup);

    /// Where the last one went; empty: there was none.
    [[nodiscard]] QString backupFolder() const;
    void setBackupFolder(const QString& folder);

signals:
    void changed();

private:
    void put(const QString& key, const QVariant& value);

    std::unique_ptr<QSettings> m_file;
};

} // namespace loadwarden::ui
