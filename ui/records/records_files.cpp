#include "ui/records/records_files.h"

#include "core/quantities/date.h"
#include "ui/look/text.h"
#include "ui/shell/desk_link.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

namespace loadwarden::ui {

QString suggestedFile(const DeskLink& desk, const QString& what, const QString& suffix)
{
    const QFileInfo journal(text(desk.file().string()));
    QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    if (folder.isEmpty() || !QDir(folder).exists()) {
        folder = QDir::homePath();
    }
    const auto& zone = desk.about().zone;
    const QString day = zone ? text(formatDate(zone->dateOf(desk.now()))) : QString();
    QString name = journal.completeBaseName();
    for (const QString& part : {what, day}) {
        if (!part.isEmpty()) {
            name += u'-' + part;
        }
    }
    // What a lot control number has and a file name has not.
    name.replace(u'/', u'-');
    return QDir(folder).filePath(name + u'.' + suffix);
}

} // namespace loadwarden::ui
