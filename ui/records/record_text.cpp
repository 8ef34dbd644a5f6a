#include "ui/records/record_text.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/today/cycle_text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct RecordWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::RecordWords)
};

} // namespace

QString whatText(const RecordRow& row)
{
    if (row.isImported) {
        return RecordWords::tr("Imported");
    }
    if (row.purpose == Purpose::immediateUse) {
        return RecordWords::tr("Immediate use"); // that a row is a load goes without saying
    }
    return row.purpose ? purposeText(*row.purpose) : RecordWords::tr("Not said");
}

QString signedText(const RecordRow& row)
{
    if (row.signedAs) {
        const QString verdict = text(say(*row.signedAs));
        return row.hasMoreSince ? RecordWords::tr("%1, more since", "a verdict").arg(verdict)
                                : verdict;
    }
    if (row.isImported) {
        return RecordWords::tr("By its old record");
    }
    if (!row.hasEnded) {
        return RecordWords::tr("Not ended");
    }
    return row.isTest() ? RecordWords::tr("Tests are not signed") : RecordWords::tr("Not signed");
}

SignedMark signedMark(const RecordRow& row)
{
    if (row.signedAs) {
        return {glyphOf(*row.signedAs), toneOf(*row.signedAs)};
    }
    return {!row.hasEnded && !row.isImported ? Glyph::running : Glyph::note, ToneOf::neutral};
}

} // namespace loadwarden::ui
