#pragma once

#include "core/desk/sign_in.h"

#include <span>
#include <vector>

namespace loadwarden {

/// Records what people do and see: asks who they are and what they may, whether what they say fits
/// what stands in the journal, and writes it down. Dispositions, emergency releases and reviews,
/// which rest on a decision, go through Dispositions; PINs through SignIn.
class Recorder {
public:
    explicit Recorder(Office& office) : m_office(office) {}

    /// Records acts of one person together or not at all; each may build on those before it.
    /// `signature` is asked for where any of the acts needs one.
    [[nodiscard]] OrRefusal<Appended> record(const SignedIn& who, std::span<const ToRecord> acts,
                                             const Signature* signature = nullptr);

    [[nodiscard]] OrRefusal<Appended> record(const SignedIn& who, const ToRecord& act,
                                             const Signature* signature = nullptr)
    {
        return record(who, std::span(&act, 1), signature);
    }

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
