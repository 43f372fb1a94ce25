#include "editor/view/seen_items.h"

#include "editor/room_scene.h"
#include "engine/geometry/mesh_writer.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>

namespace editor {
namespace {

using engine::Colour;
using model::Index;

constexpr std::uint8_t faint_panel = 0x48;
constexpr std::uint8_t faint_line = 0x80;
constexpr std::uint8_t ghost = 0x0C;  // of what is not the piece that is looked at alone
constexpr std::uint8_t ghost_line = 0x30;
constexpr double faint_room = 0.35;  // of its own strength

enum class Into { nothing, solid, translucent };

struct ItemSeen {
    Into into = Into::solid;
    engine::ItemLook look;
    glm::dvec3 moved{0.0};
};

struct Run {
    std::size_t vertices = 0;
    std::size_t triangles = 0;
    std::size_t edges = 0;
};

Run end_of(const engine::SceneItem& item) {
    return {item.vertices_end, item.triangles_end, item.edges_end};
}

engine::MeshPoint moved_by(const engine::MeshPoint& at, const engine::MeshPoint& by) {
    return {at[0] + by[0], at[1] + by[1], at[2] + by[2]};
}

void append(engine::SceneBatch& into,
            const engine::Mesh& from,
            const Run& begin,
            const Run& end,
            const ItemSeen& seen) {
    auto& mesh = into.mesh;
    const auto by = engine::to_floats({seen.moved.x, seen.moved.y, seen.moved.z});
    const auto base = static_cast<std::uint32_t>(mesh.vertices.size());
    const auto first = static_cast<std::uint32_t>(begin.vertices);
    for (std::size_t i = begin.vertices; i < end.vertices; ++i) {
        mesh.vertices.push_back({moved_by(from.vertices[i].position, by), from.vertices[i].normal});
    }
    for (std::size_t i = begin.triangles; i < end.triangles; ++i) {
        mesh.triangles.push_back(from.triangles[i] - first + base);
    }
    for (std::size_t i = begin.edges; i < end.edges; ++i) {
        mesh.edges.push_back(moved_by(from.edges[i], by));
    }
    engine::close_item(into, seen.look);
}

Colour with_alpha(Colour colour, std::uint8_t alpha) {
    colour.alpha = alpha;
    return colour;
}

ItemSeen faint(engine::ItemLook look, std::uint8_t face, std::uint8_t line) {
    look.colour = with_alpha(look.colour, face);
    look.line = with_alpha(look.line, line);
    return {Into::translucent, look, {}};
}

class Decider {
public:
    explicit Decider(const SeenParts& parts) : parts_{parts} {
        if (!parts.way.alone) return;
        alone_ = find_piece(*parts.derived.project, parts.derived.resolved, *parts.way.alone);
    }

    ItemSeen of_piece(Index piece, engine::ItemLook look) const {
        if (piece < parts_.colours.size()) look.colour = parts_.colours[piece];
        ItemSeen seen{Into::solid, look, {}};
        const bool is_panel = parts_.derived.resolved.pieces[piece].kind == model::PieceKind::panel;
        if (alone_) {
            if (piece != *alone_) seen = left_aside(look);
        } else if (is_panel && parts_.way.panels == Visible::hidden) {
            seen.into = Into::nothing;
        } else if (is_panel && parts_.way.panels == Visible::faintly) {
            seen = faint(look, faint_panel, faint_line);
        }
        if (piece < parts_.moved.size()) seen.moved = parts_.moved[piece];
        return seen;
    }

    // With the plate under its head; gone where anything that it holds is.
    ItemSeen of_fastener(const model::Fastener& fastener, const engine::ItemLook& look) const {
        ItemSeen seen{alone_ ? Into::nothing : Into::solid, look, {}};
        for (std::size_t i = 0; i < fastener.stack_count; ++i) {
            const Index piece = fastener.stack[i].piece;
            if (piece >= parts_.derived.resolved.pieces.size()) continue;
            const auto plate = of_piece(piece, look);
            if (plate.into == Into::nothing) seen.into = Into::nothing;
            if (i == 0) seen.moved = plate.moved;
        }
        return seen;
    }

    ItemSeen of_obstacle(engine::ItemLook look) const {
        if (alone_ || parts_.way.room == Visible::hidden) return {Into::nothing, look, {}};
        if (parts_.theme == Theme::dark) look = in_the_evening(look);
        if (parts_.way.room == Visible::faintly) {
            look.colour.alpha = weaker(look.colour.alpha);
            look.line.alpha = weaker(look.line.alpha);
        }
        return {Into::translucent, look, {}};
    }

private:
    static std::uint8_t weaker(std::uint8_t alpha) {
        return static_cast<std::uint8_t>(std::lround(alpha * faint_room));
    }

    // Sand that does not glow, with lines that show on the dark ground.
    static engine::ItemLook in_the_evening(engine::ItemLook look) {
        look.colour = {0x8C, 0x78, 0x4C, look.colour.alpha};
        look.line = {0xC9, 0xAF, 0x74, look.line.alpha};
        return look;
    }

    static ItemSeen left_aside(engine::ItemLook look) {
        look.pick_id = engine::no_pick;
        return faint(look, ghost, ghost_line);
    }

    const SeenParts& parts_;
    std::optional<Index> alone_;
};

void empty(engine::SceneBatch& batch) {
    batch.items.clear();
    batch.mesh.vertices.clear();
    batch.mesh.triangles.clear();
    batch.mesh.edges.clear();
}

void append_solids(engine::SceneData& scene,
                   const engine::SceneBatch& base,
                   const SeenParts& parts,
                   const Decider& decider) {
    const auto& resolved = parts.derived.resolved;
    Run begin;
    for (std::size_t i = 0; i < base.items.size(); ++i) {
        const auto& item = base.items[i];
        const engine::ItemLook look{item.pick_id, item.colour, item.line};
        const bool is_piece = i < resolved.pieces.size();
        const auto seen =
            is_piece ? decider.of_piece(static_cast<Index>(i), look)
                     : decider.of_fastener(resolved.fasteners[i - resolved.pieces.size()], look);
        const Run end = end_of(item);
        if (seen.into == Into::solid) append(scene.solid, base.mesh, begin, end, seen);
        if (seen.into == Into::translucent) append(scene.translucent, base.mesh, begin, end, seen);
        begin = end;
    }
}

void append_room(engine::SceneBatch& into, const engine::SceneBatch& base, const Decider& decider) {
    Run begin;
    for (const auto& item : base.items) {
        const auto seen = decider.of_obstacle({item.pick_id, item.colour, item.line});
        const Run end = end_of(item);
        if (seen.into != Into::nothing) append(into, base.mesh, begin, end, seen);
        begin = end;
    }
}

}  // namespace

engine::SceneData seen_items(const engine::SceneData& base,
                             const SeenParts& parts,
                             engine::SceneData memory) {
    engine::SceneData scene = std::move(memory);
    empty(scene.solid);
    empty(scene.translucent);
    const Decider decider{parts};
    append_solids(scene, base.solid, parts, decider);
    append_room(scene.translucent, base.translucent, decider);
    const bool has_room = parts.way.room != Visible::hidden && !parts.way.alone;
    scene.fixed = has_room ? base.fixed : nullptr;
    scene.ground = base.ground;
    scene.cut.reset();
    return scene;
}

}  // namespace editor
