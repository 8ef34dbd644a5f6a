#include "ui/settings/policy_section.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"
#include "ui/settings/policy_form.h"
#include "ui/settings/policy_table.h"
#include "ui/shell/desk_link.h"

#include <QComboBox>
#include <QFile>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr int widthOfText = 1100;

} // namespace

PolicySection::PolicySection(const Workstation& workstation)
    : Section(workstation),
      m_now(makeLabel({}, Type::strong)),
      m_stack(new QStackedWidget),
      m_read(new QComboBox),
      m_about(makeMuted({})),
      m_table(new PolicyTable),
      m_saveAs(new FileEdit(FileEdit::What::saveFile, tr("Choose where the text is saved"))),
      m_saveField(nullptr),
      m_before(new QComboBox),
      m_after(new QComboBox),
      m_differ(makeLabel({}, Type::strong)),
      m_differences(new PolicyTable),
      m_form(new PolicyForm(workstation))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, space::medium, 0, 0);
    column->setSpacing(space::small);
    auto* const head = new QVBoxLayout;
    head->setContentsMargins(space::large, 0, space::page, 0);
    head->setSpacing(space::hair);
    head->addWidget(makeLabel(tr("Policy"), Type::title));
    head->addWidget(m_now);
    head->addWidget(makeMuted(tr("What the facility has settled about loads. A load is decided by "
                                 "the policy that was signed last before it started.")));
    auto* const tabs = new QHBoxLayout;
    tabs->setContentsMargins(0, space::small, 0, space::small);
    tabs->setSpacing(space::small);
    head->addLayout(tabs);
    column->addLayout(head);
    column->addWidget(m_stack, 1);
    addView(tr("Read it"), makeReading());
    addView(tr("Compare revisions"), makeComparing());
    addView(tr("New revision"), m_form);
    for (QPushButton* const tab : m_tabs) {
        tabs->addWidget(tab);
    }
    tabs->addStretch();
    // Behind their buttons, so that Tab goes through those first.
    for (QWidget* const view : m_views) {
        m_stack->addWidget(view);
    }
    connect(m_form, &RegisterForm::says, this, &Section::says);
    see(0);
}

void PolicySection::addView(const QString& name, QWidget* view)
{
    const int index = static_cast<int>(m_tabs.size());
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const middle = new QWidget;
    middle->setObjectName(QStringLiteral("rows"));
    auto* const row = new QHBoxLayout(middle);
    row->setContentsMargins(space::large, space::small, space::page, space::medium);
    view->setMaximumWidth(widthOfText);
    row->addWidget(view, 8, Qt::AlignTop);
    row->addStretch(1);
    scroll->setWidget(middle);
    m_views.push_back(scroll);
    auto* const tab = makeButton(name, ButtonKind::choice);
    connect(tab, &QPushButton::clicked, this, [this, index] { see(index); });
    m_tabs.push_back(tab);
}

void PolicySection::see(int index)
{
    for (std::size_t i = 0; i < m_tabs.size(); ++i) {
        m_tabs[i]->setChecked(static_cast<int>(i) == index);
    }
    m_stack->setCurrentIndex(index);
}

QWidget* PolicySection::makeReading()
{
    auto* const view = new QWidget;
    auto* const column = new QVBoxLayout(view);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::large);
    row->addWidget(new Field(tr("Revision"), m_read), 2);
    m_saveField = new Field(tr("Save its text as"), m_saveAs,
                            tr("A new file, to be edited. Nothing is written over a file."));
    m_saveAs->line()->setAccessibleName(tr("Save its text as"));
    row->addWidget(m_saveField, 3);
    auto* const save = makeButton(tr("Save the text"));
    m_saveAs->layout()->addWidget(save);
    column->addLayout(row);
    column->addWidget(m_about);
    column->addSpacing(space::small);
    column->addWidget(m_table);
    connect(m_read, &QComboBox::currentIndexChanged, this, &PolicySection::read);
    connect(save, &QPushButton::clicked, this, &PolicySection::save);
    connect(m_saveAs->line(), &QLineEdit::returnPressed, this, &PolicySection::save);
    return view;
}

QWidget* PolicySection::makeComparing()
{
    auto* const view = new QWidget;
    auto* const column = new QVBoxLayout(view);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::large);
    row->addWidget(new Field(tr("Until now"), m_before), 1);
    row->addWidget(new Field(tr("From now on"), m_after), 1);
    column->addLayout(row);
    column->addWidget(m_differ);
    column->addWidget(m_differences);
    connect(m_before, &QComboBox::currentIndexChanged, this, &PolicySection::compare);
    connect(m_after, &QComboBox::currentIndexChanged, this, &PolicySection::compare);
    return view;
}

QString PolicySection::nameOf(const RegisteredPolicy& policy) const
{
    return tr("%1, revision %2, entry %3")
        .arg(text(policy.recorded.name), QString::number(policy.recorded.revision),
             QString::number(policy.seq));
}

void PolicySection::show(const RegistersNow& registers)
{
    const bool isOther =
        m_registers == nullptr || m_registers->policies.size() != registers->policies.size();
    m_registers = registers;
    m_form->show(registers);
    if (isOther) {
        showRevisions();
    }
}

void PolicySection::showRevisions()
{
    const auto& policies = m_registers->policies;
    {
        const QSignalBlocker blockers[] = {QSignalBlocker(m_read), QSignalBlocker(m_before),
                                           QSignalBlocker(m_after)};
        for (QComboBox* const list : {m_read, m_before, m_after}) {
            list->clear();
            for (const RegisteredPolicy& each : policies) {
                list->addItem(nameOf(each));
            }
        }
        m_before->setCurrentIndex(policies.size() > 1 ? 1 : 0);
    }
    m_now->setText(policies.empty()
                       ? tr("No policy is recorded: loads are decided by the default.")
                       : tr("Decides now: %1, revision %2")
                             .arg(text(policies.front().recorded.name),
                                  QString::number(policies.front().recorded.revision)));
    read();
    compare();
}

const RegisteredPolicy* PolicySection::chosen(const QComboBox* list) const
{
    const auto index = static_cast<std::size_t>(list->currentIndex());
    return m_registers != nullptr && index < m_registers->policies.size()
               ? &m_registers->policies[index]
               : nullptr;
}

void PolicySection::read()
{
    const RegisteredPolicy* const policy = chosen(m_read);
    if (policy == nullptr) {
        return;
    }
    m_about->setText(tr("Signed by %1 on %2.")
                         .arg(text(m_registers->names.of(policy->by)),
                              text(sayTime(policy->at, workstation().desk.style()))));
    m_table->show(policyRows(policy->recorded.toml));
}

void PolicySection::compare()
{
    const RegisteredPolicy* const before = chosen(m_before);
    const RegisteredPolicy* const after = chosen(m_after);
    if (before == nullptr || after == nullptr) {
        return;
    }
    const auto differences = policyDifferences(before->recorded.toml, after->recorded.toml);
    m_differ->setText(m_registers->policies.size() == 1
                          ? tr("There is one revision so far, and nothing to compare it with.")
                      : differences.empty()
                          ? tr("No setting differs.")
                          : tr("%n setting(s) differ:", "", static_cast<int>(differences.size())));
    m_differences->showDifferences(differences);
    m_differences->setVisible(!differences.empty());
}

void PolicySection::save()
{
    const RegisteredPolicy* const policy = chosen(m_read);
    const QString name = m_saveAs->path();
    if (policy == nullptr || name.isEmpty()) {
        m_saveField->setError(tr("Type or choose a name for the file."));
        m_saveAs->setFocus();
        return;
    }
    QFile file(name);
    const QByteArray bytes = QByteArray::fromStdString(policy->recorded.toml);
    if (!file.open(QIODevice::WriteOnly | QIODevice::NewOnly) || file.write(bytes) != bytes.size()
        || !file.flush()) {
        m_saveField->setError(file.exists() && file.error() == QFileDevice::OpenError
                                  ? tr("It cannot be written: there is a file of that name, or the "
                                       "folder is not yours. Choose another name.")
                                  : tr("It cannot be written there. Choose another place."));
        m_saveAs->setFocus();
        return;
    }
    m_saveField->setError({});
    emit says(tr("The text of %1 is saved as %2.").arg(nameOf(*policy), name),
              tr("Edit it, raise its revision or give it an id of its own, and open it under New "
                 "revision."));
}

void PolicySection::lookAtRights()
{
    m_form->lookAtRights();
}

} // namespace loadwarden::ui
