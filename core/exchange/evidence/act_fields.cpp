#include "core/exchange/evidence/object_types.h"

namespace loadwarden::evidence_format {

namespace {

constexpr auto act = actFields();

} // namespace

constinit const ObjectType actType = signedType("an act", act);

} // namespace loadwarden::evidence_format
