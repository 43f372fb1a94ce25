// What may be tried where a frame comes too near to something: moving it, or asking for less.
#include "model/mend/ways.h"
#include "model/resolve/named_values.h"

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <utility>

namespace model {
namespace {

struct Way {
    std::size_t axis = 0;
    int sense = 1;
    const char* name = "";
    const char* words = "";
};

// The van's axes; never down, where the floor is.
constexpr std::array<Way, 5> all_ways{{{0, 1, "move +x", "towards larger X"},
                                       {0, -1, "move -x", "towards smaller X"},
                                       {1, 1, "move +y", "towards larger Y"},
                                       {1, -1, "move -y", "towards smaller Y"},
                                       {2, 1, "move +z", "up"}}};

void move_frame(const Case& of, const std::string& name, Nm by, Ways& ways) {
    const auto f = index_of_frame(of, name);
    if (!f || *f >= of.ailing.resolved.frames.size() || by <= 0) return;
    const auto& frame = of.project().frames[*f];
    const auto& placed = of.ailing.resolved.frames[*f];
    for (const auto& way : all_ways) {
        PlaceFrame edit{frame.name, frame.origin, frame.quarter_turns};
        edit.origin[way.axis] = formula_plus(of, frame.origin[way.axis], placed.origin[way.axis],
                                             way.sense > 0 ? by : -by);
        ways.push_back(
            {std::string(way.name) + " " + name,
             "Move " + name + " " + words_of(of, engine::Length::from_nm(by)) + " " + way.words,
             {std::move(edit)}});
    }
}

std::vector<std::string> frames_of(const Case& of) {
    std::vector<std::string> names;
    for (const auto& subject : of.finding.concerns) {
        const auto& name = subject.kind == SubjectKind::frame ? subject.name : subject.frame;
        if (!name.empty() && std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
    return names;
}

const Obstacle* obstacle_of(const Case& of) {
    for (const auto& subject : of.finding.concerns) {
        if (subject.kind == SubjectKind::obstacle) return named(of.project().room, subject.name);
    }
    return nullptr;
}

Nm clearance_of(const Case& of, const Obstacle& obstacle) {
    if (obstacle.clearance.empty())
        return obstacle.stays_clear ? 0 : of.ailing.resolved.shop.clearance;
    return NamedValues(of.project(), of.ailing.resolved).length(obstacle.clearance).value_or(0);
}

void less_clearance(const Case& of, const Obstacle& obstacle, Ways& ways) {
    const auto distance = length_of(of.finding, "distance");
    if (!distance) return;
    const Nm step = engine::tape_step(of.project().shown).nm();
    const auto there = engine::Length::from_nm(distance->nm() / step * step);
    Obstacle changed = obstacle;
    changed.clearance = words_of(of, there);
    ways.push_back({"less clearance",
                    "Let " + changed.clearance + " be enough beside " + obstacle.name,
                    {PutObstacle{std::move(changed), {}}}});
}

}  // namespace

Ways keep_clear(const Case& of) {
    Ways ways;
    const auto* obstacle = obstacle_of(of);
    if (obstacle == nullptr) return ways;
    const auto zero = engine::Length{};
    const auto distance = length_of(of.finding, "distance");
    const Nm by =
        distance ? length_of(of.finding, "wanted").value_or(zero).nm() - distance->nm()
                 : length_of(of.finding, "depth").value_or(zero).nm() + clearance_of(of, *obstacle);
    for (const auto& frame : frames_of(of)) move_frame(of, frame, up_to_mark(of, by), ways);
    less_clearance(of, *obstacle, ways);
    return ways;
}

Ways frames_apart(const Case& of) {
    Ways ways;
    const auto zero = engine::Length{};
    const auto depth = length_of(of.finding, "depth");
    const Nm gap = of.ailing.resolved.shop.frame_gap;
    const Nm by =
        depth ? depth->nm() + gap : gap - length_of(of.finding, "distance").value_or(zero).nm();
    for (const auto& frame : frames_of(of)) move_frame(of, frame, up_to_mark(of, by), ways);
    return ways;
}

// Dimensions that planes of the frame stand on, made shorter by as much.
Ways lower_or_narrower(const Case& of) {
    constexpr std::size_t most_tried = 8;
    Ways ways;
    const auto by = length_of(of.finding, "by");
    if (!by) return ways;
    std::set<std::string> names;
    for (const auto& name : frames_of(of)) {
        const auto* frame = frame_named(of, name);
        if (frame == nullptr) continue;
        for (const auto& plane : frame->planes) {
            for (auto& used : engine::names_in(plane.position)) names.insert(std::move(used));
        }
    }
    const NamedValues values(of.project(), of.ailing.resolved);
    for (const auto& dimension : of.project().dimensions) {
        const bool is_plain = engine::names_in(dimension.formula).empty();
        if (!names.contains(dimension.name) || !is_plain || ways.size() == most_tried) continue;
        const auto value = values.length(dimension.formula);
        if (!value || *value <= by->nm()) continue;
        const Nm step = engine::tape_step(of.project().shown).nm();
        const auto less = words_of(of, engine::Length::from_nm((*value - by->nm()) / step * step));
        ways.push_back({"set " + dimension.name,
                        "Set " + dimension.name + " to " + less,
                        {SetFormula{dimension.name, less}}});
    }
    return ways;
}

}  // namespace model
