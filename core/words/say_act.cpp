#include "core/words/say_act.h"

#include "core/acts/any_act.h"
#include "core/desk/rights.h"

#include <QCoreApplication>
#include <QString>

#include <array>

namespace loadwarden {
namespace {

struct KindTask {
    std::string_view kind;
    Task task;
};

constexpr std::array kinds = {
#define LW_ACT(Struct, kind, version, paper, subjects) KindTask{kind, Task::Struct},
#include "core/acts/acts.def"
#undef LW_ACT
};

class ActSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    [[nodiscard]] static QString kind(Task task)
    {
        switch (task) {
        case Task::JournalOpened: return tr("opening of the journal");
        case Task::FacilityRecorded: return tr("the facility");
        case Task::StaffRecorded: return tr("a person of the staff");
        case Task::StaffPinSet: return tr("a PIN");
        case Task::PolicyRecorded: return tr("a policy");
        case Task::SterilizerRecorded: return tr("a sterilizer");
        case Task::SpecificationRecorded: return tr("a cycle specification");
        case Task::ProductRecorded: return tr("an indicator product");
        case Task::ProductLotRecorded: return tr("a lot of a product");
        case Task::LotRecalled: return tr("recall of a lot");
        case Task::LotDescribed: return tr("what became of a lot");
        case Task::DirectionsRecorded: return tr("directions for reading a product");
        case Task::PackagingRecorded: return tr("a packaging");
        case Task::DeviceRecorded: return tr("a device");
        case Task::IncubatorRecorded: return tr("an incubator");
        case Task::SealKeyRecorded: return tr("a key for seals");
        case Task::ClockCompared: return tr("comparison of the sterilizer's clock");
        case Task::SterilizerTakenOut: return tr("sterilizer taken out of service");
        case Task::SterilizerReturned: return tr("sterilizer returned to service");
        case Task::AlarmClassed: return tr("classing of an alarm");
        case Task::IncubatorOutOfRange: return tr("incubator out of range");
        case Task::IncubatorInRange: return tr("incubator in range again");
        case Task::IncidentOpened: return tr("opening of an incident");
        case Task::IncidentFound: return tr("finding of an incident");
        case Task::IncidentClosed: return tr("closing of an incident");
        case Task::CycleReserved: return tr("reservation");
        case Task::CycleStarted: return tr("start");
        case Task::CycleEnded: return tr("end");
        case Task::CycleUnloaded: return tr("unloading");
        case Task::ItemAdded: return tr("item added");
        case Task::ItemMoved: return tr("item moved");
        case Task::ItemRemoved: return tr("item taken out");
        case Task::ItemConfirmed: return tr("confirmation of an item");
        case Task::PackageChecked: return tr("check of a package");
        case Task::PackageCheckLost: return tr("check of a package that cannot be made any more");
        case Task::PrintoutRecorded: return tr("printout");
        case Task::PrintoutAnswered: return tr("answer about the printout");
        case Task::PrintoutLost: return tr("loss of the printout");
        case Task::PhysicalRead: return tr("physical reading");
        case Task::PhysicalLost: return tr("loss of a physical reading");
        case Task::PhysicalVerified: return tr("verification of the physical record");
        case Task::TraceRead: return tr("trace of the cycle");
        case Task::AlarmRecorded: return tr("alarm");
        case Task::PcdPlaced: return tr("process challenge device placed");
        case Task::SheetPlaced: return tr("Bowie-Dick sheet placed");
        case Task::ChemicalRead: return tr("reading of a chemical indicator");
        case Task::ChemicalReread: return tr("second reading of a chemical indicator");
        case Task::ChemicalLost: return tr("loss of a chemical indicator");
        case Task::ChemicalUnsettled: return tr("doubt about a chemical indicator");
        case Task::ControlPrepared: return tr("control of biological indicators prepared");
        case Task::BiologicalActivated: return tr("activation of a biological indicator");
        case Task::BiologicalIncubated: return tr("start of incubation");
        case Task::ProcessIndicatorRead: return tr("reading of a vial's process indicator");
        case Task::BiologicalRead: return tr("reading of a biological indicator");
        case Task::BiologicalReread: return tr("second reading of a biological indicator");
        case Task::BiologicalLost: return tr("loss of a biological indicator");
        case Task::BiologicalUnsettled: return tr("doubt about a biological indicator");
        case Task::BiologicalVoided: return tr("biological indicator declared void");
        case Task::TestConditionsRecorded: return tr("conditions of a test");
        case Task::LeakRead: return tr("reading of a leak test");
        case Task::TestPhysicalJudged: return tr("judgement of a qualification's physical record");
        case Task::TestVoidExplained: return tr("reason of a void test");
        case Task::FailureRecorded: return tr("failure");
        case Task::FailureResolved: return tr("resolution of a failure");
        case Task::AerationStarted: return tr("start of aeration");
        case Task::AerationEnded: return tr("end of aeration");
        case Task::AerationInterrupted: return tr("interruption of aeration");
        case Task::ImmediateUseStated: return tr("statement of immediate use");
        case Task::ReviewRecorded: return tr("review of a finding");
        case Task::DispositionSigned: return tr("signed disposition");
        case Task::EmergencyReleased: return tr("emergency release");
        case Task::ItemDistributed: return tr("item handed out");
        case Task::ItemUsed: return tr("item used");
        case Task::ItemReturned: return tr("item returned");
        case Task::ItemReported: return tr("report of what was found on opening");
        case Task::QuestionLogged: return tr("a question and its answer");
        case Task::ReadingCheckTaken: return tr("a reading check");
        case Task::HistoryImported: return tr("imported history");
        case Task::EntryVoided: return tr("voiding of an entry");
        case Task::EntryAnnotated: return tr("note on an entry");
        // What leaves no act.
        case Task::look:
        case Task::backUp:
        case Task::sealJournal:
        case Task::setOwnPin:
        case Task::setOthersPin:
        case Task::releaseImplants:
        case Task::amend: break;
        }
        return {};
    }

    [[nodiscard]] static Told used(const UnreleasedUse& use)
    {
        const QString label = QString::fromStdString(use.label);
        return {tr("Item “%1” of %2 was used (case %3), and nobody had released it.")
                    .arg(label, QString::fromStdString(use.lot),
                         QString::fromStdString(use.caseReference))
                    .toStdString(),
                tr("Tell a supervisor and those who treat the patient at once; keep back what is "
                   "left of %1; read what its evidence still waits for; and find out how “%2” "
                   "left. The case reference finds the patient: write no name here.")
                    .arg(QString::fromStdString(use.lot), label)
                    .toStdString()};
    }
};

} // namespace

std::string sayKind(std::string_view kind)
{
    for (const KindTask& each : kinds) {
        if (each.kind == kind) {
            return ActSentences::kind(each.task).toStdString();
        }
    }
    return std::string(kind);
}

Told say(const UnreleasedUse& use)
{
    return ActSentences::used(use);
}

} // namespace loadwarden
