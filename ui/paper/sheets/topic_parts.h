#pragma once

#include "core/guidance/answer.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/sheets/house.h"

// What the sheets about a topic of guidance have in common.

namespace loadwarden::paper {

/// What stands on every page of a sheet about a topic, printed on that day of the facility.
[[nodiscard]] Frame topicFrame(const House& house, const QString& title, const Topic& topic,
                               Date printed);

/// Where the policy in force decides otherwise than the topic's text says: a warning, before all
/// of it.
void appendPolicyWarning(Sheet& sheet, const TopicAnswer& answer);

/// The steps with their numbers.
void appendSteps(Sheet& sheet, const Topic& topic, Type type);

/// How the indicator answers that the topic is about; of other topics nothing.
void appendPicture(Sheet& sheet, const Topic& topic);

/// What the house says to a topic of the program; nothing where it does not.
void appendNote(Sheet& sheet, const TopicAnswer& answer, Type type);

/// What the rules decide on the topic's small evidence; of topics without one nothing. With the
/// sentences of what was found, or without.
enum class Reasoned : std::uint8_t { no, yes };
void appendDecisions(Sheet& sheet, const TopicAnswer& answer, Reasoned reasoned, Type type);

void appendCaution(Sheet& sheet, const Topic& topic, Type type);

/// Sources, owner and the day of the next review.
void appendGrounds(Sheet& sheet, const TopicAnswer& answer);

} // namespace loadwarden::paper
