#include "ui/settings/register_form.h"

#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "ui/parts/field.h"
#include "ui/shell/signing_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

/// The lines that are typed into within an editor, or it itself.
QList<QLineEdit*> linesOf(QWidget* editor)
{
    if (auto* const line = qobject_cast<QLineEdit*>(editor)) {
        return {line};
    }
    return qobject_cast<QComboBox*>(editor) == nullptr ? editor->findChildren<QLineEdit*>()
                                                       : QList<QLineEdit*>();
}

/// Whether a refusal's detail names a member of the body: "limits", or "limits/0/least" within it.
bool names(const QString& detail, const QString& member)
{
    return detail.contains(QStringLiteral("\"%1\"").arg(member))
           || detail.contains(QStringLiteral("\"%1/").arg(member))
           || detail.contains(QStringLiteral("/%1\"").arg(member));
}

/// By what a refusal names the members that it is about; empty: by none.
QString placeOf(const Refusal& refusal)
{
    if (refusal.why == RefusalWhy::badgeTaken) {
        return QStringLiteral("\"badge\"");
    }
    if (refusal.why == RefusalWhy::inFuture) {
        return QStringLiteral("\"happenedAt\"");
    }
    return refusal.why == RefusalWhy::malformed ? text(refusal.detail) : QString();
}

/// What the recorder itself refuses, and `signing` records.
bool goesElsewhere(const std::vector<ToRecord>& acts)
{
    return std::ranges::any_of(
        acts, [](const ToRecord& each) { return std::holds_alternative<StaffPinSet>(each.act); });
}

} // namespace

RegisterForm::RegisterForm(const Workstation& workstation, Task task, QString mayNot)
    : m_workstation(workstation),
      m_task(task),
      m_mayNot(std::move(mayNot)),
      m_column(new QVBoxLayout(this)),
      m_body(new QWidget),
      m_groups(new QVBoxLayout(m_body)),
      m_trouble(makeLabel({})),
      m_rights(makeMuted({}))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(space::small);
    m_groups->setContentsMargins(0, 0, 0, 0);
    m_groups->setSpacing(space::small);
    m_column->addWidget(m_body);
    m_trouble->setProperty("tone", "bad");
    m_trouble->hide();
}

void RegisterForm::beginGroup(const QString& heading, const QString& says)
{
    m_group = new QWidget;
    auto* const column = new QVBoxLayout(m_group);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::hair);
    if (!heading.isEmpty()) {
        column->addWidget(makeLabel(heading, Type::heading));
        if (says.isEmpty()) {
            column->addSpacing(space::small);
        }
    }
    if (!says.isEmpty()) {
        column->addWidget(makeMuted(says));
        column->addSpacing(space::small);
    }
    m_grid = new QGridLayout;
    m_grid->setHorizontalSpacing(space::large);
    m_grid->setVerticalSpacing(0);
    m_grid->setColumnStretch(0, 1);
    m_grid->setColumnStretch(1, 1);
    column->addLayout(m_grid);
    m_groups->insertWidget(m_groups->count() - (m_last == nullptr ? 0 : 1), m_group);
    m_cell = 0;
    if (m_last != nullptr) {
        m_last->raise(); // Tab comes to it after the group, too
    }
}

void RegisterForm::removeGroup(QWidget* group)
{
    std::erase_if(m_fields, [group](const Named& each) { return group->isAncestorOf(each.field); });
    std::erase_if(m_editors, [group](QWidget* each) { return group->isAncestorOf(each); });
    if (group == m_group) {
        m_group = nullptr;
        m_grid = nullptr;
    }
    m_groups->removeWidget(group);
    group->hide();
    group->deleteLater();
    edited();
}

void RegisterForm::keepLast(QWidget* widget)
{
    m_last = widget;
    m_groups->addWidget(widget);
}

void RegisterForm::showToWhoMay(QWidget* widget)
{
    m_forWhoMay.emplace_back(widget);
    widget->setVisible(mayRecord());
}

Field* RegisterForm::addField(const char* member, const QString& label, QWidget* editor,
                              const QString& hint)
{
    auto* const field = new Field(label, editor, hint);
    for (QLineEdit* const line : linesOf(editor)) {
        if (line->accessibleName().isEmpty()) {
            line->setAccessibleName(editor->accessibleName());
        }
    }
    m_grid->addWidget(field, m_cell / 2, m_cell % 2);
    ++m_cell;
    m_fields.push_back({QLatin1String(member), field});
    addEditor(editor);
    return field;
}

void RegisterForm::spanLast()
{
    QWidget* const field = m_fields.back().field;
    m_grid->removeWidget(field);
    m_cell -= 1;
    m_grid->addWidget(field, m_cell / 2, 0, 1, 2);
    m_cell += 2;
}

void RegisterForm::addWide(QWidget* widget)
{
    m_cell += m_cell % 2;
    m_grid->addWidget(widget, m_cell / 2, 0, 1, 2);
    m_cell += 2;
}

void RegisterForm::addEditor(QWidget* editor)
{
    watch(editor);
    for (QLineEdit* const line : linesOf(editor)) {
        if (line != editor) {
            watch(line);
        }
    }
    for (auto* const box : editor->findChildren<QCheckBox*>()) {
        watch(box);
    }
}

void RegisterForm::watch(QWidget* editor)
{
    if (auto* const line = qobject_cast<QLineEdit*>(editor)) {
        connect(line, &QLineEdit::textChanged, this, &RegisterForm::edited);
        connect(line, &QLineEdit::returnPressed, this, &RegisterForm::submit);
    } else if (auto* const list = qobject_cast<QComboBox*>(editor)) {
        connect(list, &QComboBox::currentIndexChanged, this, &RegisterForm::edited);
    } else if (auto* const box = qobject_cast<QCheckBox*>(editor)) {
        connect(box, &QCheckBox::toggled, this, &RegisterForm::edited);
    } else {
        return;
    }
    m_editors.push_back(editor);
}

void RegisterForm::addButtons(const QString& button)
{
    m_column->addWidget(m_trouble);
    m_column->addWidget(m_rights);
    m_buttons = new QWidget;
    auto* const row = new QHBoxLayout(m_buttons);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    m_record = makeButton(button, ButtonKind::main);
    m_drop = makeButton(tr("Drop what is typed"), ButtonKind::quiet);
    row->addWidget(m_record);
    row->addWidget(m_drop);
    row->addStretch();
    m_column->addWidget(m_buttons);
    connect(m_record, &QPushButton::clicked, this, &RegisterForm::submit);
    connect(m_drop, &QPushButton::clicked, this, [this] {
        clearErrors();
        drop();
        m_record->setFocus();
    });
    m_drop->hide();
    lookAtRights();
}

void RegisterForm::setButton(const QString& button)
{
    m_record->setText(button);
}

bool RegisterForm::mayRecord() const
{
    return mayDo(m_workstation.session.person().role, task());
}

void RegisterForm::lookAtRights()
{
    if (m_buttons == nullptr) {
        return;
    }
    const bool may = mayRecord();
    m_body->setEnabled(may);
    for (const auto& widget : m_forWhoMay) {
        if (widget != nullptr) {
            widget->setVisible(may);
        }
    }
    m_buttons->setVisible(may);
    m_rights->setVisible(!may);
    m_rights->setText(may ? QString() : tr("%1 Ask one to sign in here and do it.").arg(m_mayNot));
}

QStringList RegisterForm::state() const
{
    QStringList all;
    for (const QWidget* const editor : m_editors) {
        if (const auto* const line = qobject_cast<const QLineEdit*>(editor)) {
            all << line->text();
        } else if (const auto* const list = qobject_cast<const QComboBox*>(editor)) {
            all << QString::number(list->currentIndex());
        } else if (const auto* const box = qobject_cast<const QCheckBox*>(editor)) {
            all << QString::number(box->isChecked() ? 1 : 0);
        }
    }
    return all;
}

bool RegisterForm::isTouched() const
{
    return state() != m_filled;
}

void RegisterForm::filled()
{
    m_filled = state();
    edited();
}

void RegisterForm::edited()
{
    const bool isNow = isTouched();
    if (m_drop != nullptr) {
        m_drop->setVisible(canDrop());
    }
    if (std::exchange(m_wasTouched, isNow) != isNow) {
        emit touched();
    }
}

void RegisterForm::setError(Field* field, const QString& says)
{
    field->setError(says);
    for (QLineEdit* const line : linesOf(field->editor())) {
        setStyleProperty(line, "wrong", says.isEmpty() ? "false" : "true");
        line->setAccessibleDescription(says);
    }
}

bool RegisterForm::needs(Field* field, const QString& otherwise)
{
    const QList<QLineEdit*> lines = linesOf(field->editor());
    const bool isThere = !lines.isEmpty() && !lines.front()->text().trimmed().isEmpty();
    setError(field, isThere ? QString() : otherwise);
    return isThere;
}

void RegisterForm::clearErrors()
{
    for (const Named& each : m_fields) {
        setError(each.field, {});
    }
    m_trouble->hide();
}

void RegisterForm::focusFirstError()
{
    for (const Named& each : m_fields) {
        if (each.field->hasError()) {
            goTo(each.field->editor());
            return;
        }
    }
}

void RegisterForm::goTo(QWidget* editor)
{
    editor->setFocus();
    // Once what was added or said has its place; with its label and what is said of it.
    QTimer::singleShot(0, editor, [field = editor->parentWidget()] {
        for (QWidget* each = field; each != nullptr; each = each->parentWidget()) {
            if (auto* const scroll = qobject_cast<QScrollArea*>(each)) {
                scroll->ensureWidgetVisible(field, 0, space::small);
            }
        }
    });
}

void RegisterForm::submit()
{
    if (!mayRecord() || !m_record->isEnabled()) {
        return;
    }
    clearErrors();
    auto wanted = this->wanted();
    if (!wanted) {
        focusFirstError();
        return;
    }
    if (wanted->signing && goesElsewhere(wanted->acts)) {
        sign(*wanted);
        return;
    }
    m_record->setEnabled(false); // until it is answered
    m_workstation.desk.ask(
        this,
        [who = *m_workstation.session.who(), acts = wanted->acts](Office& office) {
            return Recorder(office).whyNot(who, acts);
        },
        [this, wanted = *wanted](const std::optional<Refusal>& refusal) {
            m_record->setEnabled(true);
            if (refusal) {
                refused(*refusal);
            } else if (rightOf(task()).signs) {
                sign(wanted);
            } else {
                record(wanted);
            }
        },
        [this] { m_record->setEnabled(true); });
}

void RegisterForm::sign(const Wanted& wanted)
{
    const auto recordActs = [acts = wanted.acts](Office& office, const SignedIn& who,
                                                 Signature signature) {
        return Recorder(office).record(who, acts, std::move(signature));
    };
    auto* const dialog =
        new SigningDialog(m_workstation.look, m_workstation.desk, m_workstation.session,
                          {.what = wanted.what,
                           .seen = wanted.seen,
                           .button = tr("Sign"),
                           .signing = wanted.signing ? wanted.signing : recordActs},
                          window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, wanted] { done(wanted); });
    dialog->open();
}

void RegisterForm::record(const Wanted& wanted)
{
    m_record->setEnabled(false);
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), acts = wanted.acts](Office& office) {
            return Recorder(office).record(who, acts);
        },
        [this, wanted](const OrRefusal<Appended>& answer) {
            m_record->setEnabled(true);
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                refused(*refusal);
                return;
            }
            done(wanted);
        },
        [this] { m_record->setEnabled(true); });
}

void RegisterForm::done(const Wanted& wanted)
{
    filled();
    emit says(wanted.done, {});
    emit recorded(text(wanted.acts.front().subjects.front()));
}

void RegisterForm::refused(const Refusal& refusal)
{
    const Told told = say(refusal, m_workstation.desk.style());
    const QString words = text(told.says) + u' ' + text(told.next);
    const QString detail = placeOf(refusal);
    if (!detail.isEmpty()) {
        for (const Named& each : m_fields) {
            if (!each.member.isEmpty() && names(detail, each.member)
                && each.field->isVisibleTo(this)) {
                setError(each.field, words);
                focusFirstError();
                return;
            }
        }
    }
    m_trouble->setText(words);
    m_trouble->show();
}

} // namespace loadwarden::ui
