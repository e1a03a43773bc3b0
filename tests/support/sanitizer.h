#pragma once
// Whether the tests were built with the address sanitizer (the asan preset). Its own memory counts as the program's,
// and its runtime refuses to be loaded behind another library: what measures memory, or preloads a clock, says nothing
// then.

namespace kerfpacket::tests {

// gcc defines a macro; clang answers a question.
#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool address_sanitizer = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool address_sanitizer = true;
#else
inline constexpr bool address_sanitizer = false;
#endif
#else
inline constexpr bool address_sanitizer = false;
#endif

}  // namespace kerfpacket::tests
