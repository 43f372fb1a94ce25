#include "editor/mend_doors.h"

#include "editor/by_name.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

constexpr const char* dots = "\xE2\x80\xA6";

template <class MakeDialog>
void add(std::vector<MendDoor>& doors, std::string words, MakeDialog make) {
    const auto is_there = [&](const MendDoor& door) { return door.words == words; };
    if (std::any_of(doors.begin(), doors.end(), is_there)) return;
    doors.push_back({std::move(words), [make](Dialog& dialog, Place&) { dialog = make(); }});
}

// What stands too near, and can be stepped over.
void add_step(std::vector<MendDoor>& doors, const Derived& now, const model::Finding& finding) {
    const bool is_near = finding.code == "clearance" || finding.code == "inside_obstacle";
    if (!is_near || finding.concerns.empty() || !can_step_over(*now.project)) return;
    const auto& name = finding.concerns.front().name;
    const auto* obstacle = by_name(now.project->room, name);
    if (obstacle == nullptr) return;
    const auto& shape = obstacle->shape;
    const bool is_low = std::holds_alternative<model::BoxObstacle>(shape) ||
                        std::holds_alternative<model::WheelWell>(shape) ||
                        std::holds_alternative<model::CylinderObstacle>(shape);
    if (!is_low) return;
    const auto in = std::find_if(finding.concerns.begin(), finding.concerns.end(),
                                 [](const model::Subject& it) { return !it.frame.empty(); });
    const std::string frame = in == finding.concerns.end() ? std::string() : in->frame;
    const Derived* derived = &now;
    add(doors, "Step over " + name + dots, [derived, name, frame] {
        auto form = new_step_form(*derived);
        form.obstacle = name;
        if (!frame.empty()) form.frame = frame;
        return form;
    });
}

void add_in_project(std::vector<MendDoor>& doors, const Derived& now, const model::Subject& it) {
    if (it.kind == model::SubjectKind::dimension) {
        if (const auto* found = by_name(now.project->dimensions, it.name))
            add(doors, "Open dimension " + it.name + dots,
                [copy = *found] { return dimension_form(copy); });
    }
    if (it.kind == model::SubjectKind::obstacle) {
        if (const auto* found = by_name(now.project->room, it.name))
            add(doors, "Open " + it.name + dots, [copy = *found] { return obstacle_form(copy); });
    }
    if (it.kind == model::SubjectKind::frame && by_name(now.project->frames, it.name) != nullptr) {
        add(doors, "Place " + it.name + dots,
            [project = now.project, name = it.name] { return new_place_form(*project, name); });
    }
    if (it.kind == model::SubjectKind::stock) {
        doors.push_back(
            {"See its bars under Buy", [](Dialog&, Place& place) { place = Place::buy; }});
    }
}

void add_in_frame(std::vector<MendDoor>& doors, const Derived& now, const model::Subject& it) {
    const auto* frame = by_name(now.project->frames, it.frame);
    if (frame == nullptr) return;
    const std::string in = it.frame;
    if (it.kind == model::SubjectKind::opening) {
        if (const auto* found = by_name(frame->openings, it.name))
            add(doors, "Open opening " + it.name + dots,
                [in, copy = *found] { return opening_form(in, copy); });
    }
    if (it.kind == model::SubjectKind::panel) {
        if (const auto* found = by_name(frame->panels, it.name))
            add(doors, "Open panel " + it.name + dots,
                [in, copy = *found] { return panel_form(in, copy); });
    }
    if (it.kind == model::SubjectKind::diagonal) {
        if (const auto* found = by_name(frame->diagonals, it.name))
            add(doors, "Open brace " + it.name + dots,
                [in, copy = *found] { return node_bar_form(in, copy); });
    }
    if (it.kind == model::SubjectKind::leaning) {
        if (const auto* found = by_name(frame->leaning, it.name))
            add(doors, "Open " + it.name + dots,
                [in, copy = *found] { return node_bar_form(in, copy); });
    }
    if (it.kind == model::SubjectKind::joint) {
        const bool is_there = std::any_of(doors.begin(), doors.end(), [](const MendDoor& door) {
            return door.words == "See the joint under Join";
        });
        if (is_there) return;
        doors.push_back(
            {"See the joint under Join", [](Dialog&, Place& place) { place = Place::join; }});
    }
}

}  // namespace

std::vector<MendDoor> doors_of(const Derived& now, const model::Finding& finding) {
    constexpr std::size_t most = 3;
    std::vector<MendDoor> doors;
    add_step(doors, now, finding);
    for (const auto& subject : finding.concerns) {
        if (doors.size() >= most) break;
        add_in_project(doors, now, subject);
        add_in_frame(doors, now, subject);
    }
    if (doors.size() > most) doors.resize(most);
    return doors;
}

}  // namespace editor
