#include "core/cycle/trace/mapping_proposal.h"
#include "tests/core/cycle/trace/reading_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using namespace test_reading;
using testing::ElementsAre;
using testing::IsEmpty;

const MappedChannel* channelAt(const TraceMapping& mapping, std::size_t column)
{
    for (const MappedChannel& channel : mapping.channels) {
        if (channel.column == column && channel.role != ChannelRole::notUsed) {
            return &channel;
        }
    }
    return nullptr;
}

const ProposalNote* noteOf(const MappingProposal& proposal, ProposedItem item,
                           std::size_t column = 0)
{
    for (const ProposalNote& note : proposal.notes) {
        if (note.item == item && (column == 0 || note.column == column)) {
            return &note;
        }
    }
    return nullptr;
}

TEST(MappingProposals, OfAFileWithPlainWords)
{
    const std::string text =
        "Cycle report\nLot;7\n\n"
        "Elapsed time (s);Chamber temperature [°C];Drain temp. (°F);Load probe "
        "1 °C;Chamber pressure (kPa abs);Jacket temperature °C;Cycle no\n"
        "0;20,5;68,1;20,1;101,3;110,0;411\n"
        "1;21,5;69,1;20,1;100,1;110,5;411\n"
        "2;22,5;70,1;20,2;99,5;110,7;411\n";
    const MappingProposal proposal = proposeMapping(text);
    const TraceMapping& mapping = proposal.mapping;
    EXPECT_EQ(mapping.separator, FieldSeparator::semicolon);
    EXPECT_EQ(mapping.decimal, DecimalMark::comma);
    EXPECT_EQ(mapping.encoding, TextEncoding::utf8);
    EXPECT_EQ(mapping.headerLine, 4U);
    EXPECT_EQ(mapping.columns, 7U);
    EXPECT_EQ(mapping.time, (TimeColumn{.column = 0, .form = TimeForm::seconds}));
    EXPECT_EQ(mapping.counterColumn, 6U);
    ASSERT_NE(channelAt(mapping, 1), nullptr);
    EXPECT_EQ(channelAt(mapping, 1)->role, ChannelRole::chamberTemperature);
    EXPECT_EQ(channelAt(mapping, 1)->unit, RecorderUnit::celsius);
    ASSERT_NE(channelAt(mapping, 2), nullptr);
    EXPECT_EQ(channelAt(mapping, 2)->role, ChannelRole::drainTemperature);
    EXPECT_EQ(channelAt(mapping, 2)->unit, RecorderUnit::fahrenheit);
    ASSERT_NE(channelAt(mapping, 3), nullptr);
    EXPECT_EQ(channelAt(mapping, 3)->role, ChannelRole::loadTemperature);
    ASSERT_NE(channelAt(mapping, 4), nullptr);
    EXPECT_EQ(channelAt(mapping, 4)->role, ChannelRole::chamberPressure);
    EXPECT_EQ(channelAt(mapping, 4)->zero, PressureZero::absolute);
    EXPECT_EQ(channelAt(mapping, 5), nullptr) << "the jacket is not the chamber";
    EXPECT_EQ(noteOf(proposal, ProposedItem::timeForm)->sureness, Sureness::stated);
    EXPECT_EQ(noteOf(proposal, ProposedItem::unit, 2)->sureness, Sureness::stated);

    const TraceReading reading = read(text, mapping);
    EXPECT_THAT(reading.defects, IsEmpty());
    EXPECT_EQ(reading.trace.samples(), 3U);
    EXPECT_EQ(reading.counter, "411");
    EXPECT_THAT(misfitsOf(text, mapping), IsEmpty());
}

TEST(MappingProposals, OfACounterInAFreeLine)
{
    const std::string samples = "Time (s);Temp\n0;20\n1;21\n2;20\n";
    for (const char* line :
         {"Cycle number: 411\n", "Cycle number;411\n", "Cycle number = 411;x\n"}) {
        const MappingProposal proposal = proposeMapping("Report\n" + (line + samples));
        EXPECT_EQ(proposal.mapping.counterLabel, "Cycle number") << line;
        EXPECT_EQ(read("Report\n" + (line + samples), proposal.mapping).counter, "411") << line;
    }
    EXPECT_EQ(proposeMapping("Cycle started\n" + samples).mapping.counterLabel, "");
}

TEST(MappingProposals, OfUnitsInALineOfTheirOwn)
{
    const std::string text = "Time,Chamber temp,Pressure\nhh:mm:ss,[°F],psig\n"
                             "07:14:05,80.1,0.1\n07:14:06,81.2,-3.2\n07:14:07,82.2,-5.0\n";
    const MappingProposal proposal = proposeMapping(text);
    const TraceMapping& mapping = proposal.mapping;
    EXPECT_THAT(mapping.header, ElementsAre("Time", "Chamber temp", "Pressure"));
    EXPECT_EQ(mapping.linesToSkip, 1U);
    EXPECT_EQ(mapping.time.form, TimeForm::hoursMinutesSeconds);
    EXPECT_EQ(noteOf(proposal, ProposedItem::unit, 2)->text, "Chamber temp [°F]");
    ASSERT_EQ(mapping.channels.size(), 2U);
    EXPECT_EQ(mapping.channels[0].unit, RecorderUnit::fahrenheit);
    EXPECT_EQ(mapping.channels[1].unit, RecorderUnit::psi);
    EXPECT_EQ(mapping.channels[1].zero, PressureZero::gauge);
    EXPECT_THAT(read(text, mapping).defects, IsEmpty());
}

TEST(MappingProposals, OfDatesSayTheirOrderOnlyWhereItIsClear)
{
    const MappingProposal clear =
        proposeMapping("Date,Time,Temp\n25/03/2031,07:14:05,20.1\n25/03/2031,07:14:06,20.2\n");
    EXPECT_EQ(clear.mapping.time, (TimeColumn{1, TimeForm::dateTime, DateOrder::dayMonthYear, 0}));
    EXPECT_EQ(noteOf(clear, ProposedItem::dateOrder)->sureness, Sureness::stated);
    const MappingProposal unclear =
        proposeMapping("Date/Time,Temp\n03/04/2031 07:14 AM,20.1\n03/04/2031 07:15 AM,20.2\n");
    EXPECT_EQ(unclear.mapping.time.order, DateOrder::monthDayYear);
    EXPECT_EQ(noteOf(unclear, ProposedItem::dateOrder)->sureness, Sureness::guessed);
    EXPECT_EQ(proposeMapping("Zeit;T °C\n03.04.2031 07:14:01;20\n03.04.2031 07:14:02;21\n")
                  .mapping.time.order,
              DateOrder::dayMonthYear);
}

TEST(MappingProposals, OfTwoPartsOfATimeAreAGuess)
{
    const MappingProposal zero = proposeMapping("Time,Temp C\n00:00,20.1\n00:01,20.2\n00:02,20\n");
    EXPECT_EQ(zero.mapping.time.form, TimeForm::minutesSeconds);
    EXPECT_EQ(noteOf(zero, ProposedItem::timeForm)->sureness, Sureness::guessed);
    const MappingProposal clock = proposeMapping("Time,Temp C\n07:14,20.1\n07:15,20.2\n");
    EXPECT_EQ(clock.mapping.time.form, TimeForm::hoursMinutes);
    const MappingProposal said = proposeMapping("Time mm:ss,Temp C\n07:14,20.1\n07:15,20.2\n");
    EXPECT_EQ(said.mapping.time.form, TimeForm::minutesSeconds);
    EXPECT_EQ(noteOf(said, ProposedItem::timeForm)->sureness, Sureness::stated);
    EXPECT_EQ(proposeMapping("Time,Temp C\n23:59,20.1\n24:00,20.2\n").mapping.time.form,
              TimeForm::minutesSeconds);
}

TEST(MappingProposals, WithoutAHeaderGuessNoRole)
{
    const MappingProposal proposal = proposeMapping(slowLines(0, 20));
    EXPECT_THAT(proposal.mapping.header, IsEmpty());
    EXPECT_EQ(proposal.mapping.columns, 3U);
    EXPECT_EQ(proposal.mapping.time.form, TimeForm::seconds);
    EXPECT_EQ(noteOf(proposal, ProposedItem::timeForm)->sureness, Sureness::guessed);
    EXPECT_EQ(faultOf(proposal.mapping), MappingFault::noChannel) << "a person must say it";
}

TEST(MappingProposals, ReadUnitsFromTheirWords)
{
    struct Case {
        const char* header;
        RecorderUnit unit;
        PressureZero zero;
    };
    const auto absolute = PressureZero::absolute;
    const auto gauge = PressureZero::gauge;
    const Case cases[] = {
        {"Chamber Temp (C)", RecorderUnit::celsius, absolute},
        {"CHAMBER_TEMP_F", RecorderUnit::fahrenheit, absolute},
        {"Chamber temperature in degrees Celsius", RecorderUnit::celsius, absolute},
        {"Chamber temperature deg F", RecorderUnit::fahrenheit, absolute},
        {"Temperature [K]", RecorderUnit::kelvin, absolute},
        {"Pressure psia", RecorderUnit::psi, absolute},
        {"Pressure (psig)", RecorderUnit::psi, gauge},
        {"Chamber pressure bar(a)", RecorderUnit::bar, absolute},
        {"Chamber pressure barg", RecorderUnit::bar, gauge},
        {"Pressure kPa gauge", RecorderUnit::kPa, gauge},
        {"Pressure mbar abs.", RecorderUnit::mbar, absolute},
        {"Pressure hPa absolute", RecorderUnit::mbar, absolute},
        {"Vacuum in Hg gauge", RecorderUnit::inHg, gauge},
        {"Pressure (mmHg, absolute)", RecorderUnit::mmHg, absolute},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.header);
        const MappingProposal proposal =
            proposeMapping("Time (min);" + std::string(each.header) + "\n0;1.1\n1;1.2\n2;1.3\n");
        EXPECT_EQ(proposal.mapping.time.form, TimeForm::minutes);
        ASSERT_EQ(proposal.mapping.channels.size(), 1U);
        const MappedChannel& channel = proposal.mapping.channels[0];
        EXPECT_EQ(isTemperature(channel.role), isTemperature(each.unit));
        EXPECT_EQ(channel.unit, each.unit);
        EXPECT_EQ(channel.zero, each.zero);
        EXPECT_NE(noteOf(proposal, ProposedItem::unit)->sureness, Sureness::guessed);
    }
}

TEST(MappingProposals, TellLatin1FromUtf8)
{
    EXPECT_EQ(proposeMapping("t,T \xB0"
                             "C\n0,1\n1,2\n")
                  .mapping.encoding,
              TextEncoding::latin1);
    const MappingProposal marked = proposeMapping("\xEF\xBB\xBFt,T °C\n0,1\n1,2\n");
    EXPECT_EQ(marked.mapping.encoding, TextEncoding::utf8);
    EXPECT_EQ(noteOf(marked, ProposedItem::encoding)->why, ProposalReason::byteOrderMark);
    EXPECT_EQ(proposeMapping("t,T \xB0"
                             "C\n0,1\n1,2\n")
                  .mapping.header[1],
              "T °C");
}

TEST(MappingProposals, AFileThatDoesNotFitIsSaid)
{
    TraceMapping mapping = plainMapping();
    mapping.header = {"t", "A", "B"};
    mapping.headerLine = 1;
    EXPECT_THAT(misfitsOf("t,A,B\n" + slowLines(0, 500), mapping), IsEmpty());
    const auto kinds = [&mapping](const std::string& text) {
        std::vector<TraceDefectKind> all;
        for (const TraceDefect& defect : misfitsOf(text, mapping)) {
            all.push_back(defect.kind);
        }
        return all;
    };
    EXPECT_THAT(kinds("t,B,A\n" + slowLines(0, 50)), ElementsAre(TraceDefectKind::headerDiffers));
    EXPECT_THAT(kinds("t,A,B\n0;20;1\n1;20;1\n"), testing::Contains(TraceDefectKind::noSamples));
    EXPECT_THAT(kinds("t,A,B\n0,20 C,101\n1,20 C,101\n"),
                ElementsAre(TraceDefectKind::textInNumber));
    EXPECT_THAT(kinds("t,A,B\n0,20 C,101\n1,20,101\n"), IsEmpty()) << "one value is no misfit";
    EXPECT_THAT(kinds("t,A,B\n00:01,20,101\n00:02,21,101\n"),
                testing::Contains(TraceDefectKind::timeUnreadable));
}

TEST(MappingProposals, ShowLines)
{
    const std::vector<ShownLine> lines = shownLines("a,b\n\n\"c,d\",e\nf\n", plainMapping(), 2, 2);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[1].line, 3);
    EXPECT_THAT(lines[1].fields, ElementsAre("c,d", "e"));
}

} // namespace
} // namespace loadwarden
