#include "engine/render/renderer.h"

#include "engine/render/gl_batch.h"
#include "engine/render/gl_canvas.h"
#include "engine/render/gl_program.h"
#include "engine/render/shaders.h"

#include <glad/gl.h>
#include <glm/geometric.hpp>
#include <glm/gtc/type_ptr.hpp>
#include <glm/mat4x4.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

struct Programs {
    GlProgram faces;
    GlProgram lines;
    GlProgram ground;
};

// What a picture depends on.
struct Wanted {
    std::uint64_t revision = 0;
    const SceneBatch* fixed = nullptr;
    const SceneCut* cut = nullptr;
    const SceneBatch* ghost = nullptr;
    SceneEmphasis emphasis;
    Camera camera;
    Viewport viewport;
    SceneStyle style;
    int samples = 0;

    bool operator==(const Wanted&) const = default;
};

struct Sight {
    glm::mat4 to_clip{1.0F};
    glm::vec3 light{};
    glm::vec3 viewer{};
    glm::vec2 haze{};            // smallest value along `viewer`, one by the range
    float pixels_per_mm = 1.0F;  // where a point's fourth clip coordinate is 1
    // How the third clip coordinate falls when a point at depth w comes nearer by l mm: the first
    // value times l (parallel), plus the second times l / (w - l) (perspective).
    glm::vec2 depth_rise{};
    glm::vec4 cut{};
};

glm::vec3 colour_of(Colour colour) {
    return {static_cast<float>(colour.red) / 255.0F, static_cast<float>(colour.green) / 255.0F,
            static_cast<float>(colour.blue) / 255.0F};
}

Colour mixed(Colour a, Colour b, double share) {
    const auto mix = [share](std::uint8_t x, std::uint8_t y) {
        return static_cast<std::uint8_t>(std::lround(x + (y - x) * share));
    };
    return {.red = mix(a.red, b.red),
            .green = mix(a.green, b.green),
            .blue = mix(a.blue, b.blue),
            .alpha = a.alpha};
}

SceneBounds with_ground(SceneBounds bounds, const GroundGrid& ground) {
    return is_empty(ground.area) ? bounds : hull(bounds, ground.area);
}

// The third clip coordinate is linear in the depth: two places on the line of sight tell how.
glm::vec2 depth_rise_of(const glm::dmat4& clip, const Camera& camera, bool is_parallel) {
    const auto at = [&](double depth) {
        const auto place = eye_of(camera) + forward_of(camera) * depth;
        return (clip * glm::dvec4{place, 1.0}).z;
    };
    const double slope = (at(1000.0) - at(0.0)) / 1000.0;
    if (is_parallel) return {static_cast<float>(slope), 0.0F};
    return {0.0F, static_cast<float>(-at(0.0))};
}

Sight sight_of(const SceneData& scene, const Camera& camera, Viewport viewport) {
    const auto seen = bounds_of(scene);
    const auto right = right_of(camera);
    const auto up = up_of(camera);
    const auto viewer = -forward_of(camera);
    Sight sight;
    const auto clip = view_projection(camera, with_ground(seen, scene.ground), viewport);
    sight.to_clip = glm::mat4{clip};
    sight.light = glm::vec3{glm::normalize(viewer * 0.50 + up * 0.75 - right * 0.45)};
    sight.viewer = glm::vec3{viewer};
    const auto middle = is_empty(seen) ? camera.target : (seen.lo + seen.hi) / 2.0;
    const auto half = is_empty(seen) ? glm::dvec3{1.0} : (seen.hi - seen.lo) / 2.0;
    const double reach = std::max(1.0, glm::dot(glm::abs(viewer), half));
    const double at_target = 1.0 / mm_per_pixel(camera, viewport);
    const bool is_parallel = camera.projection == Projection::parallel;
    sight.pixels_per_mm = static_cast<float>(is_parallel ? at_target : at_target * camera.distance);
    sight.depth_rise = depth_rise_of(clip, camera, is_parallel);
    sight.haze = {static_cast<float>(glm::dot(middle, viewer) - reach),
                  static_cast<float>(0.5 / reach)};
    return sight;
}

class Uniforms {
public:
    explicit Uniforms(const GlProgram& program) : program_{program.name()} {
        glUseProgram(program_);
    }

    void set(const char* name, float value) const { glUniform1f(at(name), value); }
    void set(const char* name, const glm::vec2& v) const { glUniform2f(at(name), v.x, v.y); }
    void set(const char* name, const glm::vec3& v) const { glUniform3f(at(name), v.x, v.y, v.z); }
    void set(const char* name, const glm::vec4& v) const {
        glUniform4f(at(name), v.x, v.y, v.z, v.w);
    }
    void set(const char* name, const glm::mat4& m) const {
        glUniformMatrix4fv(at(name), 1, GL_FALSE, glm::value_ptr(m));
    }

private:
    GLint at(const char* name) const { return glGetUniformLocation(program_, name); }

    GLuint program_;
};

// The plane as the shaders read it; without a cut everything lies behind it.
glm::vec4 plane_of(const SceneData& scene) {
    if (!scene.cut) return {0.0F, 0.0F, 0.0F, 1.0F};
    return {glm::vec3{scene.cut->normal}, static_cast<float>(scene.cut->offset)};
}

ItemColours on_paper(const SceneItem& item, const SceneStyle& style) {
    ItemColours own{style.paper, style.ink};
    own.face.alpha = item.colour.alpha;
    own.line.alpha = item.line.alpha;
    return own;
}

std::vector<ItemColours> colours_of(const SceneBatch& batch,
                                    const SceneEmphasis& emphasis,
                                    const SceneStyle& style) {
    std::vector<ItemColours> colours;
    colours.reserve(batch.items.size());
    for (const auto& item : batch.items) {
        ItemColours own{item.colour, item.line};
        if (style.is_line_drawing) own = on_paper(item, style);
        const bool can_be_picked = item.pick_id != no_pick;
        if (can_be_picked && std::ranges::count(emphasis.selected, item.pick_id) != 0) {
            own = {mixed(own.face, style.selected, 0.62), style.selected};
        } else if (can_be_picked && emphasis.hovered == item.pick_id) {
            own = {mixed(own.face, style.hovered, 0.60), style.selected};
        }
        own.line.alpha = item.line.alpha;
        colours.push_back(own);
    }
    return colours;
}

// The ground's lines as an item without faces.
SceneBatch ground_lines(const GroundGrid& ground) {
    SceneBatch batch;
    if (is_empty(ground.area) || !(ground.spacing > 0.0)) return batch;
    const auto z = static_cast<float>(ground.height);
    for (int axis = 0; axis < 2; ++axis) {
        const int other = 1 - axis;
        const double length = ground.area.hi[axis] - ground.area.lo[axis];
        const auto count = static_cast<int>(std::min(1000.0, std::round(length / ground.spacing)));
        for (int i = 0; i <= count; ++i) {
            std::array<float, 3> from{0.0F, 0.0F, z};
            auto to = from;
            const auto along = static_cast<std::size_t>(axis);
            const auto across = static_cast<std::size_t>(other);
            from[along] = to[along] = static_cast<float>(ground.area.lo[axis] + i * ground.spacing);
            from[across] = static_cast<float>(ground.area.lo[other]);
            to[across] = static_cast<float>(ground.area.hi[other]);
            batch.mesh.edges.push_back(from);
            batch.mesh.edges.push_back(to);
        }
    }
    close_item(batch, {});
    return batch;
}

}  // namespace

Result<Done> load_gl(GlLookUp look_up) {
    const int version = gladLoadGL(look_up);
    if (version != 0 && GLAD_GL_VERSION_3_3 != 0) return Done{};
    return Error{ErrorCode::unknown_name, "the graphics driver",
                 "it offers no OpenGL 3.3; install the Mesa drivers (package libgl1-mesa-dri)"};
}

struct Renderer::State {
    std::optional<Error> fault;
    Programs programs;
    GlBatch solid = GlBatch::create();
    GlBatch translucent = GlBatch::create();
    GlBatch ground = GlBatch::create();
    GlBatch fixed = GlBatch::create();
    std::shared_ptr<const SceneBatch> fixed_data;  // kept, so that its address stays its own
    GlBatch cut_faces = GlBatch::create();
    std::shared_ptr<const SceneCut> cut_data;
    GlBatch ghost = GlBatch::create();
    std::shared_ptr<const SceneBatch> ghost_data;
    GlCanvas canvas;
    std::optional<Wanted> drawn;
    std::uint64_t pictures = 0;

    State() {
        const auto make = [this](std::string_view vertex, std::string_view fragment) {
            auto program = gl_program(vertex, fragment);
            if (program) return std::move(program).value();
            fault = program.error();
            return GlProgram{};
        };
        programs.faces = make(shaders::face_vertex, shaders::face_fragment);
        programs.lines = make(shaders::line_vertex, shaders::face_fragment);
        programs.ground = make(shaders::ground_vertex, shaders::ground_fragment);
    }

    void bring_up_to(const Wanted& wanted, const SceneData& scene);
    void bring_cut_up_to(const Wanted& wanted, const SceneData& scene);
    void paint(const Wanted& wanted, const SceneData& scene) const;
    void paint_cut(const Wanted& wanted, const Sight& sight) const;
    void paint_ground(const Wanted& wanted, const Sight& sight, const GroundGrid& grid) const;
    void paint_faces(const Wanted& wanted, const Sight& sight, const GlBatch& batch) const;
    Uniforms line_uniforms(const Wanted& wanted, const Sight& sight) const;
    void paint_hidden_lines(const Wanted& wanted, const Sight& sight, const SceneData& scene) const;
    void paint_ghost(const Wanted& wanted, const Sight& sight) const;
};

Renderer::Renderer() : state_{std::make_unique<State>()} {}
Renderer::~Renderer() = default;
Renderer::Renderer(Renderer&&) noexcept = default;
Renderer& Renderer::operator=(Renderer&&) noexcept = default;

const std::optional<Error>& Renderer::fault() const { return state_->fault; }

unsigned Renderer::draw(const SceneData& scene,
                        const SceneEmphasis& emphasis,
                        const Camera& camera,
                        Viewport viewport,
                        const SceneStyle& style,
                        int samples) {
    const Wanted wanted{scene.revision,  scene.fixed.get(),
                        scene.cut.get(), scene.ghost.get(),
                        emphasis,        camera,
                        viewport,        style,
                        samples};
    if (state_->drawn == wanted) return state_->canvas.texture();
    state_->bring_up_to(wanted, scene);
    if (!state_->fault) state_->paint(wanted, scene);
    state_->drawn = wanted;
    ++state_->pictures;
    return state_->canvas.texture();
}

Image Renderer::read_back() const { return state_->drawn ? state_->canvas.read_back() : Image{}; }

std::uint64_t Renderer::pictures_drawn() const { return state_->pictures; }

void Renderer::State::bring_up_to(const Wanted& wanted, const SceneData& scene) {
    const bool is_new = !drawn || drawn->revision != wanted.revision;
    if (is_new) {
        solid.upload(scene.solid);
        translucent.upload(scene.translucent);
        ground.upload(ground_lines(scene.ground));
    }
    const bool has_new_fixed = fixed_data != scene.fixed;
    if (has_new_fixed) {
        fixed_data = scene.fixed;
        fixed.upload(fixed_data ? *fixed_data : SceneBatch{});
    }
    if (fixed_data && (has_new_fixed || !drawn || drawn->emphasis != wanted.emphasis ||
                       drawn->style != wanted.style)) {
        fixed.upload_colours(colours_of(*fixed_data, wanted.emphasis, wanted.style));
    }
    bring_cut_up_to(wanted, scene);
    if (ghost_data != scene.ghost) {
        ghost_data = scene.ghost;
        ghost.upload(ghost_data ? *ghost_data : SceneBatch{});
        if (ghost_data) ghost.upload_colours(colours_of(*ghost_data, {}, wanted.style));
    }
    if (is_new || drawn->emphasis != wanted.emphasis || drawn->style != wanted.style) {
        solid.upload_colours(colours_of(scene.solid, wanted.emphasis, wanted.style));
        translucent.upload_colours(colours_of(scene.translucent, wanted.emphasis, wanted.style));
    }
    if (!drawn || drawn->viewport != wanted.viewport || drawn->samples != wanted.samples)
        canvas = GlCanvas{wanted.viewport, wanted.samples};
}

void Renderer::State::bring_cut_up_to(const Wanted& wanted, const SceneData& scene) {
    const bool is_other = cut_data != scene.cut;
    if (is_other) {
        cut_data = scene.cut;
        cut_faces.upload(cut_data ? cut_data->faces : SceneBatch{});
    }
    if (!cut_data) return;
    if (!is_other && drawn && drawn->emphasis == wanted.emphasis && drawn->style == wanted.style)
        return;
    auto colours = colours_of(cut_data->faces, wanted.emphasis, wanted.style);
    if (wanted.style.is_line_drawing) {
        for (auto& it : colours) it.face = mixed(it.face, wanted.style.ink, 0.35);
    }
    cut_faces.upload_colours(colours);
}

void Renderer::State::paint(const Wanted& wanted, const SceneData& scene) const {
    auto sight = sight_of(scene, wanted.camera, wanted.viewport);
    sight.cut = plane_of(scene);
    const auto paper = colour_of(wanted.style.paper);
    canvas.begin();
    glClearColor(paper.x, paper.y, paper.z, 1.0F);
    glDepthMask(GL_TRUE);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    glActiveTexture(GL_TEXTURE0);
    if (!wanted.style.is_line_drawing) paint_ground(wanted, sight, scene.ground);

    glEnable(GL_DEPTH_TEST);
    paint_cut(wanted, sight);
    if (cut_data) glEnable(GL_CLIP_DISTANCE0);
    glEnable(GL_CULL_FACE);
    paint_faces(wanted, sight, solid);
    glDisable(GL_CULL_FACE);
    line_uniforms(wanted, sight);
    solid.draw_lines();
    translucent.draw_lines();
    if (!wanted.style.is_line_drawing) {
        glEnable(GL_CULL_FACE);
        if (fixed_data) paint_faces(wanted, sight, fixed);
        glDepthMask(GL_FALSE);
        paint_faces(wanted, sight, translucent);
        glDisable(GL_CULL_FACE);
        glDepthMask(GL_TRUE);
    }
    glDepthMask(GL_FALSE);
    paint_hidden_lines(wanted, sight, scene);
    if (ghost_data) paint_ghost(wanted, sight);
    glDepthMask(GL_TRUE);
    glDisable(GL_CLIP_DISTANCE0);

    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    glUseProgram(0);
    canvas.finish();
}

// In the plane itself: what is cut there is not what the plane takes away.
void Renderer::State::paint_cut(const Wanted& wanted, const Sight& sight) const {
    if (!cut_data) return;
    glDisable(GL_CULL_FACE);
    paint_faces(wanted, sight, cut_faces);
    line_uniforms(wanted, sight);
    cut_faces.draw_lines();
}

void Renderer::State::paint_ground(const Wanted& wanted,
                                   const Sight& sight,
                                   const GroundGrid& grid) const {
    const Uniforms uniforms{programs.ground};
    const auto& style = wanted.style;
    const glm::vec2 middle{(grid.area.lo + grid.area.hi) / 2.0};
    uniforms.set("to_clip", sight.to_clip);
    uniforms.set("pixels", glm::vec2{wanted.viewport.width, wanted.viewport.height});
    uniforms.set("width", style.grid_width);
    uniforms.set("look",
                 glm::vec4{colour_of(style.grid), static_cast<float>(style.grid.alpha) / 255.0F});
    uniforms.set("middle", middle);
    uniforms.set("half_size", glm::vec2{(grid.area.hi - grid.area.lo) / 2.0});
    ground.draw_lines();
}

void Renderer::State::paint_faces(const Wanted& wanted,
                                  const Sight& sight,
                                  const GlBatch& batch) const {
    const Uniforms uniforms{programs.faces};
    uniforms.set("to_clip", sight.to_clip);
    uniforms.set("light", sight.light);
    uniforms.set("viewer", sight.viewer);
    uniforms.set("paper", colour_of(wanted.style.paper));
    uniforms.set("haze", sight.haze);
    uniforms.set("shade", wanted.style.is_line_drawing ? 0.0F : 1.0F);
    uniforms.set("cut", sight.cut);
    batch.draw_faces();
}

Uniforms Renderer::State::line_uniforms(const Wanted& wanted, const Sight& sight) const {
    const Uniforms uniforms{programs.lines};
    uniforms.set("to_clip", sight.to_clip);
    uniforms.set("pixels", glm::vec2{wanted.viewport.width, wanted.viewport.height});
    uniforms.set("width", wanted.style.line_width);
    uniforms.set("strength", 1.0F);
    uniforms.set("fading", wanted.style.is_line_drawing ? 0.0F : 1.0F);
    uniforms.set("cut", sight.cut);
    uniforms.set("depth_rise", sight.depth_rise);
    uniforms.set("pixels_per_mm", sight.pixels_per_mm / std::max(1.0F, wanted.style.line_width));
    uniforms.set("viewer", sight.viewer);
    uniforms.set("paper", colour_of(wanted.style.paper));
    uniforms.set("haze", sight.haze);
    return uniforms;
}

// What is selected shows faintly through what lies before it: faint enough without growing paler
// with distance.
void Renderer::State::paint_hidden_lines(const Wanted& wanted,
                                         const Sight& sight,
                                         const SceneData& scene) const {
    const auto& selected = wanted.emphasis.selected;
    if (selected.empty()) return;
    const auto uniforms = line_uniforms(wanted, sight);
    uniforms.set("strength", 0.45F);
    uniforms.set("fading", 0.0F);
    glDepthFunc(GL_GREATER);
    const auto& items = scene.solid.items;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].pick_id == no_pick) continue;
        if (std::ranges::count(selected, items[i].pick_id) != 0) solid.draw_lines_of(i);
    }
    glDepthFunc(GL_LESS);
}

// Its lines show faintly through what lies before them, so that it is seen where it would be.
void Renderer::State::paint_ghost(const Wanted& wanted, const Sight& sight) const {
    glEnable(GL_CULL_FACE);
    paint_faces(wanted, sight, ghost);
    glDisable(GL_CULL_FACE);
    const auto uniforms = line_uniforms(wanted, sight);
    ghost.draw_lines();
    uniforms.set("strength", 0.35F);
    uniforms.set("fading", 0.0F);
    glDepthFunc(GL_GREATER);
    ghost.draw_lines();
    glDepthFunc(GL_LESS);
}

}  // namespace engine
