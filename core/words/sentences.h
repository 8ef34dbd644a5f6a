#pragma once

#include "core/release/finding.h"
#include "core/words/say.h"

#include <QCoreApplication>
#include <QString>

#include <string_view>

namespace loadwarden {

/// What a key says of itself; `next` may be empty where the finding is a note.
struct Words {
    QString says;
    QString next;
};

/// The sentences of one finding: a function for every key, in the say_*.cpp of its rule. A key
/// without one does not link. Sentences are whole, so that a translator may turn them around; only
/// names, times and values are put in.
class Sentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    /// Both must outlive it.
    Sentences(const Finding& finding, const HouseStyle& style) noexcept : f_(finding), style_(style)
    {
    }

    /// What the finding's key says, fit for its outcome, with who must or did review it.
    Words words() const;

private:
#define LW_KEY(enumerator, text, rule) Words enumerator() const;
#include "core/release/finding_keys.def"
#undef LW_KEY

    Words ofKey() const;
    QString review() const;

    bool is(Outcome outcome) const noexcept { return f_.outcome == outcome; }
    bool subjectIs(std::string_view text) const noexcept { return f_.subject == text; }

    QString subject() const;       ///< as recorded
    QString parameter() const;     ///< the subject as a parameter's name in words
    QString entries() const;       ///< the subject as a field of acts, as what stands in it
    QString place() const;         ///< the subject as a place in a package
    QString printoutField() const; ///< the subject as a field of the printout in words
    QString count() const;
    bool hasTime() const noexcept { return f_.changesAt.has_value(); }
    QString time() const; ///< when time changes the finding; up to a minute late, never early

    /// The reading with the limit that it broke, as "It read %1; …"; empty without both.
    QString readAgainst(const QString& withValueAndLimit) const;

    bool hasCause() const noexcept { return f_.cause != Cause::none; }
    bool isOfVial() const noexcept; ///< of a biological indicator, as against a chemical one
    bool isVoidVial() const noexcept;
    bool isOfReview() const noexcept; ///< of a review, as against a reading
    bool
    isEntry() const noexcept; ///< of an entry about the cycle, as against an indicator's reading
    Words because() const;    ///< the cause in words, and what may mend it; empty without one
    /// Puts the cause behind what is said. What is next becomes what may mend the cause, and then
    /// `otherwise`; a note that asks for nothing goes on doing so.
    Words withCause(Words words, const QString& otherwise) const;

    /// What is said of an entry that is not there or, where a cause is given, does not count.
    Words withEntryCause(const QString& missing, const QString& notCounted,
                         const QString& next) const;

    Words controlAwaited(Words words) const;
    Words biologicalPending(Words words) const;

    /// A sentence about the finding's value, behind another; empty without one.
    QString traceWith(const QString& withValue) const;
    /// What a trace shows of an exposure that was not held as it should.
    Words traceBreak(const QString& says) const;

    static QString reprocessLoad();
    static QString reprocessItem();
    static QString secondReader();
    static QString readDirections();
    static QString guardedDoor();
    static QString repeatTest();
    static QString checkTest();
    static QString compareWithInstructions();

    const Finding& f_;
    const HouseStyle& style_;
};

} // namespace loadwarden
