#pragma once

#include "core/desk/person.h"
#include "ui/shell/desk_link.h"

#include <QObject>

#include <functional>
#include <optional>

namespace loadwarden::ui {

/// Who works at this workstation, and whether the window is locked.
class Session : public QObject {
    Q_OBJECT

public:
    explicit Session(DeskLink& desk, QObject* parent = nullptr) : QObject(parent), m_desk(desk) {}

    /// nullopt: nobody yet.
    [[nodiscard]] const std::optional<SignedIn>& who() const { return m_who; }
    /// Meaningless where nobody is signed in.
    [[nodiscard]] const Person& person() const { return m_person; }
    [[nodiscard]] bool isLocked() const { return m_isLocked; }

    /// Signs somebody in by badge, id or name and a PIN; `refused` is called with why not.
    void enter(const std::string& who, const std::string& pin,
               std::function<void(const Refusal&)> refused);

    /// Asks for a PIN before anything more is shown; what stands on the pages stays.
    void lock();

    /// What is signed runs on the desk's thread with a signature for it.
    using Signing = std::function<OrRefusal<Appended>(Office&, const SignedIn&, Signature)>;

    /// The same for two things that one PIN signs together.
    using SigningTwice =
        std::function<OrRefusal<Appended>(Office&, const SignedIn&, Signature, Signature)>;

    void signTwice(QObject* context, const std::string& pin, SigningTwice signing,
                   std::function<void(OrRefusal<Appended>)> done, std::function<void()> failed);

    /// Signs as who is signed in.
    void sign(QObject* context, const std::string& pin, Signing signing,
              std::function<void(OrRefusal<Appended>)> done, std::function<void()> failed);

signals:
    void entered();
    void locked();

private:
    DeskLink& m_desk;
    std::optional<SignedIn> m_who;
    Person m_person;
    bool m_isLocked = false;
};

} // namespace loadwarden::ui
