#include "model/catalogue/thread_strength.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

constexpr double mm_per_inch = 25.4;
constexpr double newtons_per_pound = 4.4482216;
constexpr double mpa_per_ksi = 6.8947573;

// ASME B1.1, section 5, class 2A and 2B; inches. The length of engagement that the tolerance is
// for is one diameter.
ThreadMeeting inch_meeting(double diameter, double pitch) {
    const double pitch_two_thirds = std::cbrt(pitch * pitch);
    const double tolerance_2a =
        0.0015 * std::cbrt(diameter) + 0.0015 * std::sqrt(diameter) + 0.015 * pitch_two_thirds;
    const double allowance = 0.3 * tolerance_2a;
    const double tolerance_2b = 1.3 * tolerance_2a;
    return {.external_major_least = diameter - allowance - 0.06 * pitch_two_thirds,
            .internal_pitch_diameter_most = diameter - 0.649519 * pitch + tolerance_2b};
}

// ISO 965-1, 6g and 6H; millimetres.
ThreadMeeting metric_meeting(double diameter, double pitch) {
    const double pitch_third = std::cbrt(pitch);
    const double allowance = 0.015 + 0.011 * pitch;
    const double major_tolerance = 0.180 * pitch_third * pitch_third - 0.00315 / std::sqrt(pitch);
    const double pitch_tolerance = 1.32 * 0.090 * std::pow(pitch, 0.4) * std::pow(diameter, 0.1);
    return {.external_major_least = diameter - allowance - major_tolerance,
            .internal_pitch_diameter_most = diameter - 0.649519 * pitch + pitch_tolerance};
}

}  // namespace

ThreadMeeting worst_meeting(const MachineScrew& screw, engine::Length engagement) {
    const double d = screw.diameter.mm();
    const double p = screw.pitch.mm();
    ThreadMeeting meeting = metric_meeting(d, p);
    if (screw.system == MeasureSystem::inch) {
        meeting = inch_meeting(d / mm_per_inch, p / mm_per_inch);
        meeting.external_major_least *= mm_per_inch;
        meeting.internal_pitch_diameter_most *= mm_per_inch;
    }
    meeting.pitch = p;
    meeting.engagement = engagement.mm();
    return meeting;
}

std::optional<double> pull_out_n(const PullOut& screw) {
    const double d = screw.diameter_in;
    const double le = screw.engagement_in;
    const double yield = screw.yield_mpa / mpa_per_ksi * 1000.0;  // psi
    const double ultimate = screw.ultimate_mpa / mpa_per_ksi * 1000.0;
    double pounds = 0.0;
    if (le < 0.060 || le > 0.375) return std::nullopt;
    if (le < 0.080) {
        pounds = 1.01 * d * le * yield;
    } else if (le <= 0.125) {
        pounds = 1.2 * d * le * yield;
    } else if (le <= 0.25) {
        pounds = 1.2 * d * yield * (0.25 - le) +
                 1.16 * screw.strip_area_in2_per_in * ultimate * (le - 0.125);
    } else {
        pounds = 0.58 * screw.strip_area_in2_per_in * le * ultimate;
    }
    return pounds * newtons_per_pound;
}

double strip_force_n(const MachineScrew& screw, engine::Length engagement, const Alloy& wall) {
    const double area = internal_strip_area_mm2(worst_meeting(screw, engagement));
    const double shear = 0.6 * wall.ultimate_mpa * area;
    if (screw.system != MeasureSystem::inch) return shear;
    const double an_inch = internal_strip_area_mm2(worst_meeting(
                               screw, engine::Length::from_nm(engine::Length::nm_per_inch))) /
                           (mm_per_inch * mm_per_inch);
    const auto pull_out = pull_out_n({.diameter_in = screw.diameter.inches(),
                                      .engagement_in = engagement.inches(),
                                      .strip_area_in2_per_in = an_inch,
                                      .yield_mpa = wall.yield_mpa,
                                      .ultimate_mpa = wall.ultimate_mpa});
    return pull_out ? std::min(shear, *pull_out) : shear;
}

double screw_force_n(const MachineScrew& screw) {
    const double strength_mpa = screw.system == MeasureSystem::inch ? 60.0 * mpa_per_ksi : 420.0;
    return screw.stress_area_mm2 * strength_mpa;
}

}  // namespace model
