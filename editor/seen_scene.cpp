#include "editor/seen_scene.h"

#include "editor/assembly_memo.h"
#include "editor/view/pull_apart.h"
#include "editor/view/seen_items.h"
#include "engine/render/scene_cut.h"

#include <utility>

namespace editor {
namespace {

// Above all revisions of projects.
constexpr std::uint64_t first_own_revision = std::uint64_t{1} << 62U;

constexpr engine::CutLook cut_look{
    .tint = {0x2D, 0x3F, 0x86}, .share = 0.45, .line = {0x18, 0x20, 0x48}};
constexpr engine::CutLook room_look{.tint = {}, .share = 0.0, .line = {0x7A, 0x62, 0x30}};

// A line drawing is drawn by the renderer, not by the scene.
bool needs_own_scene(const WayOfSeeing& way, Theme theme, const engine::SceneData& base) {
    WayOfSeeing plain;
    plain.as_line_drawing = way.as_line_drawing;
    const bool has_evening = theme == Theme::dark && !base.translucent.items.empty();
    return way != plain || has_evening;
}

bool is_current(const SeenMemo& memo,
                const engine::SceneData& base,
                const WayOfSeeing& way,
                Theme theme) {
    return memo.made != 0 && memo.of_revision == base.revision && memo.of_fixed == base.fixed &&
           memo.way == way && memo.theme == theme;
}

void make_scene(SeenMemo& memo, Desk& desk, const engine::SceneData& base) {
    const Derived& now = derived(desk);
    const auto& way = desk.ui.seeing.way;
    memo.of_revision = base.revision;
    memo.of_fixed = base.fixed;
    memo.way = way;
    memo.theme = desk.ui.theme;
    memo.is_plain = !needs_own_scene(way, memo.theme, base);
    memo.cut_of_revision.reset();
    ++memo.made;
    memo.colours = piece_colours(way.colour_by, now, *desk.catalogue);
    memo.moved.clear();
    if (way.apart > 0.0F && !way.alone) {
        const auto& assembly = assembly_of(desk.ui.make.assembly, now, *desk.catalogue);
        memo.moved = pulled_apart(now.resolved, assembly.order, assembly.approaches,
                                  static_cast<double>(way.apart));
    }
    if (memo.is_plain) return;
    memo.scene = seen_items(base, {now, way, memo.theme, memo.colours.of_pieces, memo.moved},
                            std::move(memo.scene));
    memo.scene.revision = first_own_revision + memo.made;
}

void make_cut(SeenMemo& memo, engine::SceneData& scene, const SeeingState& seeing) {
    // The piece that is looked at alone is whole.
    const auto cut = seeing.way.alone ? std::nullopt : seeing.cut;
    if (memo.cut_of_revision == scene.revision && memo.cut == cut && scene.cut == memo.cut_made)
        return;
    memo.cut_of_revision = scene.revision;
    memo.cut = cut;
    memo.cut_made = cut ? cut_of(scene, *cut) : nullptr;
    scene.cut = memo.cut_made;
}

}  // namespace

std::shared_ptr<const engine::SceneCut> cut_of(const engine::SceneData& scene,
                                               const CutThrough& cut) {
    auto made = std::make_shared<engine::SceneCut>();
    const double sense = cut.keeps_low ? 1.0 : -1.0;
    made->normal = {0.0, 0.0, 0.0};
    made->normal[static_cast<int>(model::index_of(cut.axis))] = sense;
    made->offset = sense * static_cast<double>(cut.at) * 1e-6;
    engine::append_cut_faces(*made, scene.solid, cut_look, true);
    engine::append_cut_faces(*made, scene.translucent, room_look, false);
    return made;
}

const SeenMemo& seen(Desk& desk) {
    static_cast<void>(seen_scene(desk));
    return *desk.seen_memo;
}

const engine::SceneData& seen_scene(Desk& desk) {
    const auto& base = scene(desk);
    if (!desk.seen_memo) desk.seen_memo = std::make_shared<SeenMemo>();
    auto& memo = *desk.seen_memo;
    if (!is_current(memo, base, desk.ui.seeing.way, desk.ui.theme)) make_scene(memo, desk, base);
    auto& shown = memo.is_plain ? *desk.scene_memo : memo.scene;
    make_cut(memo, shown, desk.ui.seeing);
    shown.ghost = desk.scene_memo->ghost;
    return shown;
}

}  // namespace editor
