#pragma once

#include "core/desk/rights.h"
#include "core/desk/to_record.h"
#include "ui/look/text.h"
#include "ui/shell/area.h"
#include "ui/shell/session.h"

#include <QPointer>
#include <QStringList>
#include <QWidget>

#include <optional>
#include <vector>

class QGridLayout;
class QVBoxLayout;

namespace loadwarden::ui {

class Field;

/// What somebody wants recorded by a form.
struct Wanted {
    std::vector<ToRecord> acts;
    QString what;                  ///< as it is signed: "Record product Vial 24"
    QStringList seen;              ///< what is signed, a line each
    QString done;                  ///< to be said when it is recorded
    Session::Signing signing = {}; ///< instead of recording the acts, where more is done with them
};

/// A form by which something is recorded in a register. It says at its fields what is wrong, before
/// anybody types a PIN, and who records it where the one who works here may not.
class RegisterForm : public QWidget {
    Q_OBJECT

public:
    /// `mayNot` says who records this: "A supervisor records products."
    RegisterForm(const Workstation& workstation, Task task, QString mayNot);

    /// Something is typed that is not recorded.
    [[nodiscard]] bool isTouched() const;
    void lookAtRights();

signals:
    /// Whether something is typed has changed.
    void touched();
    /// It has fields that it had not before.
    void regrouped();
    /// `id` is the first subject of what was recorded.
    void recorded(const QString& id);
    void says(const QString& what, const QString& next);

protected:
    /// What is typed, or nullopt where setError() has said what is wrong.
    virtual std::optional<Wanted> wanted() = 0;
    /// Puts back what is recorded, and calls filled().
    virtual void putBack() = 0;
    /// Somebody does not want what is typed.
    virtual void drop() { putBack(); }
    [[nodiscard]] virtual bool canDrop() const { return isTouched(); }

    /// Fields stand in two columns from here on.
    void beginGroup(const QString& heading = {}, const QString& says = {});
    /// Takes a group away with its fields and what is typed in them.
    void removeGroup(QWidget* group);
    /// Stands below all groups, also those that are begun later.
    void keepLast(QWidget* widget);
    /// Is hidden from who may not record this.
    void showToWhoMay(QWidget* widget);
    /// The widget of the group that was begun last, to hide it where it does not apply.
    [[nodiscard]] QWidget* group() const { return m_group; }
    /// `member` is its name in the body of the act, by which a refusal is said at it.
    Field* addField(const char* member, const QString& label, QWidget* editor,
                    const QString& hint = {});
    /// The field added last takes both columns.
    void spanLast();
    /// Over both columns.
    void addWide(QWidget* widget);
    void addEditor(QWidget* editor);
    /// After the last field. Without a PIN the button records at once.
    void addButtons(const QString& button);
    void setButton(const QString& button);
    void setError(Field* field, const QString& says);
    /// Gives it the keyboard where it can be seen.
    void goTo(QWidget* editor);
    /// The field's text is there, or it is said that it is not.
    bool needs(Field* field, const QString& otherwise);
    /// What is typed now is what is recorded.
    void filled();

    [[nodiscard]] const Workstation& workstation() const { return m_workstation; }
    /// What it takes to record this now.
    [[nodiscard]] virtual Task task() const { return m_task; }

private:
    struct Named {
        QString member;
        Field* field;
    };

    void watch(QWidget* editor);
    [[nodiscard]] QStringList state() const;
    void edited();
    void submit();
    void sign(const Wanted& wanted);
    void record(const Wanted& wanted);
    void done(const Wanted& wanted);
    void refused(const Refusal& refusal);
    void clearErrors();
    void focusFirstError();
    [[nodiscard]] bool mayRecord() const;

    Workstation m_workstation;
    Task m_task;
    QString m_mayNot;
    QVBoxLayout* m_column;
    QWidget* m_body;
    QVBoxLayout* m_groups;
    QWidget* m_group = nullptr;
    QGridLayout* m_grid = nullptr;
    QWidget* m_last = nullptr;
    std::vector<QPointer<QWidget>> m_forWhoMay;
    int m_cell = 0;
    std::vector<Named> m_fields;
    std::vector<QWidget*> m_editors;
    QStringList m_filled;
    bool m_wasTouched = false;
    QLabel* m_trouble;
    QLabel* m_rights;
    QWidget* m_buttons = nullptr;
    QPushButton* m_record = nullptr;
    QPushButton* m_drop = nullptr;
};

} // namespace loadwarden::ui
