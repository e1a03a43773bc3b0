#pragma once
// What a job is planned as, or refused for.

#include <algorithm>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include "jobs.h"
#include "plan/plan.h"

namespace kerfpacket::tests {

/// The first piece of a job that can be made.
inline plan::Piece only_piece(const job::Job& job) {
    auto plan = plan::make_plan(job);
    if (!plan) throw std::runtime_error(plan.error().front().message + ": " + plan.error().front().hint);
    return plan->pieces.at(0);
}

inline plan::Piece only_piece(const job::Wall& one) { return only_piece(job_of(one)); }

/// The first reason of a job that cannot.
inline job::Diagnostic refusal(const job::Job& job) {
    const auto plan = plan::make_plan(job);
    EXPECT_FALSE(plan);
    return plan ? job::Diagnostic{} : plan.error().front();
}

/// Whether that caution is among the piece's.
inline bool has(const plan::Piece& piece, const std::string& key) {
    return std::any_of(piece.cautions.begin(), piece.cautions.end(),
                       [&](const plan::Caution& caution) { return caution.key == key; });
}

}  // namespace kerfpacket::tests
