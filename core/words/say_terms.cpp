#include "core/words/say_terms.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct Terms {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(Parameter parameter);
    static QString of(Method method);
    static QString of(AirRemoval airRemoval);
    static QString of(Purpose purpose);
    static QString of(CycleKind kind);
    static QString of(AbortPhase phase);
    static QString of(PrintoutAnswer answer);
    static QString of(PrintoutField field);
    static QString of(Shown shown);
    static QString of(Implant implant);
    static QString of(Seen seen);
    static QString of(ProcessIndicator seen);
    static QString of(FoundToBe was);
    static QString of(PackageFault fault);
    static QString of(ReviewAnswer answer);
    static QString of(ServiceState state);
    static QString of(AlarmEffect effect);
    static QString of(PackageForm form);
    static QString of(Role role);
};

QString Terms::of(Parameter parameter)
{
    switch (parameter) {
    case Parameter::temperature: return tr("temperature");
    case Parameter::exposure: return tr("exposure time");
    case Parameter::pressure: return tr("pressure");
    case Parameter::drying: return tr("drying time");
    case Parameter::concentration: return tr("gas concentration");
    case Parameter::humidity: return tr("humidity");
    }
    return {};
}

QString Terms::of(Method method)
{
    switch (method) {
    case Method::unknown: return tr("method not stated");
    case Method::steam: return tr("steam");
    case Method::ethyleneOxide: return tr("ethylene oxide");
    case Method::hydrogenPeroxide: return tr("hydrogen peroxide");
    case Method::dryHeat: return tr("dry heat");
    }
    return {};
}

QString Terms::of(AirRemoval airRemoval)
{
    switch (airRemoval) {
    case AirRemoval::unknown: return tr("air removal not stated");
    case AirRemoval::gravity: return tr("gravity displacement");
    case AirRemoval::prevacuum: return tr("prevacuum");
    case AirRemoval::steamFlushPressurePulse: return tr("steam-flush pressure-pulse");
    }
    return {};
}

QString Terms::of(Purpose purpose)
{
    switch (purpose) {
    case Purpose::routine: return tr("routine load");
    case Purpose::immediateUse: return tr("immediate use");
    case Purpose::warmUp: return tr("warm-up cycle");
    case Purpose::bowieDick: return tr("Bowie-Dick test");
    case Purpose::leak: return tr("leak test");
    case Purpose::qualification: return tr("qualification");
    }
    return {};
}

QString Terms::of(CycleKind kind)
{
    switch (kind) {
    case CycleKind::load: return tr("load");
    case CycleKind::warmUp: return tr("warm-up cycle");
    case CycleKind::bowieDick: return tr("Bowie-Dick test");
    case CycleKind::leak: return tr("leak test");
    case CycleKind::qualification: return tr("qualification");
    }
    return {};
}

QString Terms::of(AbortPhase phase)
{
    switch (phase) {
    case AbortPhase::unknown: return tr("in an unknown phase");
    case AbortPhase::heating: return tr("while heating up");
    case AbortPhase::airRemoval: return tr("in air removal");
    case AbortPhase::exposure: return tr("in exposure");
    case AbortPhase::exhaust: return tr("in exhaust");
    case AbortPhase::drying: return tr("in drying");
    case AbortPhase::aeration: return tr("in aeration");
    }
    return {};
}

QString Terms::of(PrintoutAnswer answer)
{
    switch (answer) {
    case PrintoutAnswer::recordRight: return tr("the record is right");
    case PrintoutAnswer::wrongCycle: return tr("it is of another cycle");
    case PrintoutAnswer::wrongSterilizer: return tr("it is of another sterilizer");
    }
    return {};
}

QString Terms::of(PrintoutField field)
{
    switch (field) {
    case PrintoutField::program: return tr("program");
    case PrintoutField::sterilizer: return tr("sterilizer");
    case PrintoutField::counter: return tr("cycle counter");
    case PrintoutField::start: return tr("start");
    case PrintoutField::end: return tr("end");
    }
    return {};
}

QString Terms::of(Shown shown)
{
    switch (shown) {
    case Shown::notAsked: return tr("not asked");
    case Shown::met: return tr("shown");
    case Shown::open: return tr("cannot be told from the samples");
    case Shown::notMet: return tr("not met");
    }
    return {};
}

QString Terms::of(Implant implant)
{
    switch (implant) {
    case Implant::no: return tr("no implant");
    case Implant::yes: return tr("implant");
    case Implant::unknown: return tr("implant: not known");
    }
    return {};
}

QString Terms::of(Seen seen)
{
    switch (seen) {
    case Seen::frontInAcceptZone: return tr("front in the accept zone");
    case Seen::frontOnBoundary: return tr("front on the boundary");
    case Seen::frontShortOfBoundary: return tr("front short of the boundary");
    case Seen::endColourReached: return tr("end colour reached");
    case Seen::endColourPartly: return tr("end colour only in part");
    case Seen::unchanged: return tr("unchanged");
    case Seen::uniformComplete: return tr("uniform and complete");
    case Seen::uniformIncomplete: return tr("uniform, not complete");
    case Seen::notUniform: return tr("not uniform");
    case Seen::absent: return tr("absent");
    case Seen::growth: return tr("growth");
    case Seen::noGrowth: return tr("no growth");
    case Seen::unclear: return tr("unclear");
    }
    return {};
}

QString Terms::of(ProcessIndicator seen)
{
    switch (seen) {
    case ProcessIndicator::unknown: return tr("not looked at");
    case ProcessIndicator::changed: return tr("changed");
    case ProcessIndicator::unchanged: return tr("unchanged");
    }
    return {};
}

QString Terms::of(FoundToBe was)
{
    switch (was) {
    case FoundToBe::control: return tr("the control");
    case FoundToBe::otherLoad: return tr("of another load");
    }
    return {};
}

QString Terms::of(PackageFault fault)
{
    switch (fault) {
    case PackageFault::wet: return tr("wet");
    case PackageFault::torn: return tr("torn or with a hole");
    case PackageFault::unsealed: return tr("not sealed");
    case PackageFault::labelDiffers: return tr("label does not agree");
    }
    return {};
}

QString Terms::of(ReviewAnswer answer)
{
    switch (answer) {
    case ReviewAnswer::isolated: return tr("isolated");
    case ReviewAnswer::notIsolated: return tr("not isolated");
    }
    return {};
}

QString Terms::of(ServiceState state)
{
    switch (state) {
    case ServiceState::inService: return tr("in service");
    case ServiceState::outOfService: return tr("out of service");
    case ServiceState::qualification: return tr("in qualification");
    case ServiceState::held: return tr("on hold");
    }
    return {};
}

QString Terms::of(AlarmEffect effect)
{
    switch (effect) {
    case AlarmEffect::harmless: return tr("harmless");
    case AlarmEffect::exposureAffecting: return tr("affects exposure");
    }
    return {};
}

QString Terms::of(PackageForm form)
{
    switch (form) {
    case PackageForm::wrap: return tr("wrap");
    case PackageForm::pouch: return tr("pouch");
    case PackageForm::rigidContainer: return tr("rigid container");
    case PackageForm::openTray: return tr("open tray");
    }
    return {};
}

QString Terms::of(Role role)
{
    switch (role) {
    case Role::viewer: return tr("viewer");
    case Role::operating: return tr("operator");
    case Role::lead: return tr("lead");
    case Role::supervisor: return tr("supervisor");
    }
    return {};
}

} // namespace

#define LW_SAY(Term)                                                                               \
    std::string say(Term term)                                                                     \
    {                                                                                              \
        return Terms::of(term).toStdString();                                                      \
    }
LW_SAY(Parameter)
LW_SAY(Method)
LW_SAY(AirRemoval)
LW_SAY(Purpose)
LW_SAY(CycleKind)
LW_SAY(AbortPhase)
LW_SAY(PrintoutAnswer)
LW_SAY(PrintoutField)
LW_SAY(Shown)
LW_SAY(Implant)
LW_SAY(Seen)
LW_SAY(ProcessIndicator)
LW_SAY(FoundToBe)
LW_SAY(PackageFault)
LW_SAY(ReviewAnswer)
LW_SAY(ServiceState)
LW_SAY(AlarmEffect)
LW_SAY(PackageForm)
LW_SAY(Role)
#undef LW_SAY

} // namespace loadwarden
