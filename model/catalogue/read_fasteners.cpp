#include "model/catalogue/read_tables.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace model {
namespace {

constexpr double mm_per_inch = 25.4;

// Reads the drill of a column and checks that there is one of that name.
std::string drill_name(Row& row, std::string_view column, const std::vector<Drill>& drills) {
    auto name = row.text(column);
    if (std::none_of(drills.begin(), drills.end(),
                     [&](const Drill& d) { return d.name == name; })) {
        row.fail(column, "there is no drill '" + name + "' in catalogue/drills.csv");
    }
    return name;
}

engine::Length diameter_of(const std::vector<Drill>& drills, const std::string& name) {
    for (const auto& drill : drills) {
        if (drill.name == name) return drill.diameter;
    }
    return {};
}

Drill read_drill(Row& row) {
    Drill drill;
    drill.name = row.text("name");
    drill.series = row.text("series");
    drill.diameter = row.length("diameter", MeasureSystem::inch);
    drill.source = row.text("source");
    if (drill.diameter == engine::Length{}) row.fail("diameter", "a drill has to have a diameter");
    return drill;
}

BlindRivet read_rivet(Row& row, const std::vector<Drill>& drills) {
    BlindRivet rivet;
    rivet.id = row.text("id");
    const auto system = rivet.system = row.system();
    rivet.diameter = row.length("diameter", system);
    rivet.body_diameter_most = row.length("body_diameter_most", system);
    rivet.head_diameter_most = row.length("head_diameter_most", system);
    rivet.head_height_most = row.length("head_height_most", system);
    rivet.hole_least = row.length("hole_least", system);
    rivet.hole_most = row.length("hole_most", system);
    rivet.drill = drill_name(row, "drill", drills);
    rivet.blind_side_extra = row.length("blind_side_extra", system);
    rivet.shear_n = row.number_or_zero("shear_n");
    rivet.tension_n = row.number_or_zero("tension_n");
    rivet.source = row.text("source");
    if (rivet.hole_least > rivet.hole_most) row.fail("hole_most", "is less than hole_least");
    return rivet;
}

struct NamedGrip {
    std::string rivet;
    RivetGrip grip;
};

NamedGrip read_grip(Row& row, const std::vector<BlindRivet>& rivets) {
    NamedGrip named;
    named.rivet = row.text("rivet");
    const auto rivet = std::find_if(rivets.begin(), rivets.end(),
                                    [&](const BlindRivet& r) { return r.id == named.rivet; });
    if (rivet == rivets.end()) {
        row.fail("rivet", "there is no '" + named.rivet + "' in catalogue/blind_rivets.csv");
        return named;
    }
    named.grip.code = row.text("code");
    named.grip.least = row.length("least", rivet->system);
    named.grip.most = row.length("most", rivet->system);
    named.grip.body_length = row.length("body_length", rivet->system);
    named.grip.source = row.text("source");
    if (named.grip.least >= named.grip.most) row.fail("most", "is not more than least");
    return named;
}

MachineScrew read_screw(Row& row, const std::vector<Drill>& drills) {
    MachineScrew screw;
    screw.id = row.text("id");
    const auto system = screw.system = row.system();
    screw.diameter = row.length("diameter", system);
    if (system == MeasureSystem::inch) {
        screw.threads_per_inch = row.number("threads_per_inch");
        if (screw.threads_per_inch <= 0.0) row.fail("threads_per_inch", "has to be more than 0");
        screw.pitch =
            engine::Length::from_nm(std::llround(static_cast<double>(engine::Length::nm_per_inch) /
                                                 std::max(screw.threads_per_inch, 1.0)));
    } else {
        screw.pitch = row.length("pitch", system);
        if (screw.pitch <= engine::Length{})
            row.fail("pitch", "has to be more than 0");
        else
            screw.threads_per_inch = mm_per_inch / screw.pitch.mm();
    }
    screw.minor_least = row.length("minor_least", system);
    screw.minor_most = row.length("minor_most", system);
    const double unit = system == MeasureSystem::inch ? mm_per_inch * mm_per_inch : 1.0;
    screw.stress_area_mm2 = row.number("stress_area") * unit;
    screw.tap_drill = drill_name(row, "tap_drill", drills);
    screw.clearance_drill = drill_name(row, "clearance_drill", drills);
    screw.free_drill = drill_name(row, "free_drill", drills);
    screw.loose_drill = drill_name(row, "loose_drill", drills);
    screw.head_diameter_most = row.length("head_diameter_most", system);
    screw.head_height_most = row.length("head_height_most", system);
    screw.nut_width_most = row.length("nut_width_most", system);
    screw.nut_height_most = row.length("nut_height_most", system);
    screw.lengths = row.lengths("lengths", system);
    screw.source = row.text("source");
    return screw;
}

RivetNut read_rivet_nut(Row& row,
                        const std::vector<MachineScrew>& screws,
                        const std::vector<Drill>& drills) {
    RivetNut nut;
    nut.id = row.text("id");
    const auto system = row.system();
    nut.screw = row.text("screw");
    if (std::none_of(screws.begin(), screws.end(),
                     [&](const MachineScrew& s) { return s.id == nut.screw; })) {
        row.fail("screw", "there is no '" + nut.screw + "' in catalogue/machine_screws.csv");
    }
    nut.drill = drill_name(row, "drill", drills);
    nut.grip_least = row.length("grip_least", system);
    nut.grip_most = row.length("grip_most", system);
    nut.body_length = row.length("body_length", system);
    nut.rim_diameter = row.length("rim_diameter", system);
    nut.rim_height = row.length("rim_height", system);
    nut.source = row.text("source");
    if (nut.grip_least >= nut.grip_most) row.fail("grip_most", "is not more than grip_least");
    return nut;
}

SheetPin read_pin(Row& row, const std::vector<Drill>& drills) {
    SheetPin pin;
    pin.id = row.text("id");
    const auto system = row.system();
    pin.diameter = row.length("diameter", system);
    pin.drill = drill_name(row, "drill", drills);
    pin.hole = diameter_of(drills, pin.drill);
    pin.grip_most = row.length("grip_most", system);
    pin.source = row.text("source");
    return pin;
}

}  // namespace

engine::Result<std::vector<Drill>> read_drills(const Table& table) {
    return rows_as<Drill>(table, read_drill);
}

engine::Result<std::vector<BlindRivet>> read_rivets(const Table& rivets,
                                                    const Table& grips,
                                                    const std::vector<Drill>& drills) {
    auto read = rows_as<BlindRivet>(rivets, [&](Row& row) { return read_rivet(row, drills); });
    if (!read) return read.error();
    auto list = std::move(read).value();
    const auto named = rows_as<NamedGrip>(grips, [&](Row& row) { return read_grip(row, list); });
    if (!named) return named.error();
    for (auto& rivet : list) {
        for (const auto& entry : *named) {
            if (entry.rivet == rivet.id) rivet.grips.push_back(entry.grip);
        }
        std::sort(rivet.grips.begin(), rivet.grips.end(), [](const auto& x, const auto& y) {
            return std::tie(x.most, x.least) < std::tie(y.most, y.least);
        });
    }
    std::stable_sort(list.begin(), list.end(), [](const BlindRivet& x, const BlindRivet& y) {
        return std::tie(x.system, x.diameter) < std::tie(y.system, y.diameter);
    });
    return list;
}

engine::Result<std::vector<MachineScrew>> read_screws(const Table& table,
                                                      const std::vector<Drill>& drills) {
    return rows_as<MachineScrew>(table, [&](Row& row) { return read_screw(row, drills); });
}

engine::Result<std::vector<RivetNut>> read_rivet_nuts(const Table& table,
                                                      const std::vector<MachineScrew>& screws,
                                                      const std::vector<Drill>& drills) {
    return rows_as<RivetNut>(table, [&](Row& row) { return read_rivet_nut(row, screws, drills); });
}

engine::Result<std::vector<SheetPin>> read_pins(const Table& table,
                                                const std::vector<Drill>& drills) {
    return rows_as<SheetPin>(table, [&](Row& row) { return read_pin(row, drills); });
}

}  // namespace model
