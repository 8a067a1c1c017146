/// How a function whose definition stands in an implementation half (`.ipp`, beside its header) is defined. Headers
/// include their halves, and all is inline. A program that links `groat::compiled` has GROAT_COMPILED defined by it:
/// headers then only declare, and the halves are compiled once, in that library.
#pragma once

#ifdef GROAT_COMPILED
#define GROAT_INLINE
#else
#define GROAT_INLINE inline
#endif
