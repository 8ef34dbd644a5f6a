#include "ui/records/journal_work.h"

#include "core/desk/journal_copy.h"
#include "ui/look/text.h"
#include "ui/records/file_ask.h"
#include "ui/records/records_files.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLocale>
#include <QProgressBar>
#include <QVBoxLayout>

namespace loadwarden::ui {

JournalWork::JournalWork(Workstation& workstation, QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_second(workstation.desk),
      m_ask(new FileAsk(tr("Copy every entry, a line of &JSON each, to this file"), tr("&Write it"),
                        tr("JSON Lines (*.jsonl)"))),
      m_running(new QWidget),
      m_what(makeLabel({}, Type::strong, false)),
      m_bar(new QProgressBar),
      m_cancel(makeButton(tr("Stop"))),
      m_told(new QWidget),
      m_answer(makeLabel({}, Type::strong)),
      m_lines(makeLabel({})),
      m_away(makeButton(tr("Put away"), ButtonKind::quiet))
{
    setObjectName(QStringLiteral("banner"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::small, space::page, space::small);
    column->addWidget(m_ask);
    auto* const running = new QHBoxLayout(m_running);
    running->setContentsMargins(0, 0, 0, 0);
    running->setSpacing(space::medium);
    running->addWidget(m_what);
    m_bar->setRange(0, 1'000);
    m_bar->setTextVisible(false);
    running->addWidget(m_bar, 1);
    running->addWidget(m_cancel);
    column->addWidget(m_running);
    auto* const told = new QHBoxLayout(m_told);
    told->setContentsMargins(0, 0, 0, 0);
    told->setSpacing(space::medium);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::hair);
    words->addWidget(m_answer);
    words->addWidget(m_lines);
    told->addLayout(words, 1);
    told->addWidget(m_away, 0, Qt::AlignTop);
    column->addWidget(m_told);
    connect(m_ask, &FileAsk::chosen, this, &JournalWork::exportTo);
    connect(m_ask, &FileAsk::left, this, &QWidget::hide);
    connect(m_cancel, &QPushButton::clicked, this, [this] {
        m_second.cancel();
        m_cancel->setEnabled(false);
        m_what->setText(tr("Stopping"));
    });
    connect(m_away, &QPushButton::clicked, this, &QWidget::hide);
    connect(&m_second, &SecondDesk::progress, m_bar, &QProgressBar::setValue);
    hide();
}

void JournalWork::showOnly(bool asks, bool runs, bool tells)
{
    m_ask->setVisible(asks);
    m_running->setVisible(runs);
    m_told->setVisible(tells);
    if (!tells) {
        setStyleProperty(this, "tone", "neutral");
    }
    show();
}

void JournalWork::begin(const QString& what)
{
    m_what->setText(what);
    m_bar->setAccessibleName(what);
    m_bar->setValue(0);
    m_cancel->setEnabled(true);
    m_cancel->setAccessibleName(tr("Stop: %1").arg(what));
    showOnly(false, true, false);
    m_cancel->setFocus();
    emit busy(true);
}

void JournalWork::verify()
{
    if (m_second.isBusy()) {
        return;
    }
    begin(tr("The journal is being verified"));
    m_second.run(
        [](Office& office, Progress& progress) {
            Verified verified{.report = verifyHere(office, {}, false, progress), .keys = {}};
            if (verified.report.sound()) {
                verified.keys = sealedBy(office, verified.report);
            }
            return verified;
        },
        [this](const std::optional<Verified>& verified) {
            if (!verified) {
                told("waiting", tr("It was stopped: the journal is not verified."),
                     {tr("Verify it again when there is time; nothing else has to wait for it.")});
                return;
            }
            const VerifiedText said = verifiedText(*verified, m_workstation.desk.style());
            told(said.isGood                       ? "good"
                 : verified->report.faultCount > 0 ? "bad"
                                                   : "waiting",
                 said.answer, said.lines);
        },
        [this](const Trouble& trouble) { failed(trouble); });
}

void JournalWork::exportLines()
{
    if (m_second.isBusy()) {
        return;
    }
    showOnly(true, false, false);
    m_ask->ask(suggestedFile(m_workstation.desk, {}, QStringLiteral("jsonl")));
}

void JournalWork::exportTo(const QString& file, bool replaces)
{
    if (m_second.isBusy()) {
        return;
    }
    if (isOfJournal(m_workstation.desk.file(), m_workstation.desk.place(), file.toStdString())) {
        m_ask->setError(tr("That file belongs to the journal itself. Type another name."));
        return;
    }
    begin(tr("The journal is being copied"));
    m_second.run(
        [target = file.toStdString(), ifThere = replaces ? IfThere::replace : IfThere::refuse](
            Office& office, Progress& progress) {
            return copyLines(office, target, ifThere, progress);
        },
        [this, file](const std::optional<JournalCopy>& copy) {
            if (!copy || copy->isCancelled) {
                told("waiting", tr("It was stopped: no file was written."), {});
                return;
            }
            told("good",
                 tr("%1 entries are in %2.")
                     .arg(QLocale().toString(static_cast<qlonglong>(copy->entries)), file),
                 {tr("It names people and loads: keep it where only those who may see them can. It "
                     "is a copy to read, not a backup.")});
        },
        [this](const Trouble& trouble) { failed(trouble); });
}

void JournalWork::told(const char* tone, const QString& answer, const QStringList& lines)
{
    setStyleProperty(this, "tone", tone);
    m_answer->setText(answer);
    m_lines->setText(lines.join(u'\n'));
    m_lines->setVisible(!lines.isEmpty());
    setAccessibleName(answer);
    const bool hadKeyboard = m_cancel->hasFocus();
    showOnly(false, false, true);
    if (hadKeyboard) {
        m_away->setFocus();
    }
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
    emit busy(false);
}

void JournalWork::failed(const Trouble& trouble)
{
    told("bad", trouble.says, {trouble.next});
}

} // namespace loadwarden::ui
