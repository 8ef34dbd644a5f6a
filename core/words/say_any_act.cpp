#include "core/words/say_any_act.h"

#include "core/words/say_terms.h"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

namespace loadwarden {
namespace {

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// A function for every kind of act: a kind without one does not compile.
class ActSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    struct Parts {
        QString what;
        QStringList values = {}; ///< empty ones are left out
    };

    ActSentences(const NameOf& nameOf, const HouseStyle& style) : m_nameOf(nameOf), m_style(style)
    {
    }

    Parts operator()(const NotUnderstood& act) const
    {
        return {tr("Not understood by this version"), {text(act.kind), text(act.body)}};
    }
    Parts operator()(const JournalOpened& act) const
    {
        return {tr("Journal begun"), {text(act.facility), text(act.timeZone)}};
    }
    Parts operator()(const FacilityRecorded& act) const
    {
        return {tr("Facility"),
                {text(act.name), text(act.timeZone),
                 act.atmosphereKPa ? tr("%1 kPa").arg(text(act.atmosphereKPa->typed)) : QString()}};
    }
    Parts operator()(const StaffRecorded& act) const
    {
        return {tr("Staff"), {text(act.name), text(say(act.role))}};
    }
    Parts operator()(const StaffPinSet&) const { return {tr("PIN set")}; }
    Parts operator()(const PolicyRecorded& act) const
    {
        return {tr("Policy"), {text(act.name), tr("revision %1").arg(act.revision)}};
    }
    Parts operator()(const SealKeyRecorded& act) const
    {
        return {tr("Key for seals"), {text(act.key), text(act.why)}};
    }
    Parts operator()(const HistoryImported& act) const
    {
        QStringList values{text(act.source), text(act.lot), text(act.sterilizer)};
        if (act.end) {
            values << tr("ended %1").arg(time(*act.end));
        }
        values << text(act.outcome);
        for (const std::string& label : act.labels) {
            values << text(label);
        }
        return {tr("Imported from an older record"), values << text(act.record)};
    }
    Parts operator()(const SterilizerRecorded& act) const
    {
        return {tr("Sterilizer"), {text(act.name), text(act.model)}};
    }
    Parts operator()(const SpecificationRecorded& act) const
    {
        return {tr("Cycle specification"),
                {text(act.specification.id), tr("revision %1").arg(act.specification.revision)}};
    }
    Parts operator()(const ProductRecorded& act) const { return {tr("Product"), {text(act.name)}}; }
    Parts operator()(const ProductLotRecorded& act) const
    {
        return {tr("Lot of a product"), {text(act.number), expiry(act.expires)}};
    }
    Parts operator()(const LotRecalled& act) const
    {
        return {tr("Lot recalled: nothing of it counts"), {text(act.why)}};
    }
    Parts operator()(const LotDescribed& act) const
    {
        return {tr("What became of a lot"),
                {day(tr("received %1"), act.received), day(tr("opened %1"), act.opened),
                 day(tr("used up %1"), act.usedUp),
                 act.certificate ? tr("certificate %1").arg(text(act.certificate->document))
                                 : QString()}};
    }
    Parts operator()(const DirectionsRecorded& act) const
    {
        const ReadingDirections& said = act.directions;
        return {tr("Directions for reading"),
                {text(said.text), text(said.document),
                 said.revision.empty() ? QString() : tr("revision %1").arg(text(said.revision)),
                 day(tr("look again by %1"), said.reviewBy)}};
    }
    Parts operator()(const PackagingRecorded& act) const
    {
        return {tr("Packaging"), {text(act.name)}};
    }
    Parts operator()(const DeviceRecorded& act) const
    {
        return {tr("Device"), {text(act.device.name)}};
    }
    Parts operator()(const IncubatorRecorded& act) const
    {
        return {tr("Incubator"), {text(act.name)}};
    }

    Parts operator()(const ClockCompared& act) const
    {
        return {tr("Clock compared"),
                {tr("sterilizer's minus facility's: %1 s").arg(act.seconds),
                 tr("from %1").arg(time(act.from))}};
    }
    Parts operator()(const SterilizerTakenOut& act) const
    {
        return {tr("Taken out of service"), {text(say(act.state)), text(act.why)}};
    }
    Parts operator()(const SterilizerReturned& act) const
    {
        return {tr("Returned to service"), {text(act.why)}};
    }
    Parts operator()(const AlarmClassed& act) const
    {
        return {tr("Alarm on the sterilizer's list"),
                {text(act.alarm.code), text(say(act.alarm.effect))}};
    }
    Parts operator()(const IncubatorOutOfRange&) const { return {tr("Incubator out of range")}; }
    Parts operator()(const IncubatorInRange&) const { return {tr("Incubator back in range")}; }
    Parts operator()(const IncidentOpened&) const { return {tr("Incident opened")}; }
    Parts operator()(const IncidentFound& act) const
    {
        return {tr("Incident: what the vial was"), {text(say(act.was)), text(act.why)}};
    }
    Parts operator()(const IncidentClosed& act) const
    {
        return {tr("Incident closed"), {text(act.why)}};
    }

    Parts operator()(const CycleReserved& act) const
    {
        return {tr("Reserved"),
                {text(act.lot), text(say(act.purpose)),
                 act.method == Method::unknown ? QString() : text(say(act.method)),
                 text(act.cycleType)}};
    }
    Parts operator()(const CycleStarted& act) const
    {
        return {tr("Cycle started"), {shown(act.shown, act.clock), counter(act.counter)}};
    }
    Parts operator()(const CycleEnded& act) const
    {
        const bool aborted = act.outcome == CycleOutcome::aborted;
        return {aborted ? tr("Cycle aborted") : tr("Cycle ended"),
                {time(act.shown), act.abortPhase ? text(say(*act.abortPhase)) : QString(),
                 counter(act.counter)}};
    }
    Parts operator()(const CycleUnloaded&) const { return {tr("Unloaded")}; }
    Parts operator()(const PrintoutRecorded& act) const
    {
        return {tr("Printout"),
                {act.program.empty() ? QString() : tr("program %1").arg(text(act.program)),
                 act.sterilizer.empty() ? QString() : tr("sterilizer %1").arg(text(act.sterilizer)),
                 counter(act.counter), act.start ? tr("start %1").arg(time(*act.start)) : QString(),
                 act.end ? tr("end %1").arg(time(*act.end)) : QString()}};
    }
    Parts operator()(const PrintoutAnswered& act) const
    {
        return {tr("Printout that differs"),
                {text(say(act.answer)), act.field ? text(say(*act.field)) : QString()}};
    }
    Parts operator()(const PrintoutLost&) const { return {tr("Printout cannot be obtained")}; }
    Parts operator()(const PhysicalRead& act) const
    {
        return {capital(text(say(act.parameter))), {quantity(act.value)}};
    }
    Parts operator()(const PhysicalLost& act) const
    {
        return {capital(text(say(act.parameter))), {tr("cannot be obtained")}};
    }
    Parts operator()(const PhysicalVerified&) const { return {tr("Physical record verified")}; }
    Parts operator()(const TraceRead& act) const
    {
        const TraceFindings& shows = act.findings;
        QStringList values{tr("file %1").arg(text(act.fileName)), counter(shows.counter),
                           act.start ? tr("start %1").arg(time(*act.start)) : QString()};
        if (!shows.specification.empty()) {
            values << tr("by cycle specification %1, revision %2")
                          .arg(text(shows.specification), shows.revision
                                                              ? QString::number(*shows.revision)
                                                              : tr("not stated"));
        }
        QStringList defects;
        for (const std::string& defect : shows.defects) {
            defects << text(defect);
        }
        if (!defects.empty()) {
            values << tr("defects: %1").arg(defects.join(QStringLiteral("; ")));
        }
        return {tr("Trace of the cycle"), values
                                              << answer(tr("exposure"), shows.exposure)
                                              << answer(tr("without a break"), shows.uninterrupted)
                                              << answer(tr("not below the band"), shows.notBelow)
                                              << answer(tr("not above the band"), shows.notAbove)
                                              << answer(tr("saturated steam"), shows.saturated)
                                              << answer(tr("drying"), shows.drying)};
    }
    Parts operator()(const AlarmRecorded& act) const { return {tr("Alarm"), {text(act.code)}}; }
    Parts operator()(const AerationStarted& act) const
    {
        return {tr("Aeration started"), {tr("%1 °C").arg(text(act.celsius.typed))}};
    }
    Parts operator()(const AerationEnded&) const { return {tr("Aeration ended")}; }
    Parts operator()(const AerationInterrupted&) const { return {tr("Aeration interrupted")}; }
    Parts operator()(const ImmediateUseStated& act) const
    {
        return {tr("Immediate use"),
                {text(act.why),
                 act.caseReference.empty() ? QString() : tr("case %1").arg(text(act.caseReference)),
                 !act.forStorage   ? QString()
                 : *act.forStorage ? tr("for storage")
                                   : tr("not for storage")}};
    }

    Parts operator()(const PcdPlaced& act) const
    {
        QStringList values{text(act.mark)};
        for (const auto* const list : {&act.indicators, &act.vials}) {
            for (const PlacedIndicator& indicator : *list) {
                values << placed(indicator);
            }
        }
        return {tr("Process challenge device"), values};
    }
    Parts operator()(const SheetPlaced& act) const
    {
        return {tr("Sheet"), {placed({{}, act.product, act.lot, {}})}};
    }
    Parts operator()(const ChemicalRead& act) const { return {tr("Read"), {text(say(act.seen))}}; }
    Parts operator()(const ChemicalReread& act) const
    {
        return {tr("Read by a second person"), {text(say(act.seen))}};
    }
    Parts operator()(const ChemicalLost&) const { return {tr("Cannot be obtained")}; }
    Parts operator()(const ChemicalUnsettled& act) const
    {
        return {tr("Cannot be settled"), {text(act.why)}};
    }
    Parts operator()(const ControlPrepared& act) const
    {
        return {tr("Control"), {placed({{}, act.product, act.lot, {}})}};
    }
    Parts operator()(const BiologicalActivated&) const { return {tr("Activated")}; }
    Parts operator()(const BiologicalIncubated&) const { return {tr("Put into the incubator")}; }
    Parts operator()(const ProcessIndicatorRead& act) const
    {
        return {tr("Process indicator"), {text(say(act.seen))}};
    }
    Parts operator()(const BiologicalRead& act) const
    {
        return {tr("Read"), {text(say(act.seen))}};
    }
    Parts operator()(const BiologicalReread& act) const
    {
        return {tr("Read by a second person"), {text(say(act.seen))}};
    }
    Parts operator()(const BiologicalLost&) const { return {tr("Cannot be obtained")}; }
    Parts operator()(const BiologicalUnsettled& act) const
    {
        return {tr("Cannot be settled"), {text(act.why)}};
    }
    Parts operator()(const BiologicalVoided& act) const { return {tr("Void"), {text(act.why)}}; }

    Parts operator()(const TestConditionsRecorded& act) const
    {
        return {
            tr("Conditions of the test"),
            {said(act.chamberEmpty, tr("chamber empty"), tr("chamber not empty")),
             said(act.dryingRun, tr("drying run"), tr("no drying")),
             act.exposureMinutes ? tr("%1 min").arg(text(act.exposureMinutes->typed)) : QString(),
             act.exposureCelsius ? tr("%1 °C").arg(text(act.exposureCelsius->typed)) : QString()}};
    }
    Parts operator()(const LeakRead& act) const
    {
        return {tr("Leak test"),
                {act.settledMinutes ? tr("settled %1 min").arg(text(act.settledMinutes->typed))
                                    : QString(),
                 act.minutes ? tr("measured %1 min").arg(text(act.minutes->typed)) : QString(),
                 act.riseMbar ? tr("rise %1 mbar").arg(text(act.riseMbar->typed)) : QString()}};
    }
    Parts operator()(const TestPhysicalJudged& act) const
    {
        return {tr("Physical record of the test"), {act.good ? tr("good") : tr("not good")}};
    }
    Parts operator()(const TestVoidExplained& act) const
    {
        return {tr("Why the test is void"), {text(act.why)}};
    }
    Parts operator()(const FailureRecorded& act) const
    {
        return {tr("Process failure"),
                {act.kind == FailureKind::physical
                     ? tr("physical")
                     : tr("indicator of a process challenge device rejected")}};
    }
    Parts operator()(const FailureResolved& act) const
    {
        return {tr("Cause and action"),
                {text(act.what), act.causeKnown ? tr("cause known") : tr("cause unknown"),
                 act.reach == Reach::thatLoad ? tr("reaches that load")
                                              : tr("reaches the sterilizer")}};
    }

    Parts operator()(const ItemAdded& act) const
    {
        QStringList values{text(act.label), text(say(act.implant))};
        if (!act.packaging.empty()) {
            values << text(m_nameOf(act.packaging));
        }
        if (act.packagingExpires) {
            values << tr("packaging use by %1").arg(text(formatDate(*act.packagingExpires)));
        }
        for (const std::string& device : act.devices) {
            values << text(m_nameOf(device));
        }
        if (act.external) {
            values << tr("outside: %1").arg(placed(*act.external));
        }
        for (const PlacedIndicator& internal : act.internals) {
            values << tr("inside: %1").arg(placed(internal));
        }
        if (act.internalVisible) {
            values << tr("inside indicator can be seen");
        }
        values << said(act.peroxide.cellulose, tr("holds cellulose"), tr("no cellulose"))
               << said(act.peroxide.liquidOrPowder, tr("holds liquid or powder"),
                       tr("no liquid or powder"))
               << said(act.peroxide.moist, tr("moist"), tr("dry when packed"));
        if (act.peroxide.lumen) {
            values << (*act.peroxide.lumen == Lumen::none     ? tr("no lumen")
                       : *act.peroxide.lumen == Lumen::listed ? tr("lumen in the maker's list")
                                                              : tr("lumen in no list"));
        }
        return {tr("Item"), values};
    }
    Parts operator()(const ItemMoved& act) const
    {
        return {tr("Moved to another load"),
                {tr("from %1 to %2").arg(text(m_nameOf(act.from)), text(m_nameOf(act.to))),
                 text(act.why)}};
    }
    Parts operator()(const ItemRemoved& act) const
    {
        return {tr("Taken out of the load"), {text(act.why)}};
    }
    Parts operator()(const ItemConfirmed&) const { return {tr("Confirmed to have been inside")}; }
    Parts operator()(const PackageChecked& act) const
    {
        return {tr("Package"),
                {said(act.cooled, tr("cooled"), tr("NOT cooled")),
                 said(act.dry, tr("dry"), tr("WET")),
                 said(act.intact, tr("intact"), tr("NOT intact")),
                 said(act.sealed, tr("sealed"), tr("NOT sealed")),
                 said(act.labelAgrees, tr("label agrees"), tr("label DIFFERS"))}};
    }
    Parts operator()(const PackageCheckLost&) const
    {
        return {tr("Package"), {tr("cannot be checked any more")}};
    }
    Parts operator()(const ItemDistributed& act) const
    {
        return {tr("Handed out"), {text(act.to)}};
    }
    Parts operator()(const ItemUsed& act) const
    {
        return {tr("Used"), {tr("case %1").arg(text(act.caseReference))}};
    }
    Parts operator()(const ItemReturned& act) const { return {tr("Came back"), {text(act.why)}}; }

    Parts operator()(const ItemReported& act) const
    {
        QStringList found;
        if (act.indicator) {
            found << tr("indicator inside: %1").arg(text(say(*act.indicator)));
        }
        for (const PackageFault fault : act.faults) {
            found << text(say(fault));
        }
        return {tr("Reported from %1").arg(text(act.place)),
                found << text(act.by) << text(act.note)};
    }
    Parts operator()(const QuestionLogged& act) const
    {
        return {tr("Question from %1").arg(text(act.place)),
                {text(act.by), text(act.asked), tr("answered: %1").arg(text(act.answer)),
                 act.label.empty() ? QString() : tr("about %1").arg(text(act.label)),
                 act.wasMisread ? tr("had been misread") : QString()}};
    }
    Parts operator()(const ReadingCheckTaken& act) const
    {
        return {tr("Reading check %1").arg(act.number),
                {tr("%n indicator(s) read", nullptr, static_cast<int>(act.drawings.size()))}};
    }

    Parts operator()(const ReviewRecorded& act) const
    {
        return {tr("Review"),
                {text(act.finding), text(act.subject), text(say(act.answer)), text(act.why)}};
    }
    Parts operator()(const DispositionSigned& act) const
    {
        return {tr("Signed as %1").arg(text(say(act.meaning))),
                {tr("decided then: %1").arg(text(say(act.verdict)))}};
    }
    Parts operator()(const EmergencyReleased& act) const
    {
        return {tr("Emergency release"),
                {tr("case %1").arg(text(act.caseReference)),
                 tr("demanded by %1").arg(text(act.demandedBy)), text(act.why),
                 tr("would have prevented it: %1").arg(text(act.wouldHavePrevented))}};
    }
    Parts operator()(const EntryVoided&) const { return {tr("Entry voided")}; }
    Parts operator()(const EntryAnnotated& act) const { return {tr("Note"), {text(act.note)}}; }

    [[nodiscard]] QString placed(const PlacedIndicator& indicator) const
    {
        QStringList words;
        words << (indicator.product.empty() ? tr("product not known")
                                            : text(m_nameOf(indicator.product)));
        words << (indicator.lot.empty() ? tr("lot not known")
                                        : tr("lot %1").arg(text(m_nameOf(indicator.lot))));
        if (!indicator.place.empty()) {
            words << text(indicator.place);
        }
        return words.join(QStringLiteral(", "));
    }

private:
    [[nodiscard]] QString time(const JournalTime& at) const
    {
        return text(sayTime(at.at, m_style));
    }
    [[nodiscard]] QString shown(const JournalTime& at, ClockSource clock) const
    {
        return clock == ClockSource::sterilizer ? tr("%1 by the sterilizer's clock").arg(time(at))
                                                : time(at);
    }
    static QString answer(const QString& what, Shown shown)
    {
        return shown == Shown::notAsked ? QString()
                                        : tr("%1: %2", "what a trace was asked, then its answer")
                                              .arg(what, text(say(shown)));
    }
    static QString counter(std::optional<std::int64_t> counter)
    {
        return counter ? tr("counter %1").arg(*counter) : QString();
    }
    static QString day(const QString& words, std::optional<Date> date)
    {
        return date ? words.arg(text(formatDate(*date))) : QString();
    }
    static QString expiry(std::optional<Date> date)
    {
        return date ? tr("use by %1").arg(text(formatDate(*date))) : QString();
    }
    static QString said(std::optional<bool> is, const QString& yes, const QString& no)
    {
        return !is ? QString() : *is ? yes : no;
    }
    /// The number as it was typed, with the unit that was typed.
    static QString quantity(const TypedQuantity& value)
    {
        const QString exact = text(sayQuantity(value.value));
        const qsizetype blank = exact.indexOf(u' ');
        return text(value.typed) + exact.mid(blank < 0 ? exact.size() : blank);
    }
    static QString capital(QString words)
    {
        if (!words.isEmpty()) {
            words[0] = words[0].toUpper();
        }
        return words;
    }

    const NameOf& m_nameOf;
    const HouseStyle& m_style;
};

} // namespace

ActSaid say(const AnyAct& act, const NameOf& nameOf, const HouseStyle& style)
{
    ActSentences::Parts parts = std::visit(ActSentences(nameOf, style), act);
    parts.values.removeAll(QString());
    return {parts.what.toStdString(), parts.values.join(QStringLiteral(", ")).toStdString()};
}

std::string say(const PlacedIndicator& indicator, const NameOf& nameOf)
{
    return ActSentences(nameOf, {}).placed(indicator).toStdString();
}

} // namespace loadwarden
