#include "core/words/say_trace.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct MappingSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(MappingFault fault);
    static QString why(const ProposalNote& note);
    static QString of(const ProposalNote& note);
};

QString MappingSentences::of(MappingFault fault)
{
    switch (fault) {
    case MappingFault::none: return {};
    case MappingFault::noColumns:
        return tr("The mapping does not say how many columns a line has.");
    case MappingFault::tooManyColumns: return tr("A mapping can have 256 columns at most.");
    case MappingFault::columnOutside:
        return tr("Something is mapped to a column that the lines do not have.");
    case MappingFault::columnTwice:
        return tr("Two things are mapped to one column. Choose another for one of them.");
    case MappingFault::noChannel:
        return tr("No column is mapped to a temperature or pressure. Choose one.");
    case MappingFault::unitOfOtherKind:
        return tr("A temperature has a unit of pressure, or a pressure one of temperature.");
    case MappingFault::dateWithoutClock:
        return tr("A column holds the date, so the time must be read as date and time.");
    case MappingFault::headerWithoutLine:
        return tr("The mapping says which line is the header, or what it holds, but not both.");
    case MappingFault::impossibleValue: return tr("The mapping holds what does not exist.");
    }
    return {};
}

QString MappingSentences::why(const ProposalNote& note)
{
    switch (note.why) {
    case ProposalReason::byteOrderMark:
        return tr("The file begins with the mark of this encoding.");
    case ProposalReason::bytesFit: return tr("The file's bytes can be read so.");
    case ProposalReason::linesAgree: return tr("Read so, most fields are numbers.");
    case ProposalReason::wordsAboveNumbers: return tr("Words stand there above numbers.");
    case ProposalReason::headerWords:
        return tr("The header says \"%1\".").arg(QString::fromStdString(note.text));
    case ProposalReason::valuesFit: return tr("The values look like it.");
    case ProposalReason::noHint: return tr("Nothing in the file says it.");
    }
    return {};
}

QString MappingSentences::of(const ProposalNote& note)
{
    switch (note.sureness) {
    case Sureness::stated: return why(note);
    case Sureness::likely: return tr("%1 Likely so; check it on the first lines.").arg(why(note));
    case Sureness::guessed: return tr("%1 A guess; check it on the first lines.").arg(why(note));
    }
    return {};
}

} // namespace

std::string say(MappingFault fault)
{
    return MappingSentences::of(fault).toStdString();
}

std::string say(const ProposalNote& note)
{
    return MappingSentences::of(note).toStdString();
}

} // namespace loadwarden
