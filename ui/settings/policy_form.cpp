#include "ui/settings/policy_form.h"

#include "core/words/say_policy.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"
#include "ui/settings/policy_table.h"

#include <QFile>
#include <QFileInfo>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr qint64 mostBytes = 65'536; ///< that an act can hold

} // namespace

PolicyForm::PolicyForm(const Workstation& workstation)
    : RegisterForm(workstation, Task::PolicyRecorded, tr("A supervisor signs the policy.")),
      m_file(nullptr),
      m_fileField(nullptr),
      m_result(new QWidget),
      m_says(makeLabel({}, Type::strong)),
      m_lines(new QVBoxLayout),
      m_table(new PolicyTable)
{
    auto* const edit = new FileEdit(FileEdit::What::openFile, tr("Choose the file of a policy"));
    m_file = edit->line();
    beginGroup(tr("A file as a new revision"),
               tr("Save the text of the present policy, edit the file, give it its own id or its "
                  "next revision, and open it here. It is checked first; then you see what it "
                  "changes; then you sign."));
    m_fileField = addField("", tr("File"), edit);
    spanLast();
    auto* const column = new QVBoxLayout(m_result);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(m_says);
    column->addLayout(m_lines);
    column->addWidget(m_table);
    addWide(m_result);
    addButtons(tr("Check the file"));
    connect(m_file, &QLineEdit::textChanged, this, &PolicyForm::forget);
    connect(this, &RegisterForm::recorded, this, [this] { putBack(); });
    setFocusProxy(m_file);
    putBack();
}

void PolicyForm::show(const RegistersNow& registers)
{
    const bool isOther =
        m_registers == nullptr || m_registers->policies.size() != registers->policies.size();
    m_registers = registers;
    if (isOther && m_exam) {
        forget(); // what it changes may be something else now
    }
}

void PolicyForm::putBack()
{
    m_file->clear();
    forget();
    filled();
}

void PolicyForm::forget()
{
    m_exam.reset();
    m_result->hide();
    setButton(tr("Check the file"));
}

bool PolicyForm::check()
{
    const QString name = m_file->text().trimmed();
    if (!needs(m_fileField, tr("Type or choose the file."))) {
        return false;
    }
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly)) {
        setError(m_fileField, tr("This file cannot be read. Check its name."));
        return false;
    }
    const QByteArray bytes = file.read(mostBytes + 1);
    if (bytes.size() > mostBytes) {
        setError(m_fileField, tr("This file is too long for a policy: more than 64 KiB."));
        return false;
    }
    auto exam = examinePolicy({bytes.constData(), static_cast<std::size_t>(bytes.size())},
                              QFileInfo(name).fileName().toStdString(), m_registers->policies);
    if (const auto* const errors = std::get_if<std::vector<PolicyError>>(&exam)) {
        showErrors(*errors);
        return false;
    }
    m_exam = std::get<PolicyExam>(std::move(exam));
    if (m_exam->decidesNow) {
        m_exam.reset();
        setError(m_fileField, tr("This is the policy that decides now, byte by byte."));
        return false;
    }
    if (m_exam->isTaken) {
        const auto revision = m_exam->policy.revision;
        m_exam.reset();
        setError(m_fileField, tr("The journal has a revision %1 of this id with another text. "
                                 "Raise \"revision\" in the file.")
                                  .arg(revision));
        return false;
    }
    showExam();
    return true;
}

void PolicyForm::showErrors(const std::vector<PolicyError>& errors)
{
    clearLayout(m_lines);
    m_table->show({});
    setError(m_fileField, tr("Nothing was recorded: %n error(s) in the file.", "",
                             static_cast<int>(errors.size())));
    m_says->setText(tr("Mend these in the file, then check it again:"));
    for (const PolicyError& error : errors) {
        auto* const line = makeLabel(
            error.field.empty()
                ? tr("Line %1: %2").arg(QString::number(error.line), text(error.message))
                : tr("Line %1, %2: %3")
                      .arg(QString::number(error.line), text(error.field), text(error.message)));
        line->setProperty("tone", "bad");
        m_lines->addWidget(line);
    }
    m_result->show();
}

void PolicyForm::showExam()
{
    clearLayout(m_lines);
    const auto& differences = m_exam->differences;
    m_says->setText(differences.empty()
                        ? tr("No setting changes: only title, sources or notes do.")
                        : tr("%n setting(s) change:", "", static_cast<int>(differences.size())));
    m_table->showDifferences(differences);
    m_table->setVisible(!differences.empty());
    if (!m_exam->milder.empty()) {
        auto* const milder = makeLabel(tr("%n value(s) are milder than the default policy's: loads "
                                          "are held less often by them.",
                                          "", static_cast<int>(m_exam->milder.size())));
        milder->setProperty("tone", "waiting");
        m_lines->addWidget(milder);
    }
    m_result->show();
    setButton(tr("Sign revision %1 of %2")
                  .arg(QString::number(m_exam->policy.revision), text(m_exam->policy.id)));
}

std::optional<Wanted> PolicyForm::wanted()
{
    if (!m_exam) {
        (void)check(); // looked at first, signed by the next key
        return std::nullopt;
    }
    RandomIdSource ids;
    QStringList seen{
        tr("%n setting(s) that change", "", static_cast<int>(m_exam->differences.size()))};
    constexpr std::size_t mostLines = 8;
    for (std::size_t i = 0; i < std::min(m_exam->differences.size(), mostLines); ++i) {
        const PolicyDifference& each = m_exam->differences[i];
        seen << tr("%1: %2 instead of %3")
                    .arg(text(sayPolicySetting(each.section, each.name)),
                         text(sayPolicyValue(each.section, each.name, each.after)),
                         text(sayPolicyValue(each.section, each.name, each.before)));
    }
    if (m_exam->differences.size() > mostLines) {
        seen << tr("and the others on the page behind");
    }
    const QString name = text(m_exam->policy.id);
    const QString revision = QString::number(m_exam->policy.revision);
    return Wanted{.acts = {revisionOf(*m_exam, m_registers->policies, ids)},
                  .what = tr("Decide by policy %1, revision %2, from now on").arg(name, revision),
                  .seen = seen,
                  .done = tr("Policy %1, revision %2, decides loads that start from now on.")
                              .arg(name, revision)};
}

} // namespace loadwarden::ui
