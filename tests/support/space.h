#pragma once
// Points and kerf lines in space: what was cut flat and folded, laid on what it is to lie on.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace kerfpacket::tests {

using V = std::array<double, 3>;

inline V operator+(const V& a, const V& b) { return {a[0] + b[0], a[1] + b[1], a[2] + b[2]}; }
inline V operator-(const V& a, const V& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }
inline V operator*(const V& a, double f) { return {a[0] * f, a[1] * f, a[2] * f}; }
inline double dot(const V& a, const V& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
inline V cross(const V& a, const V& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
inline double norm(const V& a) { return std::sqrt(dot(a, a)); }
inline V unit(const V& a) { return a * (1 / norm(a)); }

/// Turned about an axis through the origin.
inline V turned(const V& p, const V& axis, double angle) {
    return p * std::cos(angle) + cross(axis, p) * std::sin(angle) + axis * (dot(axis, p) * (1 - std::cos(angle)));
}

struct KerfLine {
    V front, back;
};

/// Flat lines from left to right; each folds what lies to its right about itself, from its back to its front, by its
/// turn.
inline std::vector<KerfLine> folded(std::vector<KerfLine> lines, const std::vector<double>& turns) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const V axis = unit(lines[i].front - lines[i].back);
        for (std::size_t k = i + 1; k < lines.size(); ++k)
            for (V* p : {&lines[k].front, &lines[k].back})
                *p = turned(*p - lines[i].back, axis, turns[i]) + lines[i].back;
    }
    return lines;
}

/// The farthest that any end of a line is off, the first laid on the first as a rigid body: lines and the plane that
/// the first two make are brought together.
inline double worst(const std::vector<KerfLine>& made, const std::vector<KerfLine>& wanted) {
    const auto frame = [](const std::vector<KerfLine>& lines) {
        const std::size_t middle = lines.size() / 2;
        const V up = unit(lines[middle].front - lines[middle].back);
        V along = lines[middle + 1].back - lines[middle - 1].back;
        along = unit(along - up * dot(along, up));
        return std::array<V, 4>{lines[middle].back, along, up, cross(along, up)};
    };
    const auto own = [](const std::array<V, 4>& f, const V& p) {
        const V d = p - f[0];
        return V{dot(d, f[1]), dot(d, f[2]), dot(d, f[3])};
    };
    const auto a = frame(made);
    const auto b = frame(wanted);
    double far = 0;
    for (std::size_t i = 0; i < made.size(); ++i) {
        far = std::max(far, norm(own(a, made[i].front) - own(b, wanted[i].front)));
        far = std::max(far, norm(own(a, made[i].back) - own(b, wanted[i].back)));
    }
    return far;
}

}  // namespace kerfpacket::tests
