#pragma once
// Lengths and angles as types of their own, so that a bare double never crosses a function boundary as either.

#include <cmath>
#include <compare>

namespace kerfpacket::measure {

/// A signed length. Stored in millimetres; one inch is 25.4 mm exactly, one point is 1/72 in.
class Length {
public:
    constexpr Length() = default;
    static constexpr Length mm(double value) { return Length(value); }
    static constexpr Length inches(double value) { return Length(value * 25.4); }
    static constexpr Length points(double value) { return Length(value * (25.4 / 72.0)); }

    constexpr double mm() const { return mm_; }
    constexpr double inches() const { return mm_ / 25.4; }
    constexpr double points() const { return mm_ * (72.0 / 25.4); }
    bool finite() const { return std::isfinite(mm_); }

    constexpr auto operator<=>(const Length&) const =
        default;  // NOLINT(modernize-use-nullptr): clang-tidy 14's mistake
    constexpr Length operator-() const { return Length(-mm_); }
    constexpr Length& operator+=(Length other) {
        mm_ += other.mm_;
        return *this;
    }
    constexpr Length& operator-=(Length other) {
        mm_ -= other.mm_;
        return *this;
    }
    constexpr Length& operator*=(double factor) {
        mm_ *= factor;
        return *this;
    }
    friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
    friend constexpr Length operator*(Length a, double factor) { return Length(a.mm_ * factor); }
    friend constexpr Length operator*(double factor, Length a) { return Length(a.mm_ * factor); }
    friend constexpr Length operator/(Length a, double divisor) { return Length(a.mm_ / divisor); }
    friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }

private:
    explicit constexpr Length(double mm) : mm_(mm) {}
    double mm_ = 0;
};

inline Length abs(Length a) { return Length::mm(std::abs(a.mm())); }
/// sqrt(a^2 + b^2).
inline Length hypot(Length a, Length b) { return Length::mm(std::hypot(a.mm(), b.mm())); }

/// A signed angle, anticlockwise positive. Stored in radians.
class Angle {
public:
    constexpr Angle() = default;
    static constexpr Angle radians(double value) { return Angle(value); }
    static constexpr Angle degrees(double value) { return Angle(value * (pi / 180.0)); }

    constexpr double radians() const { return radians_; }
    constexpr double degrees() const { return radians_ * (180.0 / pi); }

    constexpr auto operator<=>(const Angle&) const = default;  // NOLINT(modernize-use-nullptr): the same
    constexpr Angle operator-() const { return Angle(-radians_); }
    friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.radians_ + b.radians_); }
    friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.radians_ - b.radians_); }
    friend constexpr Angle operator*(Angle a, double factor) { return Angle(a.radians_ * factor); }
    friend constexpr Angle operator/(Angle a, double divisor) { return Angle(a.radians_ / divisor); }
    friend constexpr double operator/(Angle a, Angle b) { return a.radians_ / b.radians_; }

    static constexpr double pi = 3.14159265358979323846;

private:
    explicit constexpr Angle(double radians) : radians_(radians) {}
    double radians_ = 0;
};

/// Length of the arc that a radius sweeps through an angle.
inline constexpr Length arc_length(Length radius, Angle angle) { return radius * angle.radians(); }

inline namespace literals {
constexpr Length operator""_mm(long double v) { return Length::mm(static_cast<double>(v)); }
constexpr Length operator""_mm(unsigned long long v) { return Length::mm(static_cast<double>(v)); }
constexpr Length operator""_in(long double v) { return Length::inches(static_cast<double>(v)); }
constexpr Length operator""_in(unsigned long long v) { return Length::inches(static_cast<double>(v)); }
constexpr Length operator""_pt(long double v) { return Length::points(static_cast<double>(v)); }
constexpr Length operator""_pt(unsigned long long v) { return Length::points(static_cast<double>(v)); }
}  // namespace literals

}  // namespace kerfpacket::measure
