#pragma once
// The words "ok", "caution", "will likely break", and how much strain each allows.

namespace kerfpacket::bend {

enum class Verdict { ok, caution, break_likely };

/// Utilisation (strain over break strain) up to which a bend is called ok, and caution; above: will likely break.
inline constexpr double ok_up_to = 0.60;
inline constexpr double caution_up_to = 0.90;
/// How much more the strain may be than calculated, while no coupon was bent. Judgement: src/bend/NOTES.md.
inline constexpr double uncertainty = 0.25;

/// Of the strain alone.
inline Verdict strain_verdict(double utilisation) {
    if (utilisation > caution_up_to) return Verdict::break_likely;
    return utilisation > ok_up_to ? Verdict::caution : Verdict::ok;
}

}  // namespace kerfpacket::bend
