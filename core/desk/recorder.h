#pragma once

#include "core/desk/sign_in.h"

#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace loadwarden {

/// Records what people do and see: asks who they are and what they may, whether what they say fits
/// what stands in the journal, and writes it down. Reservations go through reserveCycle();
/// dispositions, emergency releases and reviews, which rest on a decision, through Dispositions;
/// PINs through SignIn.
class Recorder {
public:
    explicit Recorder(Office& office) : m_office(office) {}

    /// Records acts of one person together or not at all; each may build on those before it.
    /// `signature` is asked for where any of the acts needs one, and is used up.
    [[nodiscard]] OrRefusal<Appended> record(const SignedIn& who, std::span<const ToRecord> acts,
                                             std::optional<Signature> signature = {});

    [[nodiscard]] OrRefusal<Appended> record(const SignedIn& who, const ToRecord& act,
                                             std::optional<Signature> signature = {})
    {
        return record(who, std::span(&act, 1), std::move(signature));
    }

    /// Records a trace that was read for the first time (TraceRead, which need not say hash and
    /// size), and keeps the file's bytes with it, both or neither.
    [[nodiscard]] OrRefusal<Appended> attach(const SignedIn& who, ToRecord act,
                                             std::string_view bytes);

    /// Why record() would refuse them, whoever signs; nullopt where only the signature is open. So
    /// that what is wrong is said before anybody types a PIN.
    [[nodiscard]] std::optional<Refusal> whyNot(const SignedIn& who,
                                                std::span<const ToRecord> acts);

private:
    Office& m_office;
};

/// Who signs acts as somebody who may do the task now; a refusal where they are unknown, gone, may
/// not, or where a PIN is needed and `signature` is none of theirs or too old.
[[nodiscard]] OrRefusal<Author> authorFor(ReadSnapshot& snapshot, const SignedIn& who, Task task,
                                          const Signature* signature, Instant now);

/// What recording an act asks for: of an amendment that of amending, too.
[[nodiscard]] std::vector<Task> tasksOf(const ToRecord& act);

} // namespace loadwarden
