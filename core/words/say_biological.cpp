// The words of the rules "bi" and "routine-bi".
#include "core/words/sentences.h"

namespace loadwarden {

/// The only moment at which time changes a vial that is not incubating: its control is then
/// missing.
Words Sentences::controlAwaited(Words words) const
{
    if (hasTime()) {
        words.says = tr("%1 No control is recorded for it yet; from %2 on it counts as missing.")
                         .arg(words.says, time());
    }
    return words;
}

Words Sentences::biologicalPending(Words words) const
{
    words.says =
        is(Outcome::note)
            ? tr("%1 This load does not wait for it, but growth would fail it.").arg(words.says)
            : tr("%1 The load waits for it.").arg(words.says);
    return words;
}

Words Sentences::biPositive() const
{
    return {
        tr("Biological indicator (BI) %1 is positive: it grew, or stayed unclear. Growth counts "
           "whatever else was wrong with the test.")
            .arg(subject()),
        tr("Stop the sterilizer, tell the supervisor and infection control, and find the loads "
           "back to the last negative BI, as facility policy says. %1")
            .arg(reprocessLoad())};
}

Words Sentences::biPositiveElsewhere() const
{
    return {
        tr("Biological indicator (BI) %1 grew, and a supervisor found that it was the control or "
           "the vial of another load.")
            .arg(subject()),
        tr("Keep the load in quarantine. Check that finding against vials, labels and incubator "
           "record, judge whether this load is affected, and write why.")};
}

Words Sentences::biUnclear() const
{
    return biologicalPending(controlAwaited(
        {tr("Biological indicator (BI) %1 was read as unclear.").arg(subject()),
         tr("Have a second named person read it by the product's directions and record what they "
            "see. If it stays unclear, it counts as positive.")}));
}

Words Sentences::biNotRegistered() const
{
    return biologicalPending(
        withCause({tr("Biological indicator (BI) %1 cannot be judged yet.").arg(subject()),
                   tr("Record its product and lot with the expiry date from the package.")},
                  {}));
}

Words Sentences::biNotStarted() const
{
    return biologicalPending(controlAwaited(
        {tr("Incubation of biological indicator (BI) %1 has not been started.").arg(subject()),
         tr("Prepare it as its instructions for use say, start it in the incubator beside a "
            "control "
            "of the same lot, and record both starts.")}));
}

Words Sentences::biIncubating() const
{
    if (!hasTime()) {
        return biologicalPending(
            {tr("Biological indicator (BI) %1 is incubating.").arg(subject()),
             tr("Leave it in the incubator for the time that its instructions for use state. Then "
                "read it and its control, and record both.")});
    }
    // The moment is that of the readout or, if it comes first, the one by which a control must be
    // in.
    return biologicalPending(
        {tr("Biological indicator (BI) %1 is incubating. The next step is due at %2: its reading, "
            "or before that its control.")
             .arg(subject(), time()),
         tr("Leave it in the incubator and see that a control of the same lot is beside it. Look "
            "again at %1; read the BI only after the full time that its instructions for use "
            "state, "
            "and record it with the control.")
             .arg(time())});
}

Words Sentences::biNotCounted() const
{
    return biologicalPending(controlAwaited(withCause(
        {tr("Biological indicator (BI) %1 was read as no growth, but that reading does not count.")
             .arg(subject()),
         tr("Read it and its control by the product's directions, and record both under your own "
            "name.")},
        {})));
}

Words Sentences::biDue() const
{
    return biologicalPending(controlAwaited(
        {tr("Biological indicator (BI) %1 is due to be read.").arg(subject()),
         tr("Read it and its control now by the product's directions, and record both.")}));
}

Words Sentences::biProcessIndicator() const
{
    return biologicalPending(controlAwaited(
        {tr("It is not recorded whether the process indicator on biological indicator (BI) %1 "
            "changed.")
             .arg(subject()),
         tr("Look at the process indicator on the vial and record what you see. One that did not "
            "change makes the test void.")}));
}

Words Sentences::biControl() const
{
    return biologicalPending(controlAwaited(
        {tr("Biological indicator (BI) %1 shows no growth, but no control has grown yet.")
             .arg(subject()),
         tr("Read the unexposed control of the same lot in the same incubator when it is due, and "
            "record it. It must grow, or the test is void. Growth counts from 10 min "
            "after its incubation began: check both times.")}));
}

Words Sentences::biVoid() const
{
    if (is(Outcome::review) || f_.reviewed) {
        return withCause(
            {tr("Biological indicator (BI) %1 is void and shows nothing, whatever another one of "
                "this "
                "load shows.")
                 .arg(subject()),
             tr("Find out why, judge whether the load was sterilized all the same, and write why. "
                "In doubt reprocess every item of the load.")},
            {});
    }
    if (is(Outcome::note)) {
        return withCause(
            {tr("Biological indicator (BI) %1, which this load does not need, is void and shows "
                "nothing.")
                 .arg(subject()),
             {}},
            {});
    }
    return withCause(
        {tr("This load needs a negative biological indicator (BI), and %1 is void and shows "
            "nothing.")
             .arg(subject()),
         tr("Reprocess every item of the load, with a new BI and a control of the same lot.")},
        tr("If that does not make it count, reprocess every item of the load, with a new BI and a "
           "control of the same lot."));
}

Words Sentences::biLost() const
{
    if (is(Outcome::review) || f_.reviewed) {
        return {tr("Biological indicator (BI) %1 cannot be obtained, whatever another one of this "
                   "load shows.")
                    .arg(subject()),
                tr("Find out how it was lost, judge whether the load was sterilized all the same, "
                   "and write why. In doubt reprocess every item of the load.")};
    }
    if (is(Outcome::note)) {
        return {tr("Biological indicator (BI) %1 cannot be obtained; this load does not need it.")
                    .arg(subject()),
                {}};
    }
    return {tr("Biological indicator (BI) %1 cannot be obtained, and this load needs one that is "
               "negative.")
                .arg(subject()),
            tr("Reprocess every item of the load, with a new BI and a control of the same lot.")};
}

Words Sentences::biMissing() const
{
    return {
        tr("This load needs a biological indicator (BI), and none is recorded."),
        tr("Record the BI that was in the load. If there was none, reprocess the load with one, "
           "and incubate a control of the same lot.")};
}

Words Sentences::routinePending() const
{
    Words words{tr("The routine biological indicator (BI) of this sterilizer and cycle type is not "
                   "final yet."),
                tr("Read it and its control when they are due, and record both. If both were read: "
                   "check its product, lot, incubator, times and reader, by which a reading may "
                   "not count.")};
    words.says = is(Outcome::note) ? tr("%1 This load does not wait for it.").arg(words.says)
                                   : tr("%1 The load waits for it.").arg(words.says);
    return words;
}

Words Sentences::routineNone() const
{
    Words words{
        tr("The routine biological indicator (BI) of this sterilizer and cycle type has not "
           "been negative in the time in which it is due, and none is under way."),
        tr("If one was run, record it; if it is recorded, check cycle type, lot, expiry date, "
           "times "
           "and control, by which it may not count, and have a lead look at a control that did not "
           "grow. If none was run, run one in the next load, at the place that is hardest to "
           "sterilize.")};
    words.says = is(Outcome::note) ? tr("%1 This load does not wait for it.").arg(words.says)
                                   : tr("%1 The load waits for it.").arg(words.says);
    return words;
}

} // namespace loadwarden
