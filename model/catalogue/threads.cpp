#include "model/catalogue/threads.h"

#include <cmath>

namespace model {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double full_height = 1.2990;  // of both sides, in pitches

}  // namespace

engine::Length numbered_screw_diameter(int number) {
    constexpr auto thousandth = engine::Length::from_nm(engine::Length::nm_per_inch / 1000);
    return thousandth * 60 + thousandth * (std::int64_t{13} * number);
}

double percent_of_thread(engine::Length major, engine::Length pitch, engine::Length hole) {
    return 100.0 * (major - hole).mm() / (full_height * pitch.mm());
}

engine::Length tap_hole(engine::Length major, engine::Length pitch, double percent) {
    const double cut = full_height * static_cast<double>(pitch.nm()) * percent / 100.0;
    return major - engine::Length::from_nm(std::llround(cut));
}

TapHole judge_tap_hole(const MachineScrew& screw, engine::Length hole) {
    if (hole < screw.minor_least) return TapHole::too_small;
    return hole > screw.minor_most ? TapHole::too_large : TapHole::right;
}

double stress_area_mm2(MeasureSystem system, engine::Length major, engine::Length pitch) {
    const double pitches = system == MeasureSystem::inch ? 0.9743 : 0.9382;
    const double diameter = major.mm() - pitches * pitch.mm();
    return pi / 4.0 * diameter * diameter;
}

double internal_strip_area_mm2(const ThreadMeeting& meeting) {
    const double tooth = meeting.pitch / 2.0 + 0.57735 * (meeting.external_major_least -
                                                          meeting.internal_pitch_diameter_most);
    return pi * meeting.engagement / meeting.pitch * meeting.external_major_least * tooth;
}

double engagement_for_equal_metals_mm(double stress_area_mm2, double major_mm, double pitch_mm) {
    return 2.0 * stress_area_mm2 / (pi / 2.0 * (major_mm - 0.64952 * pitch_mm));
}

double threads_in_wall(engine::Length wall, engine::Length pitch) { return wall.mm() / pitch.mm(); }

bool has_enough_threads(engine::Length wall, engine::Length pitch) {
    return threads_in_wall(wall, pitch) >= threads_least - 1e-6;
}

}  // namespace model
