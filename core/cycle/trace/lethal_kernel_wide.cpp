#define LOADWARDEN_LETHAL_KERNEL wide
#include "core/cycle/trace/lethal_kernel.inc"
