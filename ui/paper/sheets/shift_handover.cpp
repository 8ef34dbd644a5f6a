#include "ui/paper/sheets/shift_handover.h"

#include "core/words/say_any_act.h"
#include "core/words/say_terms.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/sheets/fact_line.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/paper/sheets/reasons.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {
namespace {

class Making {
public:
    Making(const Handover& handover, const House& house)
        : m_handover(handover),
          m_style(house.style),
          m_sheet(frameOf(house, tr("Shift handover"), timeText(handover.now, house.style),
                          handover.now, handover.head),
                  house.size)
    {
    }

    Pages make() &&
    {
        vials();
        held();
        sterilizers();
        running();
        promises();
        m_sheet.section(tr("Handed over"));
        m_sheet.writeLines({tr("By"), tr("To"), tr("Time"), tr("Time")}, 2, millimetres(10));
        return std::move(m_sheet).pages();
    }

private:
    void vials()
    {
        m_sheet.section(tr("Biological indicators not read yet"));
        if (m_handover.vials.empty()) {
            m_sheet.paragraph(plain(tr("None.")));
            return;
        }
        Table table{.columns = {{tr("Load"), 20},
                                {tr("Product"), 22},
                                {tr("Incubator"), 16},
                                {tr("Since"), 20},
                                {tr("May be read from"), 22}},
                    .rows = {}};
        for (const AwaitedVial& awaited : m_handover.vials) {
            const Vial& vial = awaited.vial;
            Runs load = strong(text(awaited.lot));
            if (awaited.hasImplant) {
                load.push_back({u'\n' + tr("holds an implant"), Face::plain});
            }
            const bool isDue = awaited.dueAt && *awaited.dueAt <= m_handover.now;
            table.rows.push_back(
                {.cells = {
                     load, plain(productText(vial)),
                     plain(vial.incubator.empty() ? tr("in none yet") : text(name(vial.incubator))),
                     plain(vial.incubationStart ? timeText(*vial.incubationStart, m_style)
                                                : QString()),
                     strong(!awaited.dueAt ? tr("not known")
                            : isDue        ? tr("%1, now").arg(timeText(*awaited.dueAt, m_style))
                                           : timeText(*awaited.dueAt, m_style))}});
        }
        m_sheet.table(table);
    }

    [[nodiscard]] std::string name(const std::string& id) const { return m_handover.names.of(id); }

    [[nodiscard]] QString productText(const Vial& vial) const
    {
        return text(say(PlacedIndicator{{}, vial.product, vial.lot, {}},
                        [this](std::string_view id) { return m_handover.names.of(id); }));
    }

    void held()
    {
        m_sheet.section(tr("Loads that are not finished, and why"));
        if (m_handover.held.empty()) {
            m_sheet.paragraph(plain(tr("None.")));
        } else {
            Table table{.columns = {{tr("Load"), 20}, {tr("Decided, signed"), 20}, {tr("Why"), 60}},
                        .rows = {}};
            for (const CycleView& view : m_handover.held) {
                table.rows.push_back({.cells = {loadCell(view), stateCell(view), whyCell(view)}});
            }
            m_sheet.table(table);
        }
        if (m_handover.changed.empty()) {
            return;
        }
        QStringList lots;
        for (const std::string& lot : m_handover.changed) {
            lots << text(lot);
        }
        m_sheet.space(points(4));
        m_sheet.paragraph(
            {{tr("Signed, and something was recorded since that makes none of them worse:")
                  + QStringLiteral(" "),
              Face::strong},
             {lots.join(QStringLiteral(", ")), Face::plain}});
    }

    [[nodiscard]] Runs loadCell(const CycleView& view) const
    {
        QStringList below{text(name(view.folded.sterilizer))};
        if (std::ranges::any_of(view.folded.record.load.items,
                                [](const Item& item) { return item.implant != Implant::no; })) {
            below << tr("holds an implant");
        }
        return {{lotText(view), Face::strong},
                {u'\n' + below.join(QStringLiteral(", ")), Face::plain}};
    }

    [[nodiscard]] static Runs stateCell(const CycleView& view)
    {
        Runs runs = strong(capital(text(say(view.decision.verdict))));
        runs.push_back({u'\n'
                            + (view.signedAs ? tr("signed as %1").arg(text(say(*view.signedAs)))
                                             : tr("not signed")),
                        Face::plain});
        if (view.folded.phase == Phase::evidenceChanged) {
            runs.push_back({u'\n' + tr("evidence has changed since"), Face::plain});
        }
        return runs;
    }

    [[nodiscard]] Runs whyCell(const CycleView& view) const
    {
        Runs runs;
        for (const Reason& reason : reasonsOf(view, m_style, [](const Finding& finding) {
                 return finding.outcome != Outcome::note;
             })) {
            if (!runs.empty()) {
                runs.push_back({QStringLiteral("\n"), Face::plain});
            }
            runs.push_back({text(reason.said.says), Face::plain});
            if (const QString items = itemsText(reason, view); !items.isEmpty()) {
                runs.push_back({u' ' + tr("Of: %1.").arg(items), Face::strong});
            }
        }
        return runs.empty() ? plain(tr("All evidence is there and good: it is to be signed."))
                            : runs;
    }

    [[nodiscard]] QString testText(const LeftSterilizer& left) const
    {
        if (left.test) {
            const CycleView& test = *left.test;
            const bool hasEnded = test.folded.phase != Phase::running;
            return tr("%1: %2").arg(lotText(test),
                                    hasEnded ? text(say(test.judgement.result)) : tr("running"));
        }
        return left.hasTests ? tr("NOT RUN since %1").arg(timeText(left.periodBegin, m_style))
                             : tr("none run lately");
    }

    void sterilizers()
    {
        m_sheet.section(tr("Sterilizers and their Bowie-Dick test of this test period"));
        if (m_handover.sterilizers.empty()) {
            m_sheet.paragraph(plain(tr("No sterilizer is registered.")));
            return;
        }
        Table table{.columns = {{tr("Sterilizer"), 20}, {tr("State"), 40}, {tr("Test"), 40}},
                    .rows = {}};
        for (const LeftSterilizer& left : m_handover.sterilizers) {
            Runs state = strong(capital(text(say(left.service.state))));
            if (!left.service.why.empty()) {
                state.push_back({QStringLiteral(": ") + text(left.service.why), Face::plain});
            }
            const bool isMissing = !left.test && left.hasTests;
            table.rows.push_back(
                {.cells = {strong(text(name(left.id))), state,
                           isMissing ? strong(testText(left)) : plain(testText(left))}});
        }
        m_sheet.table(table);
    }

    void running()
    {
        m_sheet.section(tr("Being loaded or running"));
        if (m_handover.running.empty()) {
            m_sheet.paragraph(plain(tr("Nothing.")));
            return;
        }
        Table table{.columns = {{tr("Lot"), 20}, {tr("Sterilizer"), 20}, {tr("State"), 60}},
                    .rows = {}};
        for (const CycleView& view : m_handover.running) {
            const bool runs = view.folded.phase == Phase::running;
            const std::optional<Instant> start = view.isTest()
                                                     ? std::optional(view.folded.record.test->start)
                                                     : view.folded.record.load.start;
            table.rows.push_back(
                {.cells = {strong(lotText(view)), plain(text(name(view.folded.sterilizer))),
                           plain(!runs   ? tr("being loaded")
                                 : start ? tr("running since %1").arg(timeText(*start, m_style))
                                         : tr("running"))}});
        }
        m_sheet.table(table);
    }

    void promises()
    {
        m_sheet.section(tr("Promised: to whom, what, until when"));
        for (const OwedEvidence& owed : m_handover.owed) {
            const auto& act = std::get<EmergencyReleased>(owed.released.act);
            m_sheet.paragraph(
                {{tr("%1 of load %2").arg(text(owed.label), text(owed.lot)), Face::strong},
                 {QStringLiteral(" ")
                      + tr("went out by an emergency release, case %1, demanded by %2, signed by "
                           "%3. Its evidence is still to be read and told.")
                            .arg(text(act.caseReference), text(act.demandedBy),
                                 whoText(owed.released, m_handover.names, m_style)),
                  Face::plain}});
        }
        m_sheet.emptyLines(4, millimetres(9));
    }

    const Handover& m_handover;
    const HouseStyle& m_style;
    Sheet m_sheet;
};

} // namespace

Pages shiftHandover(const Handover& handover, const House& house)
{
    return Making(handover, house).make();
}

} // namespace loadwarden::paper
