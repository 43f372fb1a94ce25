#include "editor/view/view_panel.h"

#include "editor/joint_list.h"
#include "editor/kit/hover_help.h"
#include "editor/kit/widgets.h"
#include "editor/places/piece_words.h"
#include "editor/room_scene.h"
#include "editor/view/cut_handle.h"
#include "editor/view/dimension_tags.h"
#include "editor/view/hole_places.h"
#include "editor/view/mark_labels.h"
#include "editor/view/near_line.h"
#include "editor/view/plane_tags.h"
#include "editor/view/sketch_view.h"
#include "editor/view/tape_hand.h"
#include "engine/render/pick.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

namespace editor {
namespace {

constexpr double radians_per_pixel = 0.008;
constexpr double zoom_per_notch = 1.15;

glm::dvec2 pixel_in(const Area& area, ImVec2 at, float pixel_scale) {
    return {static_cast<double>((at.x - area.x) * pixel_scale),
            static_cast<double>((at.y - area.y) * pixel_scale)};
}

bool has_moved() {
    const ImVec2 by = ImGui::GetIO().MouseDelta;
    return by.x != 0.0F || by.y != 0.0F;
}

void turn_and_move(ViewState& view, float pixel_scale) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool left = ImGui::IsMouseDragging(ImGuiMouseButton_Left, scaled(3));
    const bool other = ImGui::IsMouseDragging(ImGuiMouseButton_Right, 0.0F) ||
                       ImGui::IsMouseDragging(ImGuiMouseButton_Middle, 0.0F);
    view.is_turning = left || other;
    if (!view.is_turning || !has_moved()) return;
    view.is_fitted = false;
    const double dx = static_cast<double>(io.MouseDelta.x);
    const double dy = static_cast<double>(io.MouseDelta.y);
    if (other || io.KeyShift) {
        const double scale = static_cast<double>(pixel_scale);
        view.camera = engine::panned(view.camera, {dx * scale, dy * scale}, view.viewport);
    } else {
        view.camera = engine::orbited(view.camera, -dx * radians_per_pixel, dy * radians_per_pixel);
        view.camera.projection = engine::Projection::perspective;
    }
}

std::optional<JointName> hovered_joint(const Derived& derived, const ViewState& view) {
    if (!view.hovered || !view.hovered_at) return std::nullopt;
    return joint_near(*derived.project, derived.resolved, *view.hovered, *view.hovered_at);
}

void choose(const Derived& derived, const ViewState& view, Selection& selection, bool adds) {
    if (view.hovered_obstacle && *view.hovered_obstacle < derived.project->room.size()) {
        const auto& name = derived.project->room[*view.hovered_obstacle].name;
        selection = {.pieces = {}, .subjects = {{model::SubjectKind::obstacle, {}, name}}};
        return;
    }
    if (!view.hovered) {
        if (!adds) selection = {};
        return;
    }
    auto chosen = selection_of(*derived.project, derived.resolved, {*view.hovered});
    if (chosen.pieces.empty()) return;
    if (!adds) {
        selection = std::move(chosen);
        return;
    }
    const auto& name = chosen.pieces.front();
    const auto at = std::find(selection.pieces.begin(), selection.pieces.end(), name);
    if (at != selection.pieces.end()) {
        selection.pieces.erase(at);
    } else {
        selection.pieces.push_back(name);
    }
}

// Joints and nothing else, or nothing yet.
bool holds_joints(const Selection& selection) {
    if (selection.subjects.empty()) return selection.pieces.empty();
    return std::ranges::all_of(selection.subjects, [](const model::Subject& subject) {
        return subject.kind == model::SubjectKind::joint;
    });
}

void choose(const Derived& derived, const JointName& joint, Selection& selection, bool adds) {
    auto subjects = adds ? selection.subjects : std::vector<model::Subject>{};
    if (std::erase(subjects, subject_of(joint)) == 0) subjects.push_back(subject_of(joint));
    selection = selection_of_subjects(*derived.project, derived.resolved, subjects);
}

// The scan that a ray meets first, and where: in the room and in the scan's own axes.
struct ScanHit {
    model::Index obstacle = 0;
    double along = 0.0;  // mm
    engine::Vector own{};
};

std::optional<ScanHit> scan_under(const RoomFacts& room,
                                  const engine::Ray& ray,
                                  const engine::SceneCut* cut) {
    std::optional<ScanHit> nearest;
    for (const auto& placed : room.scans_placed) {
        const auto& place = placed.place;
        const engine::Vector from{ray.origin.x - place.origin[0], ray.origin.y - place.origin[1],
                                  ray.origin.z - place.origin[2]};
        const engine::Vector along{ray.direction.x, ray.direction.y, ray.direction.z};
        const auto own = [&](const engine::Vector& v) {
            return engine::Vector{engine::dot(place.x, v), engine::dot(place.y, v),
                                  engine::dot(place.z, v)};
        };
        const auto hit = placed.scan->tree.first_on_ray(own(from), own(along));
        if (!hit || (nearest && nearest->along <= hit->distance)) continue;
        if (!engine::is_left_by(cut, ray.origin + ray.direction * hit->distance)) continue;
        nearest = ScanHit{placed.obstacle, hit->distance, hit->point};
    }
    return nearest;
}

// From the plane on that takes away what lies before it.
engine::Ray behind_cut(engine::Ray ray, const engine::SceneCut* cut) {
    if (engine::is_left_by(cut, ray.origin)) return ray;
    const double speed = glm::dot(cut->normal, ray.direction);
    const double along = (cut->offset - glm::dot(cut->normal, ray.origin)) / speed;
    if (speed < 0.0) ray.origin += ray.direction * along;
    return ray;
}

void point_at_scan(ViewHands& hands, const engine::SceneData& scene, glm::dvec2 pixel) {
    auto& view = hands.view;
    if (!hands.picks_obstacles || hands.room == nullptr || view.hovered) return;
    if (hands.room->scans_placed.empty() || view.hovered_obstacle || !scene.fixed) return;
    const auto ray =
        behind_cut(engine::ray_through(view.camera, pixel, view.viewport), scene.cut.get());
    const auto hit = scan_under(*hands.room, ray, scene.cut.get());
    if (hit) view.hovered_obstacle = hit->obstacle;
}

// The change that a third point makes.
std::optional<Change> pick_point(const Derived& derived,
                                 const engine::SceneData& scene,
                                 ViewHands& hands,
                                 glm::dvec2 pixel) {
    const auto* cut = scene.cut.get();
    const auto ray =
        behind_cut(engine::ray_through(hands.view.camera, pixel, hands.view.viewport), cut);
    const auto& room = derived.project->room;
    const bool is_seen = hands.room != nullptr && scene.fixed != nullptr;
    const auto hit = is_seen ? scan_under(*hands.room, ray, cut) : std::nullopt;
    if (!hit || room[hit->obstacle].name != hands.placing->obstacle) {
        hands.placing->trouble = "There is nothing of " + hands.placing->obstacle + " there";
        return std::nullopt;
    }
    pick(*hands.placing, hit->own);
    if (hands.placing->points.size() < 3) return std::nullopt;
    auto obstacle = room[hit->obstacle];
    auto& scan = std::get<model::ScannedObstacle>(obstacle.shape);
    const auto placed = placed_by(scan, hands.placing->points);
    if (!placed) return std::nullopt;
    scan = *placed;
    auto change = change_of(model::PutObstacle{obstacle, obstacle.name});
    change.label = "Place " + obstacle.name + " by three points";
    return change;
}

// Below what stands at the top of the view.
void draw_placing(const Area& area, const ScanPlacing& placing, const Area& above) {
    auto words = std::to_string(placing.points.size() + 1) + " of 3: " + placing_words(placing) +
                 " \xC2\xB7 Esc to leave it";
    if (!placing.trouble.empty()) words = placing.trouble + ". " + words;
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float room = area.width - scaled(24);
    const ImVec2 size = size_of_text(words, Type::strong, room - scaled(20));
    const float top = std::max(area.y + scaled(14), above.y + above.height + scaled(12));
    const ImVec2 at{area.x + std::max(scaled(22), (area.width - size.x) / 2), top};
    on.AddRectFilled({at.x - scaled(10), at.y - scaled(6)},
                     {at.x + size.x + scaled(10), at.y + size.y + scaled(6)}, colour::dye_wash,
                     scaled(3));
    draw_wrapped_at(on, at, words, Type::strong, colour::dye, room - scaled(20));
    log_rectangle("placing", {at.x, at.y, at.x + size.x, at.y + size.y, true, true, words});
}

void point(const engine::SceneData& scene,
           ViewState& view,
           bool picks_obstacles,
           glm::dvec2 pixel,
           float pixel_scale) {
    view.hovered.reset();
    view.hovered_obstacle.reset();
    view.hovered_at.reset();
    const double reach = 5.0 * static_cast<double>(pixel_scale);
    const auto hit = engine::pick_at(scene, view.camera, pixel, view.viewport, reach);
    if (!hit || hit->pick_id == engine::no_pick) return;
    if (const auto obstacle = obstacle_of_pick(hit->pick_id)) {
        if (picks_obstacles) view.hovered_obstacle = obstacle;
    } else {
        view.hovered = hit->pick_id;
        view.hovered_at = hit->at;
    }
}

bool holds_tape(const ViewHands& hands) {
    return hands.seeing != nullptr && hands.seeing->tape.is_held && hands.placing == nullptr;
}

// Of the piece under the pointer.
void point_at_hole(const Derived& derived, ViewHands& hands, glm::dvec2 pixel) {
    if (hands.seeing == nullptr) return;
    auto& hovered = hands.seeing->hovered_hole;
    hovered.reset();
    const auto& view = hands.view;
    // Pieces that are pulled apart have their holes elsewhere.
    if (!view.hovered || !view.hovered_at || hands.seeing->way.apart > 0.0F) return;
    const auto ray = engine::ray_through(view.camera, pixel, view.viewport);
    constexpr double through = 12.0;  // mm: a hole seen from the inside of its wall
    const double along = glm::dot(*view.hovered_at - ray.origin, ray.direction);
    const double beside = 4.0 * engine::mm_per_pixel(view.camera, view.viewport);
    hovered = hole_on(derived, ray, along + through, beside, *view.hovered);
}

std::optional<SketchDesk> sketch_desk(const Derived& derived, const ViewHands& hands) {
    if (hands.sketch == nullptr || hands.catalogue == nullptr) return std::nullopt;
    return SketchDesk{derived, *hands.catalogue, hands.view, *hands.sketch, hands.selection};
}

SketchMouse sketched(const Derived& derived,
                     const ViewHands& hands,
                     glm::dvec2 pixel,
                     float pixel_scale) {
    const auto desk = sketch_desk(derived, hands);
    return desk ? use_sketch_mouse(*desk, pixel, static_cast<double>(pixel_scale)) : SketchMouse{};
}

void forget_pointed_at(ViewState& view) {
    view.hovered.reset();
    view.hovered_obstacle.reset();
    view.hovered_at.reset();
}

void zoom_by_wheel(ViewState& view, glm::dvec2 pixel) {
    const float notches = ImGui::GetIO().MouseWheel;
    if (notches == 0.0F) return;
    view.is_fitted = false;
    const double factor = std::pow(zoom_per_notch, static_cast<double>(notches));
    view.camera = engine::zoomed(view.camera, factor, pixel, view.viewport);
}

// The picture takes the mouse as one large button, so that a drag goes on outside of it.
std::optional<Change> use_mouse(const Area& area,
                                const Derived& derived,
                                const engine::SceneData& scene,
                                ViewHands& hands,
                                float pixel_scale) {
    std::optional<Change> change;
    ImGui::SetCursorScreenPos({area.x, area.y});
    ImGui::InvisibleButton("picture", {area.width, area.height},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    log_item("picture");
    ImGui::SetItemAllowOverlap();
    const ImGuiIO& io = ImGui::GetIO();
    const glm::dvec2 pixel = pixel_in(area, io.MousePos, pixel_scale);
    const auto sketch = sketched(derived, hands, pixel, pixel_scale);
    change = sketch.change;
    if (ImGui::IsItemActive()) {
        if (!sketch.has_pointer || !io.MouseDown[0]) turn_and_move(hands.view, pixel_scale);
    } else if (sketch.has_pointer && ImGui::IsItemHovered()) {
        forget_pointed_at(hands.view);
        zoom_by_wheel(hands.view, pixel);
    } else if (ImGui::IsItemHovered()) {
        if (holds_tape(hands)) {
            hands.view.hovered.reset();
            hands.view.hovered_obstacle.reset();
            hands.seeing->hovered_hole.reset();
            point_tape(hands.seeing->tape, {area, derived, scene, hands.view}, pixel, pixel_scale);
        } else {
            point(scene, hands.view, hands.picks_obstacles, pixel, pixel_scale);
            point_at_scan(hands, scene, pixel);
            point_at_hole(derived, hands, pixel);
        }
        zoom_by_wheel(hands.view, pixel);
    } else {
        hands.view.hovered.reset();
        hands.view.hovered_obstacle.reset();
        if (hands.seeing != nullptr) {
            hands.seeing->hovered_hole.reset();
            hands.seeing->tape.under.reset();
        }
    }
    if (!ImGui::IsItemDeactivated()) return change;
    if (!hands.view.is_turning && io.MouseReleased[0] && !sketch.has_pointer) {
        const bool adds = io.KeyCtrl || io.KeyShift;
        const bool takes_joint = hands.picks_joints && (!adds || holds_joints(hands.selection));
        const auto joint = takes_joint ? hovered_joint(derived, hands.view) : std::nullopt;
        if (holds_tape(hands)) {
            // The pointer may have come here with the press itself.
            point_tape(hands.seeing->tape, {area, derived, scene, hands.view}, pixel, pixel_scale);
            take_end(hands.seeing->tape);
        } else if (hands.placing != nullptr) {
            change = pick_point(derived, scene, hands, pixel);
        } else if (joint) {
            choose(derived, *joint, hands.selection, adds);
        } else {
            choose(derived, hands.view, hands.selection, adds);
        }
    }
    // The view must not turn under the next click.
    const bool is_picking = hands.placing != nullptr || holds_tape(hands) || sketch.has_pointer;
    if (io.MouseReleased[0] && io.MouseDoubleClicked[0] && !is_picking) {
        hands.view.wants_fit = true;
    }
    hands.view.is_turning = false;
    return change;
}

void draw_obstacle_words(const Derived& derived, const ViewState& view) {
    if (!view.hovered_obstacle || view.is_turning || is_typing()) return;
    if (*view.hovered_obstacle >= derived.project->room.size()) return;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 6));
    const TooltipScope tooltip;
    draw_text(derived.project->room[*view.hovered_obstacle].name);
}

void draw_hovered_words(const Derived& derived,
                        const ViewState& view,
                        bool picks_joints,
                        const std::string& hole) {
    if (!view.hovered || view.is_turning || is_typing()) return;
    if (*view.hovered >= derived.resolved.pieces.size()) return;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 6));
    const TooltipScope tooltip;
    draw_text(piece_words(derived, *view.hovered));
    const auto joint = picks_joints ? hovered_joint(derived, view) : std::nullopt;
    if (joint) draw_text("joint " + words_of(*joint), Type::small, colour::quiet);
    if (hole.empty()) return;
    draw_text(hole, Type::small, colour::quiet);
    log_item("hovered hole", hole);
}

// At the foot of the view, on as many lines as it takes.
ImVec2 draw_at_foot(const Area& area, std::string_view words, ImU32 packed) {
    const float room = area.width - scaled(32);
    const ImVec2 size = size_of_text(words, Type::small, room);
    const ImVec2 at{area.x + scaled(16), area.y + area.height - size.y - scaled(10)};
    draw_wrapped_at(*ImGui::GetWindowDrawList(), at, words, Type::small, packed, room);
    return at;
}

void draw_help(const Area& area, bool picks_joints, std::string_view of_hand) {
    if (!of_hand.empty()) {
        const ImVec2 at = draw_at_foot(area, of_hand, colour::dye);
        const ImVec2 size = size_of_text(of_hand, Type::small, area.width - scaled(32));
        const std::string words(of_hand);
        log_rectangle("at work", {at.x, at.y, at.x + size.x, at.y + size.y, true, true, words});
        return;
    }
    const std::string moving =
        "drag to turn \xC2\xB7 right drag to move \xC2\xB7 wheel to zoom \xC2\xB7 F to see all";
    const std::string choosing = picks_joints
                                     ? "click where two bars meet for their joint, else a piece"
                                     : "click a piece \xC2\xB7 Ctrl or Shift and click for more";
    const std::string on_one_line = moving + " \xC2\xB7 " + choosing;
    const bool is_one = size_of_text(on_one_line, Type::small).x <= area.width - scaled(32);
    draw_at_foot(area, is_one ? on_one_line : moving + '\n' + choosing, colour::quiet);
}

// The skeleton; the room may run out of the picture. The room alone while there is no skeleton.
engine::SceneBounds what_to_see(const engine::SceneData& scene,
                                const Derived& derived,
                                bool is_one_alone) {
    auto skeleton = engine::bounds_of(scene.solid);
    if (is_one_alone) return skeleton;
    for (std::size_t f = 0; f < derived.resolved.frames.size(); ++f) {
        if (derived.resolved.frames[f].piece_count > 0) continue;
        skeleton = engine::hull(skeleton, outline_in_room(plane_grid(derived, f)));
    }
    return engine::is_empty(skeleton) ? engine::bounds_of(scene) : skeleton;
}

// As a share of the picture: the tags must find room beside the skeleton.
double fit_margin(const Derived& derived, const Area& area) {
    const float tags = scaled(room_for_tags(tagged_dimensions(derived)));
    const float share = tags / std::max(1.0F, std::min(area.width, area.height));
    return std::clamp(static_cast<double>(share), 0.08, 0.26);
}

// Dimensions belong to the skeleton as it is built.
bool shows_as_built(const ViewHands& hands) {
    return hands.seeing == nullptr || (hands.seeing->way.apart <= 0.0F && !hands.seeing->way.alone);
}

std::string words_of_hole(const Derived& derived, const ViewHands& hands) {
    if (hands.seeing == nullptr || hands.catalogue == nullptr) return {};
    const auto& hole = hands.seeing->hovered_hole;
    if (!hole || *hole >= derived.resolved.holes.size()) return {};
    return hole_words(derived, *hands.catalogue, *hole);
}

// What was measured and the cut, and where labels must leave them room.
std::vector<Area> draw_seen_marks(const Area& area,
                                  const Derived& derived,
                                  const engine::SceneData& scene,
                                  ViewHands& hands,
                                  std::optional<Change>& change) {
    std::vector<Area> covered;
    if (hands.seeing == nullptr) return covered;
    auto& seeing = *hands.seeing;
    covered.push_back(seeing.bar);
    covered.push_back(draw_cut_handle(area, derived, scene, hands.view, seeing));
    if (seeing.way.apart <= 0.0F) {
        covered.push_back(draw_tape_hand(
            seeing.tape, {area, derived, scene, hands.view, hands.catalogue}, change));
    }
    return covered;
}

}  // namespace

ImTextureID scene_picture() {
    static char place_holder = 0;
    return &place_holder;
}

engine::SceneEmphasis emphasis_of(const Derived& derived,
                                  const Selection& selection,
                                  const ViewState& view) {
    engine::SceneEmphasis emphasis;
    for (const auto piece : selected_pieces(*derived.project, derived.resolved, selection)) {
        emphasis.selected.push_back(piece);
    }
    const auto& room = derived.project->room;
    for (model::Index i = 0; i < room.size(); ++i) {
        if (has_subject(selection, model::SubjectKind::obstacle, room[i].name)) {
            emphasis.selected.push_back(pick_of_obstacle(i));
        }
    }
    if (view.hovered && *view.hovered < derived.resolved.pieces.size()) {
        emphasis.hovered = *view.hovered;
    } else if (view.hovered_obstacle) {
        emphasis.hovered = pick_of_obstacle(*view.hovered_obstacle);
    }
    return emphasis;
}

std::optional<Change> draw_view(const Area& area,
                                const Derived& derived,
                                const engine::SceneData& scene,
                                ViewHands hands) {
    const StyleScope no_padding(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    const PanelScope panel("View", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    // Pieces that are pulled apart meet nowhere.
    if (hands.seeing != nullptr && hands.seeing->way.apart > 0.0F) hands.picks_joints = false;
    const float pixel_scale = ImGui::GetIO().DisplayFramebufferScale.x;
    const engine::Viewport viewport{std::max(1, static_cast<int>(area.width * pixel_scale)),
                                    std::max(1, static_cast<int>(area.height * pixel_scale))};
    if (viewport != hands.view.viewport && hands.view.is_fitted) hands.view.wants_fit = true;
    hands.view.viewport = viewport;
    if (hands.view.wants_fit) {
        const double margin = shows_as_built(hands) ? fit_margin(derived, area) : 0.1;
        const bool is_one_alone = hands.seeing != nullptr && hands.seeing->way.alone.has_value();
        hands.view.camera =
            engine::fitted(hands.view.camera, what_to_see(scene, derived, is_one_alone),
                           hands.view.viewport, margin);
        hands.view.wants_fit = false;
        hands.view.is_fitted = true;
    }
    ImGui::GetWindowDrawList()->AddImage(scene_picture(), {area.x, area.y},
                                         {area.x + area.width, area.y + area.height}, {0, 1},
                                         {1, 0});
    auto change = use_mouse(area, derived, scene, hands, pixel_scale);
    std::vector<Area> covered = draw_seen_marks(area, derived, scene, hands, change);
    const auto sketch = sketch_desk(derived, hands);
    if (sketch) covered.push_back(sketch->state.bar);
    if (sketch) draw_sketch_grid(area, *sketch, pixel_scale);
    // A plane's tag says the same as that of its dimension.
    if (sketch && sketch->state.hand == SketchHand::planes) {
        keep_first(change, draw_plane_tags(area, *sketch, covered));
    } else if (shows_as_built(hands)) {
        keep_first(change, draw_dimension_tags(area, derived, hands.view, hands.hand, &covered));
    }
    if (hands.seeing != nullptr && hands.seeing->shows_marks) {
        draw_mark_labels(area, derived, scene, hands.view, covered, hands.seeing->marks);
    }
    if (hands.placing != nullptr) {
        draw_placing(area, *hands.placing, hands.seeing != nullptr ? hands.seeing->bar : Area{});
    }
    draw_help(area, hands.picks_joints,
              sketch ? words_of_hand(sketch->state.hand) : std::string_view());
    if (sketch) draw_sketch_bar(area, *sketch);
    if (sketch) draw_sketch_words(*sketch);
    draw_hovered_words(derived, hands.view, hands.picks_joints, words_of_hole(derived, hands));
    draw_obstacle_words(derived, hands.view);
    if (hands.room != nullptr) {
        draw_near_lines(area, derived, *hands.room, hands.selection, hands.view);
    }
    draw_measured_lines(area, hands.lines, hands.view);
    return change;
}

}  // namespace editor
