#include "editor/view/mark_labels.h"

#include "editor/kit/widgets.h"
#include "editor/places/piece_words.h"
#include "editor/view/on_screen.h"
#include "engine/render/pick.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cstddef>

namespace editor {
namespace {

using model::Index;

constexpr std::size_t most_looked_at = 600;  // pieces: each costs a look for what is before it

struct Seen {
    Index piece = 0;
    std::size_t item = 0;
    double depth = 0.0;
};

std::vector<Seen> nearest_first(const Derived& derived,
                                const engine::SceneData& scene,
                                const ViewState& view) {
    std::vector<Seen> seen;
    const auto forward = engine::forward_of(view.camera);
    const auto& items = scene.solid.items;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].pick_id >= derived.resolved.pieces.size()) continue;
        const auto middle = (items[i].bounds.lo + items[i].bounds.hi) / 2.0;
        seen.push_back({items[i].pick_id, i, glm::dot(middle, forward)});
    }
    std::ranges::sort(seen, {}, &Seen::depth);
    if (seen.size() > most_looked_at) seen.resize(most_looked_at);
    return seen;
}

// Along the first edges of the item: places on it that a label can stand on.
std::vector<glm::dvec3> places_on(const engine::SceneBatch& batch, std::size_t item) {
    const std::size_t begin = item == 0 ? 0 : batch.items[item - 1].triangles_end;
    const std::size_t end = batch.items[item].triangles_end;
    const auto corner = [&](std::size_t i) {
        const auto& at = batch.mesh.vertices[batch.mesh.triangles[i]].position;
        return glm::dvec3{static_cast<double>(at[0]), static_cast<double>(at[1]),
                          static_cast<double>(at[2])};
    };
    std::vector<glm::dvec3> places;
    const auto middle = (batch.items[item].bounds.lo + batch.items[item].bounds.hi) / 2.0;
    for (std::size_t i = begin; i + 2 < end; i += 3) {
        places.push_back((corner(i) + corner(i + 1) + corner(i + 2)) / 3.0);
    }
    // Nearest to the middle first; a few are enough.
    std::ranges::sort(places, {}, [&](const glm::dvec3& at) { return glm::distance(at, middle); });
    constexpr std::size_t enough = 24;
    std::vector<glm::dvec3> few;
    const std::size_t step = std::max<std::size_t>(1, places.size() / enough);
    for (std::size_t i = 0; i < places.size(); i += step) few.push_back(places[i]);
    return few;
}

bool is_before_all(const engine::SceneData& scene,
                   const ViewState& view,
                   const glm::dvec3& at,
                   Index piece) {
    if (!engine::is_left_by(scene.cut.get(), at)) return false;
    const auto pixel = engine::pixel_of(view.camera, at, view.viewport);
    if (!pixel) return false;
    const auto hit = engine::pick_at(scene, view.camera, *pixel, view.viewport, 0.0);
    return hit && hit->pick_id == piece;
}

bool is_free(const Area& at, const Area& view, const std::vector<Area>& taken) {
    const bool is_inside = at.x >= view.x && at.y >= view.y &&
                           at.x + at.width <= view.x + view.width &&
                           at.y + at.height <= view.y + view.height;
    return is_inside &&
           std::ranges::all_of(taken, [&](const Area& other) { return are_apart(at, other); });
}

}  // namespace

std::vector<MarkLabel> mark_labels(const Area& area,
                                   const Derived& derived,
                                   const engine::SceneData& scene,
                                   const ViewState& view,
                                   std::vector<Area> taken) {
    std::vector<MarkLabel> labels;
    for (const auto& it : nearest_first(derived, scene, view)) {
        const auto text = mark_text(derived, it.piece);
        if (text.empty()) continue;
        const ImVec2 size = size_of_text(text, Type::small);
        int tries = 6;  // looks for what is before it
        for (const auto& place : places_on(scene.solid, it.item)) {
            const auto at = on_screen(area, view, place);
            if (!at) continue;
            const Area label{at->x - size.x / 2 - scaled(4), at->y - size.y / 2 - scaled(1),
                             size.x + scaled(8), size.y + scaled(2)};
            if (!is_free(label, area, taken)) continue;
            if (tries-- == 0) break;
            if (!is_before_all(scene, view, place, it.piece)) continue;
            taken.push_back(label);
            labels.push_back({it.piece, text, label});
            break;
        }
    }
    return labels;
}

namespace {

bool are_same(const Area& a, const Area& b) {
    return a.x == b.x && a.y == b.y && a.width == b.width && a.height == b.height;
}

bool is_current(const MarkMemo& memo, const MarkMemo& wanted) {
    return memo.revision == wanted.revision && memo.cut == wanted.cut &&
           memo.camera == wanted.camera && memo.viewport == wanted.viewport &&
           are_same(memo.area, wanted.area) &&
           std::ranges::equal(memo.taken, wanted.taken, are_same);
}

void draw_label(ImDrawList& on, const MarkLabel& label) {
    const ImVec2 low{label.at.x, label.at.y};
    const ImVec2 high{label.at.x + label.at.width, label.at.y + label.at.height};
    on.AddRectFilled(low, high, colour::with_alpha(colour::sheet, 235), scaled(3));
    on.AddRect(low, high, colour::edge, scaled(3));
    draw_text_at(on, {low.x + scaled(4), low.y + scaled(1)}, label.text, Type::small, colour::ink);
    log_rectangle(std::to_string(label.piece),
                  {low.x, low.y, high.x, high.y, true, true, label.text});
}

}  // namespace

void draw_mark_labels(const Area& area,
                      const Derived& derived,
                      const engine::SceneData& scene,
                      const ViewState& view,
                      const std::vector<Area>& taken,
                      std::shared_ptr<MarkMemo>& memo) {
    if (view.is_turning) return;
    MarkMemo wanted{scene.revision, scene.cut, view.camera, view.viewport, area, taken, {}};
    if (!memo || !is_current(*memo, wanted)) {
        wanted.labels = mark_labels(area, derived, scene, view, taken);
        memo = std::make_shared<MarkMemo>(std::move(wanted));
    }
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ItemScope items("marks");
    for (const auto& label : memo->labels) draw_label(on, label);
}

}  // namespace editor
