#include "ui/load/new_load_form.h"

#include "core/desk/journal_entries.h"
#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "core/words/say_terms.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/shell/session.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

/// Writes beside the reservation what the load is for.
OrRefusal<Appended> annotate(Office& office, const SignedIn& who, const std::string& cycle,
                             const std::string& note, const std::string& reason)
{
    std::vector<Entry> entries;
    {
        ReadSnapshot snapshot(office.connection());
        entries = entriesAbout(snapshot, cycle);
    }
    return Recorder(office).record(who, {.act = EntryAnnotated{note},
                                         .subjects = entries.front().subjects,
                                         .reason = reason,
                                         .supersedes = entries.front().seq});
}

} // namespace

NewLoadForm::NewLoadForm(Workstation& workstation, QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_sterilizer(new QComboBox),
      m_sterilizerField(new Field(tr("Sterilizer"), m_sterilizer)),
      m_specification(new QComboBox),
      m_allPrograms(
          makeButton(tr("Offer the programs of other sterilizers, too"), ButtonKind::quiet)),
      m_purpose(new QComboBox),
      m_note(makeMuted({}))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::page, space::page, space::page, space::page);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("A new load or test"), Type::title));
    column->addWidget(makeMuted(
        tr("It gets the next lot control number of its sterilizer and day. Write it on every "
           "package before the load goes in: the number is never given again, also not when the "
           "cycle is aborted or never runs.")));
    column->addSpacing(space::medium);
    auto* const program =
        new Field(tr("Program"), m_specification, tr("by which its record is judged"));
    auto* const purpose = new Field(tr("Purpose"), m_purpose);
    for (QWidget* const field : {static_cast<QWidget*>(m_sterilizerField),
                                 static_cast<QWidget*>(program), static_cast<QWidget*>(purpose)}) {
        field->setMaximumWidth(520);
        column->addWidget(field);
        if (field == program) {
            column->addWidget(m_allPrograms, 0, Qt::AlignLeft);
        }
    }
    m_allPrograms->hide();
    connect(m_allPrograms, &QPushButton::clicked, this, [this] {
        m_offersAll = true;
        fillPrograms(m_specification->currentData().toString());
        m_specification->setFocus();
    });
    for (const Purpose each : {Purpose::routine, Purpose::immediateUse, Purpose::warmUp,
                               Purpose::bowieDick, Purpose::leak, Purpose::qualification}) {
        m_purpose->addItem(capital(text(say(each))), static_cast<int>(each));
    }
    column->addWidget(m_note);
    auto* const buttons = new QHBoxLayout;
    auto* const reserve = makeButton(tr("Reserve its number"), ButtonKind::main);
    auto* const leave = makeButton(tr("Do not reserve"));
    buttons->addWidget(reserve);
    buttons->addWidget(leave);
    buttons->addStretch();
    column->addLayout(buttons);
    column->addStretch();
    connect(m_sterilizer, &QComboBox::currentIndexChanged, this, &NewLoadForm::sterilizerChosen);
    connect(m_specification, &QComboBox::currentIndexChanged, this,
            &NewLoadForm::specificationChosen);
    connect(reserve, &QPushButton::clicked, this, &NewLoadForm::reserve);
    connect(leave, &QPushButton::clicked, this, &NewLoadForm::left);
}

void NewLoadForm::ask(const QString& sterilizer, const QString& specification, const QString& note)
{
    m_wantedSterilizer = sterilizer;
    m_wantedSpecification = specification;
    m_noteText = note;
    m_wantedPurpose.reset();
    m_offersAll = false;
    m_note->setText(note);
    m_note->setVisible(!note.isEmpty());
    m_sterilizerField->setError({});
    m_workstation.desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            Choices choices = choicesOf(snapshot);
            lookForMethods(snapshot, choices);
            return choices;
        },
        [this](const Choices& choices) { fill(choices); });
}

void NewLoadForm::focusFirst()
{
    m_sterilizer->setFocus(Qt::OtherFocusReason);
}

void NewLoadForm::fill(const Choices& choices)
{
    const auto keep = [](QComboBox* combo, const QString& wanted) {
        return wanted.isEmpty() ? combo->currentData().toString() : wanted;
    };
    const QString sterilizer = m_wantedSterilizer;
    const QString specification = keep(m_specification, m_wantedSpecification);
    m_choices = choices;
    m_sterilizer->clear();
    if (choices.sterilizers.size() != 1) {
        m_sterilizer->addItem(tr("choose the sterilizer"), QString()); // none by accident
    }
    for (const SterilizerChoice& each : choices.sterilizers) {
        m_sterilizer->addItem(text(each.name), text(each.id));
    }
    m_sterilizer->setCurrentIndex(std::max(0, m_sterilizer->findData(sterilizer)));
    fillPrograms(specification);
    if (m_wantedPurpose) {
        const auto first =
            std::ranges::find_if(choices.specifications, [this](const SpecificationChoice& each) {
                return each.specification.purpose == *m_wantedPurpose
                       && m_specification->findData(text(each.id)) >= 0;
            });
        m_specification->setCurrentIndex(first == choices.specifications.end()
                                             ? m_specification->count() - 1
                                             : m_specification->findData(text(first->id)));
        m_purpose->setCurrentIndex(m_purpose->findData(static_cast<int>(*m_wantedPurpose)));
    }
    if (choices.sterilizers.empty()) {
        m_sterilizerField->setError(tr("No sterilizer is registered yet: Settings, Sterilizers."));
    }
}

const SterilizerChoice* NewLoadForm::chosenSterilizer() const
{
    const auto found = std::ranges::find(m_choices.sterilizers,
                                         m_sterilizer->currentData().toString().toStdString(),
                                         &SterilizerChoice::id);
    return found == m_choices.sterilizers.end() ? nullptr : &*found;
}

void NewLoadForm::fillPrograms(const QString& wanted)
{
    const SterilizerChoice* const sterilizer = chosenSterilizer();
    bool leavesOut = false;
    m_specification->clear();
    for (const SpecificationChoice& each : m_choices.specifications) {
        const CycleSpecification& spec = each.specification;
        if (!m_offersAll && sterilizer != nullptr && !sterilizer->mayRun(spec.method)) {
            leavesOut = true;
            continue;
        }
        const QString name = text(spec.program.empty() ? spec.id : spec.program);
        m_specification->addItem(
            tr("%1, %2", "a program, what it is for").arg(name, text(say(spec.purpose))),
            text(each.id));
    }
    m_specification->addItem(tr("none registered: its record cannot be judged"), QString());
    m_specification->setCurrentIndex(
        wanted.isEmpty() ? 0 : std::max(0, m_specification->findData(wanted)));
    m_allPrograms->setVisible(leavesOut);
}

void NewLoadForm::sterilizerChosen()
{
    m_sterilizerField->setError({});
    m_offersAll = false;
    fillPrograms(m_specification->currentData().toString());
    const SterilizerChoice* const found = chosenSterilizer();
    if (found == nullptr || found->service.state == ServiceState::inService) {
        return;
    }
    const QString why = found->service.why.empty() ? tr("it was never returned to service")
                                                   : text(found->service.why);
    m_sterilizerField->setError(
        tr("%1: %2. A load in it is not released; tests are run in it.", "a state, why")
            .arg(capital(text(say(found->service.state))), why));
}

void NewLoadForm::specificationChosen()
{
    const auto found = std::ranges::find(m_choices.specifications,
                                         m_specification->currentData().toString().toStdString(),
                                         &SpecificationChoice::id);
    if (found != m_choices.specifications.end()) {
        m_purpose->setCurrentIndex(
            m_purpose->findData(static_cast<int>(found->specification.purpose)));
    }
}

void NewLoadForm::reserve()
{
    const std::string sterilizer = m_sterilizer->currentData().toString().toStdString();
    if (sterilizer.empty()) {
        m_sterilizerField->setError(tr("Choose the sterilizer in which it is to run."));
        m_sterilizer->setFocus();
        return;
    }
    const CycleWanted wanted{.sterilizer = sterilizer,
                             .specification =
                                 m_specification->currentData().toString().toStdString(),
                             .purpose = static_cast<Purpose>(m_purpose->currentData().toInt()),
                             .cycleType = {}};
    if (std::exchange(m_isReserving, true)) {
        return;
    }
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), wanted, note = m_noteText.toStdString(),
         reason = tr("what it is for").toStdString()](Office& office) -> OrRefusal<ReservedCycle> {
            auto reserved = reserveCycle(office, who, wanted);
            if (const auto* const done = std::get_if<ReservedCycle>(&reserved);
                done != nullptr && !note.empty()) {
                auto noted = annotate(office, who, done->cycle, note, reason);
                if (auto* const refusal = std::get_if<Refusal>(&noted)) {
                    return std::move(*refusal);
                }
            }
            return reserved;
        },
        [this](const OrRefusal<ReservedCycle>& answer) {
            m_isReserving = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told told = say(*refusal, m_workstation.desk.style());
                m_sterilizerField->setError(text(told.says) + u' ' + text(told.next));
                return;
            }
            const auto& done = std::get<ReservedCycle>(answer);
            emit reserved(text(done.cycle), text(done.lot));
        },
        [this] { m_isReserving = false; });
}

} // namespace loadwarden::ui
