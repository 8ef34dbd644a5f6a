#include "app/cli/desk/desk_session.h"

#include "app/cli/desk/parts.h"
#include "app/cli/desk/typed_time.h"
#include "core/desk/load_view.h"
#include "core/desk/people.h"
#include "core/desk/sealing.h"
#include "core/desk/used_items.h"
#include "core/store/seal_key_file.h"
#include "core/store/store_error.h"
#include "core/words/say_act.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <fcntl.h>
#include <ostream>
#include <termios.h>
#include <thread>
#include <unistd.h>

namespace loadwarden::cli {

namespace {

constexpr std::array common = {Option{"--file", true},  Option{"--by", true},
                               Option{"--at", true},    Option{"--reason", true},
                               Option{"--paper", true}, Option{"--json", false}};

std::optional<std::string> fromEnvironment(const char* variable)
{
    const char* const value = std::getenv(variable);
    return value == nullptr || *value == '\0' ? std::nullopt : std::optional<std::string>(value);
}

/// The terminal with its echo off while this lives.
class QuietTerminal {
public:
    QuietTerminal() : m_terminal(::open("/dev/tty", O_RDWR | O_CLOEXEC))
    {
        if (m_terminal >= 0 && ::tcgetattr(m_terminal, &m_before) == 0) {
            termios quiet = m_before;
            quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
            ::tcsetattr(m_terminal, TCSAFLUSH, &quiet);
            m_changed = true;
        }
    }
    ~QuietTerminal()
    {
        if (m_changed) {
            ::tcsetattr(m_terminal, TCSAFLUSH, &m_before);
        }
        if (m_terminal >= 0) {
            ::close(m_terminal);
        }
    }
    QuietTerminal(const QuietTerminal&) = delete;
    QuietTerminal& operator=(const QuietTerminal&) = delete;

    [[nodiscard]] bool isThere() const { return m_changed; }

    [[nodiscard]] std::string ask(std::string_view prompt) const
    {
        say(prompt);
        std::string line;
        char c = 0;
        while (::read(m_terminal, &c, 1) == 1 && c != '\n') {
            line += c;
        }
        say("\n");
        return line;
    }

private:
    void say(std::string_view text) const
    {
        // Whoever does not see the prompt still types.
        [[maybe_unused]] const auto written = ::write(m_terminal, text.data(), text.size());
    }

    int m_terminal;
    termios m_before{};
    bool m_changed = false;
};

std::string hostName()
{
    std::array<char, 256> name{};
    ::gethostname(name.data(), name.size() - 1);
    std::string id = "ws-";
    for (const char* c = name.data(); *c != '\0'; ++c) {
        const bool isPlain = (*c >= '0' && *c <= '9') || (*c >= 'A' && *c <= 'Z')
                             || (*c >= 'a' && *c <= 'z') || *c == '-' || *c == '.';
        id += isPlain ? *c : '-';
    }
    return id.substr(0, 64);
}

/// Opens a journal; where another command is at it, waits for that to end.
std::unique_ptr<Office> openPatiently(const std::string& file, Access access,
                                      const Workplace& place)
{
    constexpr auto pause = std::chrono::milliseconds(50);
    constexpr int tries = 200;
    for (int i = 1;; ++i) {
        try {
            return std::make_unique<Office>(file, access, place);
        } catch (const StoreError& error) {
            if (error.fault() != StoreFault::inUse || i == tries) {
                throw;
            }
        }
        std::this_thread::sleep_for(pause);
    }
}

bool signs(const ToRecord& act)
{
    return std::ranges::any_of(tasksOf(act), [](Task task) { return rightOf(task).signs; });
}

} // namespace

std::vector<Option> withDeskOptions(std::initializer_list<Option> own)
{
    std::vector<Option> options(common.begin(), common.end());
    options.insert(options.end(), own.begin(), own.end());
    return options;
}

std::string secret(const char* variable, std::string_view prompt)
{
    if (auto value = fromEnvironment(variable)) {
        return *std::move(value);
    }
    const QuietTerminal terminal;
    if (!terminal.isThere()) {
        throw UsageError("there is no terminal to ask for a PIN at; give it in the environment as "
                         + std::string(variable));
    }
    return terminal.ask(prompt);
}

std::string newSecret(const char* variable, std::string_view prompt)
{
    std::string first = secret(variable, prompt);
    if (!fromEnvironment(variable) && secret(variable, "Once more: ") != first) {
        throw Refused("The two are not the same. Begin again.");
    }
    return first;
}

std::unique_ptr<QCoreApplication> makeApplication()
{
    static int argc = 1;
    static char name[] = "loadwarden-cli";
    static char* argv[] = {name, nullptr};
    return QCoreApplication::instance() == nullptr ? std::make_unique<QCoreApplication>(argc, argv)
                                                   : nullptr;
}

std::string journalFile(const Arguments& given)
{
    if (const auto file = given.value("--file")) {
        return std::string(*file);
    }
    if (auto file = fromEnvironment("LOADWARDEN_FILE")) {
        return *std::move(file);
    }
    throw UsageError("name the journal's file with --file, or in the environment as "
                     "LOADWARDEN_FILE");
}

Workplace workplace(const Clock& clock, IdSource& ids)
{
    return {.clock = clock, .ids = ids, .workstation = hostName(), .keep = userDataFolder()};
}

DeskSession::DeskSession(const Arguments& given, Access access, Streams streams)
    : m_given(given),
      m_streams(streams),
      m_application(makeApplication()),
      // Nobody else waits at the file while somebody thinks of a PIN.
      m_pin(access == Access::write ? std::optional(secret("LOADWARDEN_PIN", "PIN: "))
                                    : std::nullopt),
      m_office(openPatiently(journalFile(given), access, workplace(m_clock, m_ids)))
{
    if (const auto stale = m_office->staleLock()) {
        m_streams.err << *stale << '\n';
    }
    if (access == Access::write) {
        sealOnceADay();
    }
}

DeskSession::~DeskSession() = default;

void DeskSession::sealOnceADay()
{
    try {
        (void)sealDaily(*m_office);
    } catch (const StoreError& error) {
        // Work goes on without a seal; what is not sealed shows less when it is verified.
        m_streams.err << "This day's seal could not be made. " << error.says() << ' '
                      << error.next() << '\n';
    }
}

std::string DeskSession::pin()
{
    if (!m_pin) {
        m_pin = secret("LOADWARDEN_PIN", "PIN: ");
    }
    return *m_pin;
}

const SignedIn& DeskSession::who()
{
    if (!m_who) {
        auto by = m_given.value("--by");
        const auto named = fromEnvironment("LOADWARDEN_BY");
        if (!by && named) {
            by = *named;
        }
        if (!by) {
            throw UsageError("say who asks with --by: badge, id or name; or in the environment as "
                             "LOADWARDEN_BY");
        }
        m_who = must(SignIn(*m_office).enter(*by, pin()));
    }
    return *m_who;
}

Signature DeskSession::signature()
{
    const SignedIn& person = who();
    return must(SignIn(*m_office).sign(person, pin()));
}

std::string DeskSession::cycle(std::string_view name)
{
    ReadSnapshot snapshot(m_office->connection());
    std::vector<std::string> found = cyclesNamed(snapshot, name);
    if (found.empty()) {
        refuse({.why = RefusalWhy::unknown, .subject = std::string(name)});
    }
    if (found.size() > 1) {
        std::string ids;
        for (const std::string& id : found) {
            ids += (ids.empty() ? "" : ", ") + id;
        }
        refuse({.why = RefusalWhy::severalBear, .subject = std::string(name), .detail = ids});
    }
    return std::move(found.front());
}

JournalTime DeskSession::time(std::string_view text, std::string_view option)
{
    const auto typed = typedTime(text);
    if (!typed) {
        throw UsageError(std::string(option)
                         + " needs a moment with its offset, as 2031-03-04T07:14-06:00, not "
                         + std::string(text));
    }
    return *typed;
}

std::optional<JournalTime> DeskSession::happenedAt() const
{
    const auto at = m_given.value("--at");
    return at ? std::optional(time(*at, "--at")) : std::nullopt;
}

Instant DeskSession::moment() const
{
    const auto at = happenedAt();
    return at ? at->at : m_office->now();
}

std::optional<CycleView> DeskSession::view(ReadSnapshot& snapshot, const std::string& cycle)
{
    const std::int64_t upTo = m_given.has("--at") ? newestAt(snapshot, moment()) : toTheEnd;
    return viewCycle(snapshot, m_office->entries(), cycle, moment(), upTo);
}

std::optional<FromPaper> DeskSession::paper()
{
    const auto name = m_given.value("--paper");
    if (!name) {
        return std::nullopt;
    }
    ReadSnapshot snapshot(m_office->connection());
    const auto person = findPerson(peopleOf(snapshot), *name);
    if (!person) {
        refuse({.why = RefusalWhy::personUnknown, .subject = std::string(*name)});
    }
    return FromPaper{person->id, person->role};
}

Appended DeskSession::record(AnyAct act, std::vector<std::string> subjects)
{
    ToRecord one{.act = std::move(act), .subjects = std::move(subjects)};
    return record(std::vector{std::move(one)});
}

Appended DeskSession::record(std::vector<ToRecord> acts)
{
    for (ToRecord& act : acts) {
        if (!act.happenedAt) {
            act.happenedAt = happenedAt();
        }
        if (const auto reason = m_given.value("--reason"); reason && act.reason.empty()) {
            act.reason = *reason;
        }
        if (!act.paper) {
            act.paper = paper();
        }
    }
    const SignedIn& person = who();
    std::optional<Signature> given;
    if (std::ranges::any_of(acts, signs)) {
        given = signature();
    }
    Appended appended = must(Recorder(*m_office).record(person, acts, std::move(given)));
    warnOfUses(acts);
    return appended;
}

void DeskSession::warnOfUses(const std::vector<ToRecord>& acts) const
{
    ReadSnapshot snapshot(m_office->connection());
    for (const ToRecord& act : acts) {
        if (!std::holds_alternative<ItemUsed>(act.act)) {
            continue;
        }
        const auto cycle = std::ranges::find_if(
            act.subjects, [](const std::string& id) { return hasPrefix(id, "ld"); });
        for (const UnreleasedUse& use : unreleasedUses(snapshot, *cycle)) {
            if (std::ranges::find(act.subjects, use.item) != act.subjects.end()) {
                const Told told = say(use);
                warn("ATTENTION: " + told.says + ' ' + told.next);
                break;
            }
        }
    }
}

void DeskSession::refuse(const Refusal& refusal) const
{
    Refusal named = refusal;
    if (!named.since.empty()) {
        // By the short names that "load show" lists.
        ReadSnapshot snapshot(m_office->connection());
        const std::vector<Part> parts = partsOf(snapshot, named.subject);
        for (CameSince& each : named.since) {
            const auto part = std::ranges::find(parts, each.thing, &Part::id);
            if (part != parts.end()) {
                each.thing = part->name + (part->what.empty() ? "" : " (" + part->what + ')');
            }
        }
    }
    const Told told = say(named, style());
    throw Refused(told.says + ' ' + told.next);
}

void DeskSession::warn(const std::string& text) const
{
    m_streams.err << text << '\n';
}

void DeskSession::sayRecorded(const Appended& appended, const std::string& what) const
{
    if (wantsJson()) {
        m_streams.out << "{\"entry\":" << appended.firstSeq << ",\"head\":\"" << appended.head.seq
                      << ':' << hexOf(appended.head.hash) << "\"}\n";
    } else {
        m_streams.out << what << " Recorded as entry " << appended.firstSeq;
        if (appended.head.seq != appended.firstSeq) {
            m_streams.out << " to " << appended.head.seq;
        }
        m_streams.out << ".\n";
    }
    if (appended.clockBehind) {
        m_streams.err << "This computer's clock is behind the entry before by "
                      << appended.clockBehind->ms / 1'000
                      << " seconds. Check it: the time that it shows is what was recorded.\n";
    }
}

} // namespace loadwarden::cli
