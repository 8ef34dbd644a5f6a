#include "ui/settings/backup_section.h"

#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"
#include "ui/settings/long_work.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/session.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QScrollArea>
#include <QVBoxLayout>

#include <optional>

namespace loadwarden::ui {
namespace {

constexpr int widthOfText = 860;

QVBoxLayout* columnOf(QWidget* part)
{
    auto* const column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    return column;
}

QHBoxLayout* rowOf(QPushButton* button)
{
    auto* const row = new QHBoxLayout;
    row->addWidget(button);
    row->addStretch();
    return row;
}

} // namespace

BackupSection::BackupSection(const Workstation& workstation)
    : Section(workstation),
      m_last(makeLabel({})),
      m_to(new FileEdit(FileEdit::What::folder, tr("Choose where the backup goes"))),
      m_toField(new Field(tr("Folder or new file"), m_to,
                          tr("On another disk than the journal. In a folder the backup is named by "
                             "facility and time."))),
      m_backUp(makeButton(tr("Back up now"), ButtonKind::main)),
      m_rights(makeMuted({})),
      m_writing(new LongWork),
      m_from(new FileEdit(FileEdit::What::openFile, tr("Choose a backup"))),
      m_new(new FileEdit(FileEdit::What::saveFile, tr("Choose where the rehearsal writes"))),
      m_fromField(new Field(tr("Backup"), m_from)),
      m_newField(new Field(tr("New file of the rehearsal"), m_new,
                           tr("It is as long as the journal; take it away afterwards."))),
      m_rehearse(makeButton(tr("Rehearse a restore"))),
      m_rehearsing(new LongWork)
{
    auto* const outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    outer->addWidget(scroll);
    auto* const middle = new QWidget;
    middle->setObjectName(QStringLiteral("rows"));
    scroll->setWidget(middle);
    auto* const row = new QHBoxLayout(middle);
    row->setContentsMargins(space::large, space::medium, space::page, space::medium);
    auto* const view = new QWidget;
    view->setMaximumWidth(widthOfText);
    row->addWidget(view, 8, Qt::AlignTop);
    row->addStretch(1);
    QVBoxLayout* const column = columnOf(view);
    column->addWidget(makeLabel(tr("Backup"), Type::title));
    column->addWidget(makeMuted(
        tr("A backup is read back and verified before it gets its name; others go on working "
           "meanwhile. Keep it on another disk, and this user's key for seals apart from it.")));
    column->addSpacing(space::small);
    column->addWidget(makeBackup());
    column->addWidget(makeRule());
    column->addWidget(makeDrill());
    lookAtRights();
}

QWidget* BackupSection::makeBackup()
{
    auto* const part = new QWidget;
    QVBoxLayout* const column = columnOf(part);
    column->addWidget(m_last);
    column->addWidget(m_toField);
    m_to->line()->setAccessibleName(tr("Folder or new file"));
    column->addLayout(rowOf(m_backUp));
    column->addWidget(m_rights);
    column->addWidget(m_writing);
    column->addSpacing(space::small);
    m_to->line()->setText(workstation().settings.backupFolder());
    connect(m_backUp, &QPushButton::clicked, this, &BackupSection::backUp);
    connect(m_to->line(), &QLineEdit::returnPressed, this, &BackupSection::backUp);
    connect(m_writing, &LongWork::changed, this, &BackupSection::lookAtRights);
    return part;
}

QWidget* BackupSection::makeDrill()
{
    auto* const part = new QWidget;
    QVBoxLayout* const column = columnOf(part);
    column->addSpacing(space::small);
    column->addWidget(makeLabel(tr("Rehearse the day when the journal is lost"), Type::heading));
    column->addWidget(makeMuted(
        tr("Only a backup that was restored once is known to work. This makes a new file of one, "
           "verified "
           "against the seals kept on this computer, and changes nothing here. On the real day: "
           "loadwarden-cli restore BACKUP NEW-FILE --go-on.")));
    column->addSpacing(space::small);
    column->addWidget(m_fromField);
    column->addWidget(m_newField);
    m_from->line()->setAccessibleName(tr("Backup"));
    m_new->line()->setAccessibleName(tr("New file of the rehearsal"));
    column->addLayout(rowOf(m_rehearse));
    column->addWidget(m_rehearsing);
    connect(m_rehearse, &QPushButton::clicked, this, &BackupSection::rehearse);
    connect(m_new->line(), &QLineEdit::returnPressed, this, &BackupSection::rehearse);
    connect(m_rehearsing, &LongWork::changed, this, &BackupSection::lookAtRights);
    return part;
}

void BackupSection::show(const RegistersNow& /*registers*/)
{
    tellLast();
}

void BackupSection::lookAtRights()
{
    const bool may = mayDo(workstation().session.person().role, Task::backUp);
    m_backUp->setVisible(may && !m_writing->isRunning());
    m_rights->setVisible(!may);
    m_rights->setText(may ? QString()
                          : tr("A lead or supervisor makes backups. Ask one to sign in here and do "
                               "it."));
    m_toField->setEnabled(may && !m_writing->isRunning());
    m_rehearse->setVisible(!m_rehearsing->isRunning());
}

void BackupSection::tellLast()
{
    const auto last = workstation().settings.lastBackup(text(workstation().desk.file().string()));
    if (!last) {
        m_last->setText(tr("No backup of this journal was made from this computer yet."));
        setStyleProperty(m_last, "tone", "waiting");
        return;
    }
    m_last->setText(tr("The last backup from this computer: %1, on %2.")
                        .arg(last->file, text(sayTime(last->at, workstation().desk.style()))));
    setStyleProperty(m_last, "tone", "");
}

QString BackupSection::targetIn(const QString& path) const
{
    if (!QFileInfo(path).isDir()) {
        return path;
    }
    QString name;
    for (const QChar character : text(workstation().desk.about().facility)) {
        name += character.isLetterOrNumber() ? character : u'-';
    }
    const Instant now = workstation().desk.now();
    const auto& zone = workstation().desk.about().zone;
    const std::int64_t localMs = now.ms + (zone ? zone->offsetAt(now).ms : 0);
    const QString time = QDateTime::fromMSecsSinceEpoch(localMs, Qt::UTC)
                             .toString(QStringLiteral("yyyy-MM-dd-HHmm"));
    return QDir(path).filePath(name + u'-' + time + QStringLiteral(".journal"));
}

void BackupSection::backUp()
{
    if (m_backUp->isHidden()) {
        return;
    }
    const QString path = m_to->path();
    if (path.isEmpty()) {
        m_toField->setError(tr("Type or choose where the backup goes."));
        m_to->setFocus();
        return;
    }
    const QString target = targetIn(path);
    if (QFileInfo::exists(target)) {
        m_toField->setError(
            tr("There is a file %1 already. Nothing is written over a file.").arg(target));
        m_to->setFocus();
        return;
    }
    m_toField->setError({});
    workstation().desk.ask(
        this,
        [who = *workstation().session.who()](Office& office) { return sealForBackup(office, who); },
        [this, target](const OrRefusal<Seal>& answer) {
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told told = say(*refusal, workstation().desk.style());
                m_toField->setError(text(told.says) + u' ' + text(told.next));
                return;
            }
            write(std::get<Seal>(answer), target);
        });
}

void BackupSection::write(const Seal& seal, const QString& target)
{
    if (m_writing->isRunning()) {
        return;
    }
    m_writing->run(
        tr("Writing %1 and reading it back …").arg(target),
        [journal = workstation().desk.file(), seal,
         file = std::filesystem::path(target.toStdString())](Progress& progress) {
            return writeBackup(journal, seal, file, progress);
        },
        [this](const Backup& backup) { made(backup); });
}

void BackupSection::made(const Backup& backup)
{
    const QString file = text(backup.file.string());
    workstation().settings.setLastBackup(text(workstation().desk.file().string()),
                                         {file, workstation().desk.now()});
    const QFileInfo typed(m_to->path());
    workstation().settings.setBackupFolder(typed.isDir() ? typed.filePath() : typed.path());
    m_writing->say(
        tr("The backup is whole: %1").arg(file),
        tr("%1, %2 entries, read back and verified. Its newest entry, to be kept on paper: %3")
            .arg(QLocale().formattedDataSize(static_cast<qint64>(backup.bytes)),
                 QString::number(backup.report.entries),
                 QString::number(backup.report.head.seq) + u':'
                     + text(hexOf(backup.report.head.hash))));
    if (m_from->path().isEmpty()) {
        m_from->line()->setText(file); // to be rehearsed next
    }
    tellLast();
}

void BackupSection::rehearse()
{
    const QString from = m_from->path();
    const QString target = m_new->path();
    const bool isThere = QFileInfo(from).isFile();
    m_fromField->setError(isThere ? QString() : tr("There is no such file. Choose a backup."));
    const QString wrong = target.isEmpty() ? tr("Type or choose a name for the new file.")
                          : QFileInfo::exists(target)
                              ? tr("There is a file of that name. Choose another name.")
                              : QString();
    m_newField->setError(wrong);
    if (!isThere || !wrong.isEmpty() || m_rehearsing->isRunning()) {
        (isThere ? m_new : m_from)->setFocus();
        return;
    }
    const RestoreRequest request{.backup = from.toStdString(),
                                 .target = target.toStdString(),
                                 .workstation = workstation().desk.place().workstation,
                                 .seals = {},
                                 .keys = {},
                                 .expected = {}};
    m_rehearsing->run(
        tr("Verifying %1 and making a new file of it …").arg(from),
        [request, place = workstation().desk.place()](Progress& progress) {
            return restoreJournal(request, Restoring::drill, place, progress);
        },
        [this, target](const RestoredJournal& restored) { rehearsed(restored, target); });
}

void BackupSection::rehearsed(const RestoredJournal& restored, const QString& target)
{
    const QString ends =
        tr("The backup verifies. It ends with entry %1 of %2.")
            .arg(QString::number(restored.restored.backupHead.seq),
                 text(sayTime(restored.restored.backupTime, workstation().desk.style())));
    const QString lost =
        restored.lost > 0
            ? tr("This computer has seen %1 entries more: on the real day they would be entered "
                 "again from paper, growth in a vial or a failed test among them.")
                  .arg(restored.lost)
            : tr("It holds everything that this computer has seen.");
    m_rehearsing->say(ends, lost + u' '
                                + tr("This was a rehearsal: work goes on in the journal from "
                                     "before, and %1 may be taken away.")
                                      .arg(target));
}

} // namespace loadwarden::ui
