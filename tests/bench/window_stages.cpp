#include "tests/bench/window_stages.h"

#include "editor/seen_scene.h"
#include "editor/skeleton_scene.h"
#include "engine/render/gl_batch.h"
#include "model/room/resolve_in_room.h"

#include "tests/bench/must.h"

#include <utility>
#include <vector>

namespace tests {
namespace {

Spent uploading(const OffscreenWindow& window, const engine::SceneBatch& batch) {
    std::vector<engine::ItemColours> colours;
    for (const auto& item : batch.items) colours.push_back({item.colour, item.line});
    auto gl_batch = engine::GlBatch::create();
    return median_spent([&] {
        gl_batch.upload(batch);
        gl_batch.upload_colours(colours);
        window.finish();
    });
}

SpentInTurn drawing_scene(OffscreenWindow& window, BareDraw& bare) {
    auto& camera = window.desk.ui.view.camera;
    const auto before = camera;
    const auto turn = [&] { camera = engine::orbited(camera, 0.011, 0.0); };
    const auto draw = [&] {
        window.paint_scene();
        window.finish();
    };
    const auto spent = spent_in_turn(turn, draw, [&] {
        bare.turn_and_draw();
        window.finish();
    });
    camera = before;
    return spent;
}

}  // namespace

WindowStages window_stages(OffscreenWindow& window, BareDraw& bare) {
    window.settle();
    window.show();
    auto& desk = window.desk;
    const auto& now = editor::derived(desk);
    const auto& project = *now.project;
    const auto& tables = *desk.catalogue;
    std::size_t used = 0;  // so that no work is left out as unused
    WindowStages stages;
    stages.resolve = median_spent(
        [&] { used += model::resolve_in_room(project, tables, *desk.scans).pieces.size(); });
    stages.follows = median_spent(
        [&] { used += editor::derive(now.project, now.revision, tables, desk.scans).cuts.size(); });
    engine::SceneData scene;
    stages.scene = median_spent(
        [&] { scene = editor::skeleton_scene(project, tables, now.resolved, std::move(scene)); });
    stages.upload = uploading(window, scene.solid);
    stages.panels = median_spent([&] { window.build_frame(); });
    stages.scene_drawn = drawing_scene(window, bare);
    stages.panels_drawn = median_spent([&] {
        window.paint_panels();
        window.finish();
    });
    must(used > 0, "anything is resolved");
    return stages;
}

}  // namespace tests
