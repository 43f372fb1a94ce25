// Surveys: an obstacle and the dimensions that it stands on, from what was measured.
#include "model/project/change.h"
#include "model/project/named_list.h"

#include <span>

namespace model {

namespace {

constexpr std::size_t most_readings = 100;

struct Reading {
    std::string name;
    Formula formula;
    engine::QuantityKind kind = engine::QuantityKind::length;
};

Changed check_readings(const Project& project,
                       const std::string& obstacle,
                       std::span<const Reading> readings) {
    const std::string where = "obstacle " + obstacle;
    const auto has_name = [&](const Obstacle& other) { return other.name == obstacle; };
    if (std::any_of(project.room.begin(), project.room.end(), has_name)) {
        return already_there(where);
    }
    if (readings.size() > most_readings) {
        return engine::Error{engine::ErrorCode::out_of_range, where,
                             "more readings than are taken at once; leave some out"};
    }
    for (const auto& reading : readings) {
        auto readable = check_formula(reading.formula, reading.kind, where + ", " + reading.name);
        if (!readable) return readable;
    }
    return engine::Done{};
}

// For use in a sum.
Formula as_term(const Formula& formula) {
    return engine::is_name(formula) ? formula : "(" + formula + ")";
}

bool is_nothing(const Formula& formula) { return formula == "0"; }

Formula sum(const Formula& a, const Formula& b) {
    if (is_nothing(a)) return b;
    if (is_nothing(b)) return a;
    return as_term(a) + " + " + as_term(b);
}

Formula difference(const Formula& a, const Formula& b) { return as_term(a) + " - " + as_term(b); }

// Makes dimensions of what was measured, named after the obstacle where that can be a name.
class Surveyed {
public:
    Surveyed(Project& project, const std::string& obstacle)
        : project_{project}, prefix_{engine::is_name(obstacle) ? obstacle + " " : std::string()} {}

    // A formula for use in another one: a plain value becomes a dimension.
    Formula value(const Reading& reading, const std::string& note) {
        if (!engine::names_in(reading.formula).empty()) return reading.formula;
        const auto name = free_name(prefix_ + reading.name);
        project_.dimensions.push_back(
            {.name = name, .kind = reading.kind, .formula = reading.formula, .note = note});
        return name;
    }

    // The same, but what is not there stays a plain 0.
    Formula value_if_any(const Reading& reading, const std::string& note) {
        return is_nothing(reading.formula) ? reading.formula : value(reading, note);
    }

private:
    std::string free_name(const std::string& wanted) const {
        std::string name = wanted;
        for (int n = 2; find_named(project_.dimensions, name) != project_.dimensions.end(); ++n) {
            name = wanted + " " + std::to_string(n);
        }
        return name;
    }

    Project& project_;
    std::string prefix_;
};

std::vector<Reading> readings_of(const SurveyWheelWell& edit) {
    return {{"wall", edit.wall},         {"datum", edit.datum},
            {"floor", edit.floor},       {"start", edit.start},
            {"length", edit.length},     {"height", edit.height},
            {"reach", edit.reach},       {"lean", edit.lean, engine::QuantityKind::angle},
            {"rounding", edit.rounding}, {"corner", edit.corner}};
}

std::vector<Reading> readings_of(const SurveyWall& edit) {
    std::vector<Reading> readings{{"line", edit.line}, {"from", edit.from}, {"to", edit.to}};
    for (std::size_t i = 0; i < edit.readings.size(); ++i) {
        const auto number = " " + std::to_string(i + 1);
        readings.push_back({"height" + number, edit.readings[i].height});
        readings.push_back({"plumb" + number, edit.readings[i].to_wall});
    }
    return readings;
}

WheelWell well_of(Surveyed& surveyed, const SurveyWheelWell& edit) {
    const auto start = surveyed.value({"start", edit.start}, "from the datum to its near end");
    const auto length = surveyed.value({"length", edit.length}, "along the van");
    const auto height = surveyed.value({"height", edit.height}, "above the floor");
    const auto reach = surveyed.value({"reach", edit.reach}, "from the wall, at the floor");
    const auto at = surveyed.value_if_any({"wall", edit.wall}, "X of the wall that it stands at");
    const auto floor = surveyed.value_if_any({"floor", edit.floor}, "Z of the floor");
    const auto near = sum(surveyed.value_if_any({"datum", edit.datum}, "Y of the datum"), start);
    const bool is_left = edit.inside == Sense::plus;
    WheelWell well{.inner_sense = edit.inside};
    well.least = {is_left ? at : difference(at, reach), near, floor};
    well.most = {is_left ? sum(at, reach) : at, sum(near, length), sum(floor, height)};
    well.lean = surveyed.value_if_any({"lean", edit.lean, engine::QuantityKind::angle},
                                      "of its inner side from the vertical");
    well.top_radius = surveyed.value_if_any({"rounding", edit.rounding}, "radius of its top edges");
    well.corner_radius =
        surveyed.value_if_any({"corner", edit.corner}, "radius of its upright edges");
    return well;
}

WallProfile wall_of(Surveyed& surveyed, const SurveyWall& edit) {
    WallProfile wall{.inside = edit.inside, .from = edit.from, .to = edit.to};
    const auto line = surveyed.value_if_any({"line", edit.line}, "X of the plumb line");
    Formula foot;
    for (std::size_t i = 0; i < edit.readings.size(); ++i) {
        const auto number = " " + std::to_string(i + 1);
        const auto& reading = edit.readings[i];
        const auto height =
            surveyed.value_if_any({"height" + number, reading.height}, "above the floor");
        const auto plumb = surveyed.value({"plumb" + number, reading.to_wall},
                                          "from the plumb line to the wall at that height");
        if (i == 0) foot = plumb;
        wall.offsets.push_back({height, i == 0 ? Formula("0") : difference(foot, plumb)});
    }
    wall.at = edit.inside == Sense::plus ? difference(line, foot) : sum(line, foot);
    return wall;
}

}  // namespace

Changed change(Project& project, const SurveyWheelWell& edit) {
    if (auto ready = check_readings(project, edit.obstacle, readings_of(edit)); !ready) {
        return ready;
    }
    Surveyed surveyed{project, edit.obstacle};
    Obstacle obstacle{.name = edit.obstacle, .shape = well_of(surveyed, edit), .note = edit.note};
    return change(project, PutObstacle{.obstacle = std::move(obstacle)});
}

Changed change(Project& project, const SurveyWall& edit) {
    if (edit.readings.empty()) {
        return engine::Error{engine::ErrorCode::invalid_value, "obstacle " + edit.obstacle,
                             "a wall needs a reading at one height at least"};
    }
    if (auto ready = check_readings(project, edit.obstacle, readings_of(edit)); !ready) {
        return ready;
    }
    Surveyed surveyed{project, edit.obstacle};
    Obstacle obstacle{.name = edit.obstacle, .shape = wall_of(surveyed, edit), .note = edit.note};
    return change(project, PutObstacle{.obstacle = std::move(obstacle)});
}

}  // namespace model
