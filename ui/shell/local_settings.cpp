#include "ui/shell/local_settings.h"

#include <QSettings>

#include <algorithm>
#include <array>
#include <utility>

namespace loadwarden::ui {
namespace {

// The words of the file: never renamed.
constexpr std::array themes = {std::pair{"light", Theme::light}, std::pair{"dark", Theme::dark}};
constexpr std::array sizes = {std::pair{"normal", TextSize::normal},
                              std::pair{"large", TextSize::large},
                              std::pair{"largest", TextSize::largest}};
constexpr std::array temperatures = {std::pair{"celsius", Unit::celsius},
                                     std::pair{"fahrenheit", Unit::fahrenheit}};
constexpr std::array pressures = {
    std::pair{"kpa-gauge", Unit::kPaGauge}, std::pair{"bar-gauge", Unit::barGauge},
    std::pair{"psi-gauge", Unit::psiGauge}, std::pair{"kpa-absolute", Unit::kPaAbsolute},
    std::pair{"bar-absolute", Unit::barAbsolute}};

/// The value of a word; the first of the table where the file says something else.
template <class Table>
auto valueIn(const Table& table, const QVariant& word)
{
    for (const auto& [text, value] : table) {
        if (word.toString() == QLatin1String(text)) {
            return value;
        }
    }
    return table.front().second;
}

template <class Table, class Value>
QString wordIn(const Table& table, Value value)
{
    for (const auto& [text, each] : table) {
        if (each == value) {
            return QLatin1String(text);
        }
    }
    return {};
}

const QString themeKey = QStringLiteral("look/theme");
const QString sizeKey = QStringLiteral("look/text-size");
const QString temperatureKey = QStringLiteral("units/temperature");
const QString pressureKey = QStringLiteral("units/pressure");
const QString idleKey = QStringLiteral("lock/idle-minutes");
const QString journalKey = QStringLiteral("journal/file");
const QString topicsKey = QStringLiteral("questions/topics");
const QString backupOfKey = QStringLiteral("backup/journal");
const QString backupFileKey = QStringLiteral("backup/file");
const QString backupTimeKey = QStringLiteral("backup/time-ms");
const QString backupFolderKey = QStringLiteral("backup/folder");
constexpr int usualIdleMinutes = 10;

} // namespace

LocalSettings::LocalSettings(const QString& file)
    : m_file(std::make_unique<QSettings>(file, QSettings::IniFormat))
{
}

LocalSettings::~LocalSettings() = default;

Theme LocalSettings::theme() const
{
    return valueIn(themes, m_file->value(themeKey));
}

void LocalSettings::setTheme(Theme theme)
{
    put(themeKey, wordIn(themes, theme));
}

TextSize LocalSettings::textSize() const
{
    return valueIn(sizes, m_file->value(sizeKey));
}

void LocalSettings::setTextSize(TextSize size)
{
    put(sizeKey, wordIn(sizes, size));
}

Unit LocalSettings::temperatureUnit() const
{
    return valueIn(temperatures, m_file->value(temperatureKey));
}

void LocalSettings::setTemperatureUnit(Unit unit)
{
    put(temperatureKey, wordIn(temperatures, unit));
}

Unit LocalSettings::pressureUnit() const
{
    return valueIn(pressures, m_file->value(pressureKey));
}

void LocalSettings::setPressureUnit(Unit unit)
{
    put(pressureKey, wordIn(pressures, unit));
}

int LocalSettings::idleMinutes() const
{
    bool isNumber = false;
    const int minutes = m_file->value(idleKey, usualIdleMinutes).toInt(&isNumber);
    return isNumber ? std::clamp(minutes, 1, 60) : usualIdleMinutes;
}

void LocalSettings::setIdleMinutes(int minutes)
{
    put(idleKey, std::clamp(minutes, 1, 60));
}

QString LocalSettings::journal() const
{
    return m_file->value(journalKey).toString();
}

void LocalSettings::setJournal(const QString& file)
{
    put(journalKey, file);
}

QString LocalSettings::topicsFolder() const
{
    return m_file->value(topicsKey).toString();
}

void LocalSettings::setTopicsFolder(const QString& folder)
{
    put(topicsKey, folder);
}

std::optional<LocalSettings::LastBackup> LocalSettings::lastBackup(const QString& journal) const
{
    bool isNumber = false;
    const qint64 ms = m_file->value(backupTimeKey).toLongLong(&isNumber);
    if (!isNumber || m_file->value(backupOfKey).toString() != journal) {
        return std::nullopt;
    }
    return LastBackup{m_file->value(backupFileKey).toString(), Instant{ms}};
}

void LocalSettings::setLastBackup(const QString& journal, const LastBackup& backup)
{
    put(backupOfKey, journal);
    put(backupFileKey, backup.file);
    put(backupTimeKey, qint64{backup.at.ms});
}

QString LocalSettings::backupFolder() const
{
    return m_file->value(backupFolderKey).toString();
}

void LocalSettings::setBackupFolder(const QString& folder)
{
    put(backupFolderKey, folder);
}

void LocalSettings::put(const QString& key, const QVariant& value)
{
    if (m_file->value(key) != value) {
        m_file->setValue(key, value);
        emit changed();
    }
}

} // namespace loadwarden::ui
