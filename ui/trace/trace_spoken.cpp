#include "ui/trace/trace_spoken.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_facts_list.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct Spoken {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TracePlot)
};

} // namespace

QString spokenTrace(const Trace& trace, const TraceEvaluation& evaluation,
                    const AskedOfTrace& asked, bool simulated)
{
    QStringList parts;
    if (simulated) {
        parts += Spoken::tr("Simulated: no sterilizer wrote this.");
    }
    parts += Spoken::tr("Temperatures and pressure over %1, %n sample(s).", nullptr,
                        static_cast<int>(trace.samples()))
                 .arg(text(sayLength(trace.seconds.empty() ? 0 : trace.seconds.back())));
    for (const TraceFactGroup& group : factsOf(trace, evaluation, asked)) {
        QStringList said;
        for (const TraceFact& fact : group.facts) {
            QString one = fact.what.isEmpty() ? fact.says
                                              : QStringLiteral("%1: %2").arg(fact.what, fact.says);
            if (fact.answer && *fact.answer != Shown::notAsked) {
                one += QStringLiteral(" (%1)").arg(text(say(*fact.answer)));
            }
            said += one;
        }
        parts += QStringLiteral("%1. %2.").arg(group.title, said.join(QStringLiteral("; ")));
    }
    return parts.join(QStringLiteral(" "));
}

} // namespace loadwarden::ui
