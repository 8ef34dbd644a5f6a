#pragma once

#include "core/desk/office.h"
#include "core/desk/person.h"
#include "core/desk/pin_book.h"

#include <string>
#include <string_view>

namespace loadwarden {

/// Somebody who is signed in: only a right PIN makes one. What they may do is asked anew of the
/// journal at each act.
class SignedIn {
public:
    [[nodiscard]] const std::string& id() const { return m_id; }

private:
    friend class SignIn;

    explicit SignedIn(std::string id) : m_id(std::move(id)) {}

    std::string m_id;
};

/// A PIN given for what is signed now: good for one signing, and for two minutes.
class Signature {
public:
    Signature(Signature&&) = default;
    Signature& operator=(Signature&&) = default;
    Signature(const Signature&) = delete;
    Signature& operator=(const Signature&) = delete;

    [[nodiscard]] const std::string& id() const { return m_id; }
    [[nodiscard]] bool isGood(Instant now) const;

private:
    friend class SignIn;

    Signature(std::string id, Instant at) : m_id(std::move(id)), m_at(at) {}

    std::string m_id;
    Instant m_at;
};

/// The door: badge or name and PIN.
class SignIn {
public:
    explicit SignIn(Office& office) : m_office(office) {}

    /// Signs somebody in by id, badge or name.
    [[nodiscard]] OrRefusal<SignedIn> enter(std::string_view who, std::string_view pin);

    /// Signs: the PIN of who is signed in.
    [[nodiscard]] OrRefusal<Signature> sign(const SignedIn& who, std::string_view pin);

    /// Sets somebody's PIN: their own, or, by a supervisor, another's. `signature` is of who asks.
    [[nodiscard]] OrRefusal<Appended> setPin(const SignedIn& who, Signature signature,
                                             const std::string& person, std::string_view pin);

private:
    [[nodiscard]] std::optional<Refusal> check(const Person& person, std::string_view pin);

    Office& m_office;
};

} // namespace loadwarden
