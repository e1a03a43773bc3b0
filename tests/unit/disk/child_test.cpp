#include "disk/child.h"

#include <gtest/gtest.h>

#include <atomic>
#include <csignal>
#include <cstdlib>
#include <stdexcept>

namespace kerfpacket::tests {
namespace {

constexpr disk::Limits limits{256U << 20U, 1, 1000};

std::string told(const std::function<std::string()>& work) {
    try {
        return "answered: " + disk::in_child(work, limits, "a.pdf", "over");
    } catch (const std::runtime_error& error) { return error.what(); }
}

TEST(Child, GivesItsAnswerOrItsWords) {
    EXPECT_EQ(told([] { return std::string("12\0034", 4); }), "answered: " + std::string("12\0034", 4));
    EXPECT_EQ(told([] { return std::string(); }), "answered: ");
    EXPECT_EQ(told([]() -> std::string { throw std::runtime_error("is no PDF"); }), "is no PDF");
}

TEST(Child, ThatGoesOverALimitOrCrashesIsToldSo) {
    EXPECT_EQ(told([] { return std::string(999, 'x'); }), "answered: " + std::string(999, 'x'));
    EXPECT_EQ(told([] { return std::string(1000, 'x'); }), "over");
    EXPECT_EQ(told([] { return std::string(50U << 20U, 'x'); }), "over");
    EXPECT_EQ(told([] { return std::to_string(std::string(1U << 30U, 'x').size()); }), "over");
    EXPECT_EQ(told([]() -> std::string {
                  for (std::atomic<unsigned> turns = 0;;) ++turns;
              }),
              "over");
    EXPECT_EQ(told([]() -> std::string {
                  std::raise(SIGKILL);
                  return "still here";
              }),
              "over");
}

TEST(Child, ChangesNothingHere) {
    int here = 1;
    EXPECT_EQ(told([&] { return std::to_string(++here); }), "answered: 2");
    EXPECT_EQ(here, 1);
}

}  // namespace
}  // namespace kerfpacket::tests
