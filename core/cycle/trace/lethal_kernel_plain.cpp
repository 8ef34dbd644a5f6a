#define LOADWARDEN_LETHAL_KERNEL plain
#include "core/cycle/trace/lethal_kernel.inc"
