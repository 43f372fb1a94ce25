#include "model/resolve/panel_fastening.h"

#include "model/resolve/fasten_findings.h"
#include "model/resolve/fastener_choice.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/panel_findings.h"
#include "model/resolve/panel_row.h"
#include "model/resolve/piece_holes.h"
#include "model/resolve/sheet_outline.h"
#include "model/resolve/slanted_end.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

Nm thickness_of(const Plate& plate) {
    return plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis];
}

class PanelJoiner {
public:
    PanelJoiner(const Project& project,
                const Catalogue& catalogue,
                const PlacedPanel& panel,
                Index number,
                Resolved& resolved)
        : project_{project},
          catalogue_{catalogue},
          panel_{panel},
          number_{number},
          out_{resolved},
          frame_number_{resolved.pieces[number].frame},
          frame_{project.frames[frame_number_]},
          stated_{frame_.panels[panel.stated]} {}

    void join() {
        choose_id();
        bool has_rest = false;
        const ResolvedFrame placed = out_.frames[frame_number_];
        for (Index i = 0; i < placed.piece_count; ++i) {
            const Index piece = placed.first_piece + i;
            for (std::uint8_t w = 0; w < out_.pieces[piece].plate_count; ++w) {
                const auto rest = rest_on(piece, w);
                if (!rest) continue;
                has_rest = true;
                join(*rest);
            }
        }
        report(has_rest);
    }

private:
    Subject subject() const { return panel_subject(frame_, stated_); }

    void choose_id() {
        id_ = stated_.fastener;
        if (!id_.empty() && find_rivet(catalogue_, id_) == nullptr) {
            out_.findings.push_back(not_a_rivet(catalogue_, id_, subject()));
        }
        if (find_rivet(catalogue_, id_) == nullptr) id_ = project_.shop.fastener;
        if (find_rivet(catalogue_, id_) == nullptr) id_.clear();
    }

    std::optional<PanelRest> rest_on(Index number, std::uint8_t wall) const {
        const Piece& piece = out_.pieces[number];
        const Plate& plate = piece.plates[wall];
        if (piece.kind == PieceKind::foot || !touches(panel_, piece, plate)) return std::nullopt;
        PanelRest rest{.piece = number, .wall = plate.wall};
        const Region seen = seen_on(panel_.face, plate.box);
        for (std::size_t k = 0; k < 2; ++k) {
            rest.lap.lo[k] = std::max(seen.lo[k], panel_.sheet.bounds.lo[k]);
            rest.lap.hi[k] = std::min(seen.hi[k], panel_.sheet.bounds.hi[k]);
        }
        rest.along = panel_.face.axis[0] == index_of(piece.run) ? 0 : 1;
        return rest;
    }

    // By the rule of the plates' thickness, where they are metal; else by that of the member.
    FastenerAnswer choose(const PanelRest& rest) const {
        const Piece& member = out_.pieces[rest.piece];
        const Nm wall = thickness_of(member.plates[rest.wall]);
        const Nm sheet = panel_.to - panel_.from;
        const bool is_metal = find_alloy(catalogue_, stated_.material) != nullptr;
        return choose_rivet(catalogue_, project_.shop, id_,
                            catalogue_.sections[member.section].system,
                            is_metal ? std::max(wall, sheet) : wall, wall + sheet);
    }

    void join(const PanelRest& rest) {
        auto answer = choose(rest);
        if (!answer.choice) {
            if (refused_.insert(answer.why_not.code).second) {
                out_.findings.push_back(no_fastener(answer.why_not, subject()));
            }
            return;
        }
        auto row = row_for(rest, *answer.choice);
        std::string helps;
        while (row.centres.empty()) {
            const auto* thinner =
                next_thinner(catalogue_.rivets, catalogue_.rivets[answer.choice->spec.index]);
            if (thinner == nullptr) break;
            const Nm stack =
                panel_.to - panel_.from + thickness_of(out_.pieces[rest.piece].plates[rest.wall]);
            auto other = fit_rivet(catalogue_, project_.shop, *thinner, stack);
            if (!other.choice) break;
            answer = std::move(other);
            row = row_for(rest, *answer.choice);
            if (row.centres.empty() || id_.empty()) continue;
            helps = "choose a smaller rivet (" + thinner->id + " has room), ";
            row.centres.clear();
            break;
        }
        if (row.centres.empty()) {
            if (is_worth_telling(rest)) no_room_.emplace(name_of(rest.piece), helps);
            return;
        }
        greatest_gap_ = std::max(greatest_gap_, row.gap);
        if (row.long_nose) needs_long_nose_ = true;
        add_joint(rest, *answer.choice, row);
    }

    PanelRow row_for(const PanelRest& rest, const FastenerChoice& choice) const {
        return panel_row(catalogue_, project_.shop, out_, panel_, number_, rest, choice);
    }

    // A corner of a leg under the sheet holds nothing; the member itself should.
    bool is_worth_telling(const PanelRest& rest) const {
        return rest.lap.hi[rest.along] - rest.lap.lo[rest.along] >= 2 * Length::nm_per_inch;
    }

    std::string name_of(Index piece) const {
        const Index member = out_.pieces[piece].member;
        return member == no_index ? "another piece" : frame_.members[member].name;
    }

    void add_joint(const PanelRest& rest, const FastenerChoice& choice, const PanelRow& row) {
        is_fastened_ = true;
        const PanelFace& face = panel_.face;
        const Nm meeting = panel_.rests_inside ? panel_.to : panel_.from;
        Joint joint{.frame = frame_number_,
                    .pieces = {number_, rest.piece},
                    .walls = {0, rest.wall},
                    .lap = slab(face, rest.lap, meeting, meeting),
                    .normal_axis = static_cast<std::uint8_t>(face.normal),
                    .first_fastener = static_cast<Index>(out_.fasteners.size()),
                    .fastener_count = static_cast<Index>(row.centres.size()),
                    .wanted = static_cast<Index>(row.centres.size())};
        keep_within_cuts(joint, out_.pieces[rest.piece]);
        for (const auto& centre : row.centres) add_fastener(rest, choice, centre);
        out_.joints.push_back(joint);
    }

    // Ends cut on a slant leave a polygon of what the sheet rests on, and so do corners that are
    // cut out of the sheet.
    void keep_within_cuts(Joint& joint, const Piece& piece) {
        const bool is_mitred = is_slanted(piece.ends[0]) || is_slanted(piece.ends[1]);
        const Index outline = out_.pieces[number_].plates[0].outline;
        if (!is_mitred && outline == no_index) return;
        const auto axes = axes_across(joint.normal_axis);
        const auto sheet = outline == no_index
                               ? rectangle(joint.lap, axes)
                               : sheet_loop(out_.pieces[number_], out_.outlines[outline].corners);
        auto polygon = common_polygon(sheet, wall_polygon(piece, piece.plates[joint.walls[1]]));
        if (area_of(polygon) <= 0.0) return;
        joint.lap = engine::intersection(joint.lap,
                                         box_round(polygon, axes, joint.lap.lo[joint.normal_axis]));
        joint.polygon = static_cast<Index>(out_.lap_polygons.size());
        out_.lap_polygons.push_back(std::move(polygon));
    }

    // The head on the sheet, which spreads its pull.
    void add_fastener(const PanelRest& rest,
                      const FastenerChoice& choice,
                      const std::array<Nm, 2>& centre) {
        const PanelFace& face = panel_.face;
        const Nm head = panel_.rests_inside ? panel_.from : panel_.to;
        const int drive = panel_.rests_inside ? face.outward : -face.outward;
        const Nm wall = thickness_of(out_.pieces[rest.piece].plates[rest.wall]);
        const Nm sheet = panel_.to - panel_.from;
        Fastener fastener{.joint = static_cast<Index>(out_.joints.size()),
                          .spec = choice.spec,
                          .axis = static_cast<std::uint8_t>(face.normal),
                          .drive = static_cast<std::int8_t>(drive),
                          .stack_count = 2,
                          .grip = wall + sheet,
                          .grip_least = choice.grip_least,
                          .grip_most = choice.grip_most};
        fastener.at[face.normal] = face.plane + face.outward * head;
        fastener.at[face.axis[0]] = centre[0];
        fastener.at[face.axis[1]] = centre[1];
        fastener.stack[0] = {number_, 0, sheet};
        fastener.stack[1] = {rest.piece, rest.wall, wall};
        add_hole(fastener, number_, 0, rest.piece, choice.head_hole, false);
        add_hole(fastener, rest.piece, rest.wall, number_, choice.far_hole, true);
        out_.fasteners.push_back(fastener);
    }

    void add_hole(const Fastener& fastener,
                  Index piece,
                  std::uint8_t wall,
                  Index mate,
                  const HoleMaking& made,
                  bool follows) {
        Hole hole = hole_in(out_.pieces[piece], piece, wall, fastener.at);
        hole.diameter = made.diameter;
        hole.drill = made.drill;
        hole.operation = follows ? HoleOperation::match_drill : made.operation;
        hole.fastener = static_cast<Index>(out_.fasteners.size());
        hole.mate = mate;
        out_.holes.push_back(hole);
    }

    // Laying an inset one out may have said so already.
    bool is_told_unfastened() const {
        const std::vector<Subject> it{subject()};
        return std::ranges::any_of(out_.findings, [&](const Finding& finding) {
            return finding.code == unfastened_code && finding.concerns == it;
        });
    }

    void report(bool has_rest) {
        auto& findings = out_.findings;
        if (!is_fastened_ && no_room_.empty() && refused_.empty() && !is_told_unfastened()) {
            findings.push_back(has_rest ? little_behind(subject()) : nothing_behind(subject()));
        }
        if (!no_room_.empty()) {
            std::vector<std::string> names;
            for (const auto& [name, helps] : no_room_) names.push_back(name);
            findings.push_back(no_room_on(names, no_room_.begin()->second, subject()));
        }
        if (greatest_gap_ > panel_.pitch) {
            findings.push_back(wide_pitch(greatest_gap_, panel_.pitch, project_.shown, subject()));
        }
        if (needs_long_nose_) findings.push_back(long_nose({subject()}));
        if (has_rest) report_edges();
    }

    // By how much the members along each edge of the bay lie deeper than the sheet, where none of
    // them touches it.
    void report_edges() {
        std::map<Nm, std::vector<std::string>> planes_by_gap;
        for (std::size_t k = 0; k < 2; ++k) {
            for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
                const auto& plane = frame_.planes[panel_.face.planes[k][side]].name;
                const auto gap = gap_along(plane, k);
                if (gap && *gap > 0) planes_by_gap[*gap].push_back(plane);
            }
        }
        for (const auto& [gap, planes] : planes_by_gap) {
            out_.findings.push_back(stands_off(planes, gap, project_.shown, subject()));
        }
    }

    // None where no member runs along that edge.
    std::optional<Nm> gap_along(const std::string& plane, std::size_t k) const {
        std::optional<Nm> least;
        const ResolvedFrame& placed = out_.frames[frame_number_];
        for (Index i = 0; i < placed.piece_count; ++i) {
            const Piece& piece = out_.pieces[placed.first_piece + i];
            if (piece.member == no_index || index_of(piece.run) != panel_.face.axis[1 - k])
                continue;
            const auto& on = frame_.members[piece.member].on;
            if (on[0] != plane && on[1] != plane) continue;
            for (const auto& plate : piece.walls()) {
                const auto gap = gap_to(piece, plate);
                if (gap && (!least || *gap < *least)) least = gap;
            }
        }
        return least;
    }

    // Shim strips thicker than this are no longer a strip.
    static constexpr Nm thickest_shim = Length::nm_per_inch / 2;

    std::optional<Nm> gap_to(const Piece& piece, const Plate& plate) const {
        const PanelFace& face = panel_.face;
        if (!is_flat_on(face, piece, plate)) return std::nullopt;
        if (!share_area(seen_on(face, plate.box), panel_.sheet.bounds)) return std::nullopt;
        const Nm gap = panel_.rests_inside ? inner_side(face, plate.box) - panel_.to
                                           : panel_.from - outer_side(face, plate.box);
        if (gap < 0 || gap > thickest_shim) return std::nullopt;
        return gap;
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const PlacedPanel& panel_;
    Index number_;
    Resolved& out_;
    Index frame_number_;
    const Frame& frame_;
    const Panel& stated_;
    std::string id_;  // of the rivet that is asked for; empty: by the plates' thickness
    std::set<std::string> refused_;
    std::map<std::string, std::string> no_room_;  // members, and what would help
    bool is_fastened_ = false;
    Nm greatest_gap_ = 0;
    bool needs_long_nose_ = false;
};

}  // namespace

void fasten_panel(const Project& project,
                  const Catalogue& catalogue,
                  const PlacedPanel& panel,
                  Index number,
                  Resolved& resolved) {
    PanelJoiner(project, catalogue, panel, number, resolved).join();
}

}  // namespace model
