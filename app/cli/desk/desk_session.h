#pragma once

#include "app/cli/arguments.h"
#include "app/cli/refused.h"
#include "app/cli/streams.h"
#include "core/desk/load_view.h"
#include "core/desk/recorder.h"
#include "core/words/say.h"
#include "core/words/say_refusal.h"

#include <initializer_list>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

class QCoreApplication;

namespace loadwarden::cli {

/// The options of every command on a journal's file, and those of its own.
[[nodiscard]] std::vector<Option> withDeskOptions(std::initializer_list<Option> own);

/// A value of this set of words, or a UsageError that lists them.
template <class Table>
[[nodiscard]] auto wordIn(const Table& table, std::string_view text, std::string_view what)
{
    if (const auto value = valueOf(table, text)) {
        return *value;
    }
    std::string words;
    for (const auto& word : table) {
        words += (words.empty() ? "" : ", ") + std::string(word.text);
    }
    throw UsageError(std::string(what) + " is one of: " + words + "; not \"" + std::string(text)
                     + '"');
}

/// One command on a journal's file: which file, who asks, when it happened. A person gives the PIN
/// in the environment (LOADWARDEN_PIN) or at the terminal, never as an argument, where others could
/// read it.
class DeskSession {
public:
    DeskSession(const Arguments& given, Access access, Streams streams);
    ~DeskSession();
    DeskSession(const DeskSession&) = delete;
    DeskSession& operator=(const DeskSession&) = delete;

    [[nodiscard]] Office& office() { return *m_office; }
    [[nodiscard]] HouseStyle style() const { return {.zone = m_office->zone()}; }
    [[nodiscard]] bool wantsJson() const { return m_given.has("--json"); }
    [[nodiscard]] std::ostream& out() const { return m_streams.out; }

    /// Who asks (--by), signed in with the PIN; once.
    [[nodiscard]] const SignedIn& who();
    [[nodiscard]] Signature signature();

    /// The cycle that an argument names by lot control number or id; throws Refused.
    [[nodiscard]] std::string cycle(std::string_view name);

    /// The moment for which a decision is asked: --at, or now.
    [[nodiscard]] Instant moment() const;
    /// A cycle for that moment, and by what had been recorded then; nullopt: nothing had.
    [[nodiscard]] std::optional<CycleView> view(ReadSnapshot& snapshot, const std::string& cycle);
    /// --at, or nothing: now.
    [[nodiscard]] std::optional<JournalTime> happenedAt() const;
    /// A moment with its offset, or a UsageError that names the option.
    [[nodiscard]] static JournalTime time(std::string_view text, std::string_view option);

    /// Records with what --at, --reason and --paper say, and with a signature where one is needed.
    Appended record(AnyAct act, std::vector<std::string> subjects);
    Appended record(std::vector<ToRecord> acts);

    /// The value, or Refused with the refusal in words.
    template <class Value>
    Value must(OrRefusal<Value> answer)
    {
        if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
            refuse(*refusal);
        }
        return std::get<Value>(std::move(answer));
    }

    [[noreturn]] void refuse(const Refusal& refusal) const;

    /// Says something beside the output that should not be passed over.
    void warn(const std::string& text) const;

    /// Says on the output what was recorded.
    void sayRecorded(const Appended& appended, const std::string& what) const;

private:
    /// Of items that were used and that nobody released.
    void warnOfUses(const std::vector<ToRecord>& acts) const;
    void sealOnceADay();
    [[nodiscard]] std::string pin();
    [[nodiscard]] std::optional<FromPaper> paper();

    const Arguments& m_given;
    Streams m_streams;
    std::unique_ptr<QCoreApplication> m_application;
    SystemClock m_clock;
    RandomIdSource m_ids;
    std::optional<std::string> m_pin;
    std::unique_ptr<Office> m_office;
    std::optional<SignedIn> m_who;
};

/// Where a command on a journal runs: this user's folder, this computer's name.
[[nodiscard]] Workplace workplace(const Clock& clock, IdSource& ids);

/// The drivers of databases need an application; nullptr where there is one.
[[nodiscard]] std::unique_ptr<QCoreApplication> makeApplication();

/// The journal's file: --file, or LOADWARDEN_FILE.
[[nodiscard]] std::string journalFile(const Arguments& given);

/// A secret from an environment variable, else asked for at the terminal without showing it.
[[nodiscard]] std::string secret(const char* variable, std::string_view prompt);

/// The same for a new secret: at the terminal it is asked for twice, since nobody sees what they
/// type. Throws Refused where the two differ.
[[nodiscard]] std::string newSecret(const char* variable, std::string_view prompt);

} // namespace loadwarden::cli
