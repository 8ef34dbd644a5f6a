#include "core/acts/codec.h"

#include "core/acts/bodies/bodies.h"
#include "core/journal/canonical_json.h"
#include "core/quantities/role_words.h"

#include <nlohmann/json.hpp>

namespace loadwarden {

namespace body_format {

template <class Io>
void members(Io& io, Ref<Io, FromPaper> paper)
{
    io.must("by", paper.by, IdOf{"st"});
    io.must("role", paper.role, oneOf<roleWords>);
}

namespace {

constexpr const char* paperMember = "paper";

std::string write(const ActBody& body)
{
    if (const auto* unknown = std::get_if<NotUnderstood>(&body.act)) {
        return unknown->body;
    }
    Writer writer;
    std::visit(
        [&writer]<class Act>(const Act& act) {
            if constexpr (!std::is_same_v<Act, NotUnderstood>) {
                describe(writer, act);
            }
        },
        body.act);
    writer.may(paperMember, body.paper, nested<FromPaper>);
    std::string text;
    writer.take(text);
    return text;
}

using ReadAct = void (*)(Reader& reader, AnyAct& act);

/// How each kind is read, in the order of AnyAct without its first.
constexpr ReadAct readers[]{
#define LW_ACT(Struct, kind, version, paper, subjects)                                             \
    [](Reader& reader, AnyAct& act) { describe(reader, act.emplace<Struct>()); },
#include "core/acts/acts.def"
#undef LW_ACT
};

ActFault faultOf(std::string_view kind, const Trouble& trouble)
{
    std::string what = "In an entry of the kind \"" + std::string(kind) + "\" ";
    what += trouble.where.empty()
                ? "the body"
                : "the member \"" + trouble.where.substr(1) + '"'; // without its first stroke
    return {what + ' ' + trouble.what + '.'};
}

std::variant<ActBody, ActFault> read(const KindOfAct& kind, const Node& from)
{
    ActBody body;
    Trouble trouble;
    Reader reader(from, trouble);
    if (trouble.what.empty()) {
        readers[indexOf(kind) - 1](reader, body.act);
        if (kind.fromPaper) {
            reader.may(paperMember, body.paper, nested<FromPaper>);
        }
        reader.finish();
    }
    if (!trouble.what.empty()) {
        return faultOf(kind.kind, trouble);
    }
    return body;
}

/// Brings a body up to the version that is read now; nullopt where a step is missing or fails.
std::optional<std::string> broughtUp(const KindOfAct& kind, std::int32_t version,
                                     std::string_view text, std::span<const Upcaster> upcasters)
{
    // Deeper than any body, so that a strange one cannot use up the stack.
    constexpr int deepest = 16;
    const auto shallow = [](int depth, nlohmann::json::parse_event_t, nlohmann::json&) {
        return depth <= deepest;
    };
    nlohmann::json body = nlohmann::json::parse(text, shallow);
    for (; version < kind.version; ++version) {
        const auto step = std::ranges::find_if(upcasters, [&](const Upcaster& each) {
            return each.kind == kind.kind && each.from == version;
        });
        if (step == upcasters.end()) {
            return std::nullopt;
        }
        body = step->up(std::move(body));
    }
    return canonicalJson(body);
}

} // namespace
} // namespace body_format

std::string encodeBody(const ActBody& body)
{
    return body_format::write(body);
}

std::variant<ActBody, ActFault> decodeBody(std::string_view kind, std::int32_t version,
                                           std::string_view body,
                                           std::span<const Upcaster> upcasters)
{
    using namespace body_format;
    const KindOfAct* const known = findKind(kind);
    if (known == nullptr || version > known->version) {
        return ActBody{NotUnderstood{std::string(kind), version, std::string(body)}, {}};
    }
    const auto named = [kind] { return "of the kind \"" + std::string(kind) + '"'; };
    const auto noJson = [&named] {
        return ActFault{"The body of an entry " + named()
                        + " cannot be read as JSON of its version."};
    };
    std::optional<std::string> up;
    if (version < known->version) {
        try {
            up = broughtUp(*known, version, body, upcasters);
        } catch (const nlohmann::json::exception&) {
            return noJson();
        }
        if (!up) {
            return ActFault{"An entry " + named() + " has the version " + std::to_string(version)
                            + ", which never was."};
        }
    }
    const std::optional<Tree> tree = readTree(up ? *up : body);
    if (!tree) {
        return noJson();
    }
    std::variant<ActBody, ActFault> result = read(*known, tree->front());
    // What was brought up was written in another way, once.
    if (const auto* const read = std::get_if<ActBody>(&result);
        read != nullptr && !up && encodeBody(*read) != body) {
        return ActFault{"The body of an entry " + named()
                        + " is not written as this program writes it."};
    }
    return result;
}

} // namespace loadwarden
