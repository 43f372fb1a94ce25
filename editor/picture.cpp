#include "editor/picture.h"

#include "editor/open_project.h"
#include "editor/skeleton_scene.h"
#include "engine/files/whole_file.h"
#include "engine/render/offscreen.h"
#include "engine/render/renderer.h"
#include "model/resolve/resolve.h"

#include <array>
#include <cstdint>
#include <ostream>
#include <string>
#include <utility>

namespace editor {
namespace {

// The skeleton fills the picture; the room may run out of it.
engine::Camera camera_for(const engine::SceneData& scene,
                          const model::Resolved& resolved,
                          const PictureLook& look) {
    const auto skeleton = engine::bounds_of(scene.solid);
    const auto shown = engine::is_empty(skeleton) ? engine::bounds_of(scene) : skeleton;
    const auto seen = engine::orbited(engine::seen_from(look.from), front_turn(resolved), 0.0);
    return engine::fitted(seen, shown, look.size);
}

// Drawn at twice the size and halved, so that the thin edges of sheet stay apart, and smoothed by
// four samples a pixel, both as far as memory allows: a sample takes eight bytes.
engine::Image drawn(engine::Renderer& renderer,
                    const engine::SceneData& scene,
                    const engine::Camera& camera,
                    const PictureLook& look) {
    constexpr std::int64_t most_samples = 64'000'000;
    const auto size = look.size;
    engine::SceneStyle style;
    style.is_line_drawing = look.as_line_drawing;
    if (look.as_line_drawing) style.paper = {0xFF, 0xFF, 0xFF};
    const std::int64_t pixels = std::int64_t{size.width} * size.height;
    const bool can_double = pixels * 16 <= most_samples;
    if (!can_double) {
        renderer.draw(scene, {}, camera, size, style, pixels * 4 <= most_samples ? 4 : 1);
        return renderer.read_back();
    }
    style.line_width *= 2.0F;
    style.grid_width *= 2.0F;
    renderer.draw(scene, {}, camera, {2 * size.width, 2 * size.height}, style, 4);
    return engine::halved(renderer.read_back());
}

engine::Result<engine::Image> picture_of_file(const std::filesystem::path& project_file,
                                              const PictureLook& look) {
    const auto project = open_project(project_file);
    if (!project) return project.error();
    const auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    return picture_of(*project, *catalogue, model::resolve(*project, *catalogue), look);
}

}  // namespace

std::optional<engine::ViewFrom> read_view_from(std::string_view text) {
    using engine::ViewFrom;
    constexpr std::array<std::pair<std::string_view, ViewFrom>, 4> names{
        {{"front", ViewFrom::front},
         {"left", ViewFrom::left},
         {"top", ViewFrom::top},
         {"corner", ViewFrom::corner}}};
    for (const auto& [name, view] : names) {
        if (name == text) return view;
    }
    return std::nullopt;
}

engine::Result<engine::Image> picture_of(const model::Project& project,
                                         const model::Catalogue& catalogue,
                                         const model::Resolved& resolved,
                                         const PictureLook& look) {
    const auto context = engine::OffscreenContext::create();
    if (!context) return context.error();
    engine::Renderer renderer;
    if (renderer.fault()) return *renderer.fault();
    const auto scene = skeleton_scene(project, catalogue, resolved);
    return drawn(renderer, scene, camera_for(scene, resolved, look), look);
}

ExitStatus write_picture(const std::filesystem::path& project_file,
                         const std::filesystem::path& picture_file,
                         const PictureLook& look,
                         Streams streams) {
    const auto refused = [&streams](const engine::Error& error) {
        streams.err << "barwright: " << engine::to_text(error) << "\n";
        return ExitStatus::not_possible;
    };
    const auto image = picture_of_file(project_file, look);
    if (!image) return refused(image.error());
    const auto written = engine::write_whole_file(picture_file, engine::png_bytes(*image));
    if (!written) return refused(written.error());
    streams.out << picture_file.string() << ": " << image->width << " x " << image->height
                << " pixels\n";
    return ExitStatus::fine;
}

}  // namespace editor
