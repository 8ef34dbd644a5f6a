#pragma once

#include "core/desk/upkeep.h"
#include "ui/settings/section.h"

namespace loadwarden::ui {

class Field;
class FileEdit;
class LongWork;

/// Makes verified backups, and rehearses what would be done with one.
class BackupSection : public Section {
    Q_OBJECT

public:
    explicit BackupSection(const Workstation& workstation);

    void show(const RegistersNow& registers) override;
    void lookAtRights() override;

private:
    QWidget* makeBackup();
    QWidget* makeDrill();
    void tellLast();
    void backUp();
    void write(const Seal& seal, const QString& target);
    void made(const Backup& backup);
    void rehearse();
    void rehearsed(const RestoredJournal& restored, const QString& target);
    [[nodiscard]] QString targetIn(const QString& path) const;

    QLabel* m_last;
    FileEdit* m_to;
    Field* m_toField;
    QPushButton* m_backUp;
    QLabel* m_rights;
    LongWork* m_writing;
    FileEdit* m_from;
    FileEdit* m_new;
    Field* m_fromField;
    Field* m_newField;
    QPushButton* m_rehearse;
    LongWork* m_rehearsing;
};

} // namespace loadwarden::ui
