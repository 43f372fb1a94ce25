#include "model/schedule/pieces_json.h"

#include "model/resolve/bar_cuts.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/recipe.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/json_lines.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/plate_axes.h"
#include "model/schedule/wall_outline.h"

namespace model {
namespace {

std::string_view hold_of(FastenerSpec::Kind kind) {
    if (kind == FastenerSpec::Kind::screw_through) return "nut";
    return kind == FastenerSpec::Kind::screw_in_rivet_nut ? "rivet nut" : "tapped";
}

class Writer {
public:
    Writer(std::string& out,
           const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved)
        : json_{out},
          project_{project},
          resolved_{resolved},
          catalogue_{catalogue},
          words_{project, catalogue, resolved},
          fasteners_{catalogue, resolved},
          walls_(catalogue.sections.size()) {
        for (std::size_t i = 0; i < fasteners_.specs().size(); ++i) {
            quoted_specs_.push_back(engine::json_quoted(fasteners_.words(i).label));
        }
    }

    void write() {
        json_.raw("{\n\"project\":").text(project_.name).raw(",\n\"unit\":\"mm\",\n\"pieces\":[");
        for (Index i = 0; i < resolved_.pieces.size(); ++i) {
            json_.raw(i == 0 ? "\n" : ",\n");
            piece(i);
        }
        json_.raw("\n],\n\"joints\":[");
        for (Index i = 0; i < resolved_.joints.size(); ++i) {
            json_.raw(i == 0 ? "\n" : ",\n");
            joint(i);
        }
        json_.raw("\n]\n}\n");
    }

private:
    const ResolvedFrame& frame_of(const Piece& piece) const {
        return resolved_.frames[piece.frame];
    }

    // Of a part that a joint needs: the members that it joins.
    void joins(const Piece& piece) {
        const auto& members = project_.frames[piece.frame].members;
        if (piece.serves[0] == no_index) return;
        json_.raw(",\"joins\":[").text(members[piece.serves[0]].name);
        if (piece.serves[1] != piece.serves[0]) json_.raw(",").text(members[piece.serves[1]].name);
        json_.raw("]");
    }

    void piece(Index index) {
        const auto& piece = resolved_.pieces[index];
        const auto& frame = frame_of(piece);
        json_.raw("{\"id\":").id('P', index).raw(",\"mark\":").word(mark_of(piece));
        json_.raw(",\"hand\":").word(name_of(piece.hand));
        json_.raw(",\"member\":").text(words_.member(index));
        json_.raw(",\"frame\":").text(words_.frame(index));
        joins(piece);
        json_.raw(",\"section\":").text(words_.section(index));
        json_.raw(",\"length\":").mm(piece.length);
        run(piece);
        json_.raw(",\"datum\":").point(to_room(frame, piece.datum));
        if (piece.section < walls_.size() && !has_square_ends(piece)) cuts(piece);
        json_.raw(",\"plates\":[");
        bool is_first = true;
        for (const auto& wall : piece.walls()) {
            if (wall.is_root_fillet) continue;
            json_.raw(is_first ? "\n " : ",\n ");
            is_first = false;
            plate(index, wall);
        }
        json_.raw("]}");
    }

    std::string_view mark_of(const Piece& piece) const {
        if (piece.mark == no_index) return {};
        return resolved_.marks[piece.mark].name;
    }

    bool is_leaning(const Piece& piece) const { return piece.lean < resolved_.leans.size(); }

    void run(const Piece& piece) {
        json_.raw(",\"run\":");
        if (is_leaning(piece)) {
            json_.reals(piece_placement(resolved_, piece).z);
            return;
        }
        std::array<int, 3> run{};
        run[index_of(piece.run)] = piece.run_sense;
        json_.direction(direction_to_room(frame_of(piece), run));
    }

    // The walls of its section; none for a part of sheet.
    std::span<const SectionPlate> walls_of(const Piece& piece) {
        if (piece.section >= walls_.size()) return {};
        auto& walls = walls_[piece.section];
        if (walls.empty()) walls = section_plates(catalogue_.sections[piece.section]);
        return walls;
    }

    void cuts(const Piece& piece) {
        const auto place = piece_placement(resolved_, piece);
        bool is_first = true;
        for (std::size_t end = 0; end < 2; ++end) {
            const auto cut = end_cut(piece.ends[end], walls_of(piece));
            if (cut == engine::BarCut{}) continue;
            const double outward = end == 0 ? -1.0 : 1.0;
            const double at = end == 0 ? cut.recedes : in_mm(piece.length) - cut.recedes;
            json_.raw(is_first ? ",\"cuts\":[" : ",").raw("{\"at\":").real(at);
            json_.raw(",\"across\":");
            json_.reals(engine::direction_in(place, {cut.slope[0], cut.slope[1], outward}));
            json_.raw("}");
            is_first = false;
        }
        if (!is_first) json_.raw("]");
    }

    void plate(Index index, const Plate& plate) {
        const auto& piece = resolved_.pieces[index];
        json_.raw("{\"leg\":").word(words_.wall(index, plate.wall));
        const bool is_plain = plate.outline == no_index && has_square_ends(piece);
        if (is_leaning(piece)) {
            leaning_axes(piece, plate);
        } else {
            axes(piece, plate, is_plain);
        }
        if (!is_plain || is_leaning(piece)) outlines(piece, plate);
        json_.raw(",\"holes\":[");
        holes(piece, plate.wall);
        json_.raw("]}");
    }

    void axes(const Piece& piece, const Plate& plate, bool with_outline) {
        const auto& frame = frame_of(piece);
        const auto axes = plate_axes(piece, plate);
        json_.raw(",\"origin\":").point(to_room(frame, axes.origin));
        json_.raw(",\"u\":").direction(direction_to_room(frame, axes.u));
        json_.raw(",\"v\":").direction(direction_to_room(frame, axes.v));
        json_.raw(",\"n\":").direction(direction_to_room(frame, axes.n));
        json_.raw(",\"thickness\":").mm(axes.thickness);
        if (!with_outline) return;
        json_.raw(",\"outline\":[");
        corner(axes.lo[0], axes.lo[1], ",");
        corner(axes.hi[0], axes.lo[1], ",");
        corner(axes.hi[0], axes.hi[1], ",");
        corner(axes.lo[0], axes.hi[1], "]");
    }

    void leaning_axes(const Piece& piece, const Plate& plate) {
        const auto wall = wall_placement(resolved_, piece, plate, walls_of(piece));
        json_.raw(",\"origin\":").reals(wall.place.origin);
        json_.raw(",\"u\":").reals(wall.place.x);
        json_.raw(",\"v\":").reals(wall.place.y);
        json_.raw(",\"n\":").reals(wall.place.z);
        json_.raw(",\"thickness\":").mm(wall.thickness);
    }

    void outlines(const Piece& piece, const Plate& plate) {
        const auto outline = wall_outline(resolved_, piece, plate, catalogue_, walls_of(piece));
        json_.raw(",\"outline\":");
        loop(outline.near.corners);
        if (!outline.near.cut_outs.empty()) loops(",\"cut_outs\":", outline.near.cut_outs);
        if (outline.far.corners.empty()) return;
        json_.raw(",\"outline_far\":");
        loop(outline.far.corners);
        if (!outline.far.cut_outs.empty()) loops(",\"cut_outs_far\":", outline.far.cut_outs);
    }

    void loops(std::string_view key, const std::vector<Corners>& all) {
        json_.raw(key).raw("[");
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (i > 0) json_.raw(",");
            loop(all[i]);
        }
        json_.raw("]");
    }

    void loop(const Corners& corners) {
        json_.raw("[");
        for (std::size_t i = 0; i < corners.size(); ++i)
            corner(corners[i][0], corners[i][1], i + 1 < corners.size() ? "," : "");
        json_.raw("]");
    }

    void corner(Nm u, Nm v, std::string_view after) {
        json_.raw("[").mm(u).raw(",").mm(v).raw("]").raw(after);
    }

    void holes(const Piece& piece, std::uint8_t wall) {
        bool is_first = true;
        const auto end = piece.first_hole + piece.hole_count;
        for (auto i = piece.first_hole; i < end; ++i) {
            const auto& hole = resolved_.holes[i];
            if (hole.wall != wall) continue;
            json_.raw(is_first ? "\n  {\"id\":" : ",\n  {\"id\":").id('H', i);
            is_first = false;
            json_.raw(",\"at\":[").mm(hole.from_datum).raw(",").mm(hole.gauge);
            json_.raw("],\"diameter\":").mm(hole.diameter);
            json_.raw(",\"operation\":").word(name_of(hole.operation));
            if (hole.tap != no_index) json_.raw(",\"tap\":").word(catalogue_.screws[hole.tap].id);
            if (hole.fastener == no_index) {
                json_.raw("}");
                continue;
            }
            json_.raw(",\"joint\":").id('J', resolved_.fasteners[hole.fastener].joint);
            json_.raw(",\"fastener\":").id('F', hole.fastener).raw("}");
        }
    }

    // Sheet, braces and leaning members are fastened to what they lie on; no way for two members to
    // meet.
    std::string_view recipe_of(const Joint& joint) const {
        for (const Index piece : joint.pieces) {
            const auto kind = resolved_.pieces[piece].kind;
            if (kind == PieceKind::panel || is_between_nodes(kind)) return name_of(kind);
        }
        return recipes()[joint.recipe].name;
    }

    void joint(Index index) {
        const auto& joint = resolved_.joints[index];
        json_.raw("{\"id\":").id('J', index);
        json_.raw(",\"recipe\":").word(recipe_of(joint));
        json_.raw(",\"pieces\":[").id('P', joint.pieces[0]).raw(",");
        if (joint.shim != no_index) json_.id('P', joint.shim).raw(",");
        json_.id('P', joint.pieces[1]);
        if (joint.brace != no_index) json_.raw(",").id('P', joint.brace);
        json_.raw("],\"fasteners\":[");
        for (Index i = 0; i < joint.fastener_count; ++i) {
            json_.raw(i == 0 ? "\n " : ",\n ");
            fastener(joint.first_fastener + i);
        }
        json_.raw("]}");
    }

    void fastener(Index index) {
        const auto& fastener = resolved_.fasteners[index];
        const auto& frame = resolved_.frames[resolved_.joints[fastener.joint].frame];
        std::array<int, 3> axis{};
        axis[fastener.axis] = fastener.drive;
        json_.raw("{\"id\":").id('F', index);
        json_.raw(",\"at\":").point(to_room(frame, fastener.at));
        json_.raw(",\"axis\":").direction(direction_to_room(frame, axis));
        json_.raw(",\"spec\":").raw(quoted_specs_[fasteners_.spec_of(index)]);
        if (fastener.spec.kind != FastenerSpec::Kind::blind_rivet) {
            json_.raw(",\"hold\":").word(hold_of(fastener.spec.kind));
        }
        json_.raw(",\"head_side\":").id('P', fastener.stack[0].piece).raw(",\"stack\":[");
        for (std::uint8_t i = 0; i < fastener.stack_count; ++i) {
            if (i > 0) json_.raw(",");
            stack_plate(fastener.stack[i]);
        }
        json_.raw("],\"grip_least\":").mm(fastener.grip_least);
        json_.raw(",\"grip_most\":").mm(fastener.grip_most).raw("}");
    }

    void stack_plate(const StackPlate& plate) {
        json_.raw("{\"piece\":").id('P', plate.piece);
        json_.raw(",\"leg\":").word(words_.wall(plate.piece, plate.wall));
        json_.raw(",\"thickness\":").mm(plate.thickness).raw("}");
    }

    JsonLines json_;
    const Project& project_;
    const Resolved& resolved_;
    const Catalogue& catalogue_;
    PieceWords words_;
    FastenersInUse fasteners_;
    std::vector<std::vector<SectionPlate>> walls_;  // by section, only of those in use
    std::vector<std::string> quoted_specs_;         // as in fasteners_
};

}  // namespace

std::string pieces_json(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved) {
    // Typical sizes, so that the text seldom has to move.
    constexpr std::size_t per_piece = 900;
    constexpr std::size_t per_hole = 130;
    constexpr std::size_t per_joint = 120;
    constexpr std::size_t per_fastener = 320;
    std::string out;
    out.reserve(200 + resolved.pieces.size() * per_piece + resolved.holes.size() * per_hole +
                resolved.joints.size() * per_joint + resolved.fasteners.size() * per_fastener);
    Writer{out, project, catalogue, resolved}.write();
    return out;
}

}  // namespace model
