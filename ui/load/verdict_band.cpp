#include "ui/load/verdict_band.h"

#include "core/desk/verify_and_release.h"
#include "core/words/say_any_act.h"
#include "core/words/say_terms.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/verdict_badge.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <ranges>

namespace loadwarden::ui {
namespace {

bool isImplantWaiting(const LoadSheet& sheet)
{
    return std::ranges::any_of(sheet.items, [](const SheetItem& item) {
        return item.implant != Implant::no && item.verdict == Verdict::quarantine;
    });
}

} // namespace

VerdictBand::VerdictBand(CycleDesk& desk, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_badge(new VerdictBadge(desk.workstation().look, VerdictBadge::Size::page)),
      m_lot(makeLabel({}, Type::title, false)),
      m_phase(makeMuted({})),
      m_behind(makeLabel({})),
      m_since(makeLabel({})),
      m_working(makeMuted(tr("Working out the decision …"))),
      m_main(makeButton(tr("Sign the release"), ButtonKind::main)),
      m_hold(makeButton(tr("Sign a hold"))),
      m_reprocess(makeButton(tr("Sign reprocess"))),
      m_emergency(makeButton(tr("Emergency release of an implant"))),
      m_again(makeButton(tr("New load for its items"))),
      m_paper(makeButton(tr("Paper"), ButtonKind::quiet))
{
    setObjectName(QStringLiteral("verdict"));
    auto* const lines = new QVBoxLayout(this);
    lines->setContentsMargins(space::large, space::medium, space::large, space::medium);
    lines->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::large);
    lines->addLayout(row);
    row->addWidget(m_badge, 0, Qt::AlignVCenter);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(m_lot);
    words->addWidget(m_phase);
    words->addWidget(m_behind);
    words->addWidget(m_since);
    row->addLayout(words, 1);
    QSizePolicy keepsItsPlace = m_working->sizePolicy();
    keepsItsPlace.setRetainSizeWhenHidden(true); // nothing moves when it comes
    m_working->setSizePolicy(keepsItsPlace);
    m_working->hide();
    connect(&desk, &CycleDesk::working, m_working, &QWidget::setVisible);
    for (const auto& line : {std::vector{m_paper, m_hold, m_reprocess, m_main},
                             std::vector{m_again, m_emergency}}) {
        auto* const buttons = new QHBoxLayout;
        buttons->setSpacing(space::small);
        if (line.front() == m_paper) {
            buttons->addWidget(m_working, 1); // in the room beside the buttons
        } else {
            buttons->addStretch();
        }
        for (QPushButton* const button : line) {
            buttons->addWidget(button);
        }
        lines->addLayout(buttons);
    }
    connect(m_main, &QPushButton::clicked, this, [this] {
        if (m_mainVerifies) {
            verifyAndRelease();
        } else {
            signAs(Verdict::release);
        }
    });
    connect(m_hold, &QPushButton::clicked, this, [this] { signAs(Verdict::quarantine); });
    connect(m_reprocess, &QPushButton::clicked, this, [this] { signAs(Verdict::reprocess); });
    connect(m_emergency, &QPushButton::clicked, this, &VerdictBand::wantsEmergency);
    connect(m_again, &QPushButton::clicked, this, &VerdictBand::wantsNewLoad);
    connect(m_paper, &QPushButton::clicked, this, &VerdictBand::wantsPaper);
}

bool VerdictBand::isDecidable(const LoadSheet& sheet)
{
    const Phase phase = sheet.view().folded.phase;
    return phase != Phase::beingLoaded && phase != Phase::running && phase != Phase::imported;
}

void VerdictBand::show(const LoadSheet& sheet)
{
    const CycleView& view = sheet.view();
    if (!isDecidable(sheet)) {
        m_badge->show(view.isImported() ? Glyph::note : Glyph::running, ToneOf::neutral,
                      view.isImported()                         ? tr("Imported")
                      : view.folded.phase == Phase::beingLoaded ? tr("Being loaded")
                                                                : tr("Running"));
    } else if (view.isTest()) {
        m_badge->show(view.judgement.result);
    } else if (!view.folded.isUnderstood) {
        m_badge->show(Glyph::note, ToneOf::bad, tr("Cannot be judged here"));
    } else if (view.signedAs && *view.signedAs >= view.decision.verdict) {
        m_badge->show(*view.signedAs);
    } else if (view.decision.verdict == Verdict::release) {
        m_badge->show(glyphOf(Verdict::release), toneOf(Verdict::release),
                      tr("Release, not signed"));
    } else {
        m_badge->show(view.decision.verdict);
    }
    m_lot->setText(m_desk.lot());
    m_phase->setText(tr("%1, %2. %3", "sterilizer, what it is run for, where it stands")
                         .arg(sheet.sterilizerName.empty() ? tr("Sterilizer not stated")
                                                           : text(sheet.sterilizerName),
                              text(say(sheet.state.purpose)), phaseText(sheet, m_desk.style())));
    QStringList behind;
    if (!view.folded.isUnderstood) {
        behind << tr("The journal holds entries about this that this version does not know; "
                     "nothing can be signed with it.");
    }
    if (view.signedAs && isDecidable(sheet) && *view.signedAs > view.decision.verdict) {
        behind << tr("Decided now: %1. It stays as signed until somebody signs anew.")
                      .arg(text(say(view.decision.verdict)));
    }
    if (isDecidable(sheet) && isWorseThanSigned(view)) {
        behind << tr("Signed better than what is decided now: find its items, and sign anew.");
    }
    for (const UnreleasedUse& use : sheet.uses) {
        behind << tr("%1 was used and nobody had released it.").arg(text(use.label));
    }
    QStringList worse;
    for (const SheetItem& item : sheet.items) {
        if (item.verdict && *item.verdict > view.decision.verdict) {
            worse << tr("%1: %2", "an item, its verdict").arg(text(item.label), text(say(*item.verdict)));
        }
    }
    if (!worse.isEmpty()) {
        behind << tr("Stays behind: %1.").arg(worse.join(QStringLiteral(", ")));
    }
    m_behind->setText(behind.join(u' '));
    m_behind->setVisible(!behind.isEmpty());
    setStyleProperty(m_behind, "tone", "bad");
    m_since->setText(saidSince(sheet));
    m_since->setVisible(!m_since->text().isEmpty());
    showActions(sheet);
}

QString VerdictBand::saidSince(const LoadSheet& sheet) const
{
    if (sheet.view().folded.phase != Phase::evidenceChanged) {
        return {};
    }
    const auto& entries = sheet.record.entries;
    const auto newest =
        std::ranges::find_if(entries.rbegin(), entries.rend(), [](const Entry& entry) {
            return std::holds_alternative<DispositionSigned>(entry.act);
        });
    if (newest == entries.rend()) {
        return {};
    }
    constexpr qsizetype mostSaid = 4;
    QStringList said;
    qsizetype more = 0;
    for (auto entry = newest.base(); entry != entries.end(); ++entry) {
        if (said.size() == mostSaid) {
            ++more;
            continue;
        }
        const ActSaid words = say(
            entry->act, [&](std::string_view id) { return sheet.record.names.of(id); },
            m_desk.style());
        const QString what = words.value.empty()
                                 ? text(words.what)
                                 : tr("%1: %2").arg(text(words.what), text(words.value));
        said << tr("%1 (%2)", "what was said, by whom and when")
                    .arg(what, whoText(*entry, sheet, m_desk.style()));
    }
    if (said.isEmpty()) {
        return {};
    }
    const QString all = said.join(QStringLiteral("; "));
    return more == 0 ? tr("Recorded since it was signed: %1.").arg(all)
                     : tr("Recorded since it was signed: %1; and more: %2.").arg(all).arg(more);
}

void VerdictBand::focusMain()
{
    for (QPushButton* const button : {m_main, m_hold, m_reprocess}) {
        if (button->isVisibleTo(this)
            && button->property("kind").toString() == QLatin1String("main")) {
            button->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
}

void VerdictBand::showActions(const LoadSheet& sheet)
{
    const CycleView& view = sheet.view();
    const bool canSign =
        isDecidable(sheet) && !view.isTest() && view.folded.isUnderstood;
    const Person& person = m_desk.workstation().session.person();
    const bool isRelease = canSign && view.decision.verdict == Verdict::release;
    const auto foreseen = canSign && !isRelease && view.decision.verdict == Verdict::quarantine
                              ? decisionOnceVerified(view, person.id, person.role)
                              : std::nullopt;
    m_mainVerifies = foreseen && foreseen->verdict == Verdict::release;
    const bool isNew = view.folded.phase != Phase::disposed;
    m_main->setText(m_mainVerifies ? tr("Verify the readings and release") : tr("Sign the release"));
    m_main->setVisible((isRelease || m_mainVerifies)
                       && (isNew || view.signedAs != Verdict::release));
    m_hold->setVisible(canSign && view.decision.verdict != Verdict::reprocess
                       && (isNew || view.signedAs == Verdict::release));
    m_reprocess->setVisible(canSign && (isNew || view.signedAs != Verdict::reprocess));
    setStyleProperty(m_hold, "kind",
                     canSign && !m_main->isVisibleTo(this)
                             && view.decision.verdict == Verdict::quarantine && isNew
                         ? "main"
                         : "plain");
    setStyleProperty(m_reprocess, "kind",
                     canSign && view.decision.verdict == Verdict::reprocess && isNew ? "main"
                                                                                      : "plain");
    m_emergency->setVisible(canSign && isImplantWaiting(sheet));
    m_again->setVisible(canSign
                        && (view.signedAs == Verdict::reprocess
                            || std::ranges::any_of(sheet.items, [](const SheetItem& item) {
                                   return item.verdict == Verdict::reprocess;
                               })));
    m_paper->setVisible(!view.isImported());
}

QStringList VerdictBand::seen(const Decision& decision) const
{
    const LoadSheet& sheet = *m_desk.sheet();
    QStringList lines;
    for (const SheetParameter& parameter : sheet.parameters) {
        for (const ParameterReading& reading : parameter.readings) {
            const QString limits = limitsText(parameter, reading.value.unit);
            lines << tr("%1 %2%3", "parameter, reading, its limits in brackets")
                         .arg(capital(text(say(parameter.parameter))),
                              text(sayQuantity(reading.value)),
                              limits.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(limits));
        }
    }
    for (const ItemDecision& item : decision.items) {
        if (item.verdict > decision.verdict) {
            lines << tr("%1 stays behind: %2").arg(text(item.label), text(say(item.verdict)));
        }
    }
    constexpr std::ptrdiff_t mostReasons = 6;
    std::vector<Finding> findings = decision.findings;
    std::ranges::stable_sort(
        findings, [](const Finding& a, const Finding& b) { return a.outcome > b.outcome; });
    for (const Finding& finding : findings | std::views::take(mostReasons)) {
        lines << text(say(finding, m_desk.style()).says);
    }
    if (std::ssize(findings) > mostReasons) {
        lines << tr("More reasons on the page: %1").arg(std::ssize(findings) - mostReasons);
    }
    return lines;
}

void VerdictBand::signAs(Verdict meaning)
{
    const QString lot = m_desk.lot();
    const Decision& decision = m_desk.sheet()->view().decision;
    const auto count =
        std::ranges::count(decision.items, Verdict::release, &ItemDecision::verdict);
    QString what;
    QString button;
    switch (meaning) {
    case Verdict::release:
        what = tr("Release load %1, items: %2").arg(lot).arg(count);
        button = tr("Sign the release");
        break;
    case Verdict::quarantine:
        what = tr("Hold load %1: nobody uses anything of it until it is signed anew").arg(lot);
        button = tr("Sign the hold");
        break;
    case Verdict::reprocess:
        what = tr("Reprocess load %1: every item is taken apart and run anew").arg(lot);
        button = tr("Sign reprocess");
        break;
    }
    QStringList lines = seen(decision);
    lines.prepend(tr("Decided now: %1").arg(text(say(decision.verdict))));
    m_desk.signOnSight(
        what, lines, button,
        [meaning](Office& office, const SignedIn& who, Signature signature, const Sight& sight) {
            return Dispositions(office).sign(who, std::move(signature), sight, meaning);
        },
        tr("%1 is signed: %2.").arg(lot, text(say(meaning))));
}

void VerdictBand::verifyAndRelease()
{
    const CycleView& view = m_desk.sheet()->view();
    const Person& person = m_desk.workstation().session.person();
    const auto foreseen = decisionOnceVerified(view, person.id, person.role);
    if (!foreseen) {
        return;
    }
    QStringList lines = seen(*foreseen);
    lines.prepend(tr("Decided once the readings are verified: %1").arg(text(say(foreseen->verdict))));
    m_desk.verifyAndRelease(
        tr("The physical record of %1 was looked at and is this cycle's, and load %1 is released")
            .arg(m_desk.lot()),
        lines, tr("Sign both"),
        tr("%1 is verified and signed: Release.").arg(m_desk.lot()));
}

} // namespace loadwarden::ui
