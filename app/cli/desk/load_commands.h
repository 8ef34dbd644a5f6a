#pragma once

#include "app/cli/desk/desk_session.h"

#include <string>
#include <string_view>
#include <vector>

// What can be done with a load or a test, one function a word behind "load".

namespace loadwarden::cli {

int reserveLoad(DeskSession& session, const Arguments& given);
int addItem(DeskSession& session, const Arguments& given);
int removeItem(DeskSession& session, const Arguments& given);
int moveItem(DeskSession& session, const Arguments& given);
int placePcd(DeskSession& session, const Arguments& given);
int placeSheet(DeskSession& session, const Arguments& given);
int startLoad(DeskSession& session, const Arguments& given);
int endLoad(DeskSession& session, const Arguments& given);
int unloadLoad(DeskSession& session, const Arguments& given);
int recordPrintout(DeskSession& session, const Arguments& given);
int answerPrintout(DeskSession& session, const Arguments& given);
int readLoad(DeskSession& session, const Arguments& given);
int checkPackage(DeskSession& session, const Arguments& given);
int verifyLoad(DeskSession& session, const Arguments& given);
int decideLoad(DeskSession& session, const Arguments& given);
int reviewLoad(DeskSession& session, const Arguments& given);
int signLoad(DeskSession& session, const Arguments& given);
int releaseInEmergency(DeskSession& session, const Arguments& given);
int distributeItem(DeskSession& session, const Arguments& given);
int useItem(DeskSession& session, const Arguments& given);
int returnItem(DeskSession& session, const Arguments& given);
int showLoad(DeskSession& session, const Arguments& given);
int listLoads(DeskSession& session, const Arguments& given);
int showHistory(DeskSession& session, const Arguments& given);

/// The argument at that place behind the word, or a UsageError with how it is used.
[[nodiscard]] std::string_view argument(const Arguments& given, std::size_t at,
                                        std::string_view usage);

/// The texts between commas.
[[nodiscard]] std::vector<std::string> listOf(std::optional<std::string_view> text);

[[nodiscard]] bool yesOrNo(std::string_view text, std::string_view option);

/// A whole number, or a UsageError.
[[nodiscard]] std::int64_t whole(std::string_view text, std::string_view option);

/// The id of a part of the cycle, or Refused.
[[nodiscard]] std::string part(DeskSession& session, const std::string& cycle,
                               std::string_view name);

} // namespace loadwarden::cli
