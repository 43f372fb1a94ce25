#include "model/resolve/panel_place.h"

#include "model/resolve/layout_rules.h"
#include "model/resolve/panel_edges.h"
#include "model/resolve/panel_findings.h"
#include "model/resolve/panel_way.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr Nm least_land = least_sheet_land.nm();
// As far behind the plane as a member narrows the way through a door.
constexpr Nm way_depth = 2 * Length::nm_per_inch;

bool is_inside(const Region& region, const SheetShape& sheet) {
    for (std::size_t k = 0; k < 2; ++k) {
        if (region.lo[k] < sheet.bounds.lo[k] || region.hi[k] > sheet.bounds.hi[k]) return false;
    }
    return std::ranges::none_of(sheet.gone,
                                [&](const Region& gone) { return share_area(gone, region); });
}

bool is_all_gone(const Region& region, const SheetShape& sheet) {
    return !share_area(region, sheet.bounds) ||
           std::ranges::any_of(sheet.gone, [&](const Region& gone) {
               return gone.lo[0] <= region.lo[0] && gone.lo[1] <= region.lo[1] &&
                      gone.hi[0] >= region.hi[0] && gone.hi[1] >= region.hi[1];
           });
}

// The least drill for a hole of at least that size, of those at hand if one of them is large
// enough.
const Drill* drill_of_at_least(const Catalogue& catalogue,
                               const Shop& shop,
                               MeasureSystem system,
                               Nm diameter) {
    const auto series = system == MeasureSystem::inch ? "fraction" : "metric";
    const Drill* best = nullptr;
    const auto consider = [&](const Drill* drill) {
        if (drill == nullptr || drill->diameter.nm() < diameter) return;
        if (best == nullptr || drill->diameter < best->diameter) best = drill;
    };
    for (const auto& name : shop.drills) consider(find_drill(catalogue, name));
    if (best != nullptr) return best;
    for (const auto& drill : catalogue.drills) {
        if (drill.series == series) consider(&drill);
    }
    return best;
}

struct PanelLengths {
    Nm thickness = 0;
    Nm gap = 0;
    Nm pitch = 0;
};

class FramePanels {
public:
    FramePanels(const Project& project,
                const Catalogue& catalogue,
                Values& values,
                Index number,
                Resolved& resolved)
        : project_{project},
          catalogue_{catalogue},
          values_{values},
          number_{number},
          frame_{project.frames[number]},
          out_{resolved} {
        const ResolvedFrame& placed = resolved.frames[number];
        const auto first = resolved.pieces.begin() + placed.first_piece;
        // A brace that a panel would run into is told of once both are placed.
        std::copy_if(first, first + placed.piece_count, std::back_inserter(standing_),
                     [](const Piece& piece) { return piece.lean == no_index; });
    }

    std::vector<PlacedPanel> place() {
        std::vector<PlacedPanel> panels;
        std::vector<std::optional<PanelLengths>> lengths;
        for (const auto& panel : frame_.panels) {
            lengths.push_back(lengths_of(panel));
            note_overlay(panel, lengths.back());
        }
        for (Index i = 0; i < frame_.panels.size(); ++i) {
            if (!lengths[i]) continue;
            if (auto placed = place(i, *lengths[i])) {
                stand(*placed);
                panels.push_back(std::move(*placed));
            }
        }
        return panels;
    }

private:
    std::optional<PanelFace> face_of(const Panel& panel) const {
        return panel_face(frame_, out_.frames[number_], panel);
    }

    Subject subject_of(const Panel& panel) const { return panel_subject(frame_, panel); }

    void say(Finding finding) { out_.findings.push_back(std::move(finding)); }

    std::optional<PanelLengths> lengths_of(const Panel& panel) {
        const Subject subject = subject_of(panel);
        if (!sheet_density_kg_m3(catalogue_, panel.material)) {
            say(unknown_material(panel, subject));
        }
        const auto stated_or = [&](const Formula& formula, const char* what, Nm otherwise) {
            if (formula.empty()) return otherwise;
            const auto value = values_.length(formula, subject, what);
            return value && *value > 0 ? *value : otherwise;
        };
        const auto thickness = values_.length(panel.thickness, subject, "thickness");
        const PanelLengths lengths{
            .thickness = thickness.value_or(0),
            .gap = stated_or(panel.clear_gap, "clear gap", out_.shop.panel_gap),
            .pitch = stated_or(panel.pitch, "pitch", out_.shop.panel_pitch)};
        if (thickness && *thickness <= 0) say(bad_thickness(subject));
        if (lengths.thickness <= 0) return std::nullopt;
        return lengths;
    }

    static Nm gap_beside(const Panel& panel, const PanelLengths& lengths, Nm of_shop) {
        return panel.use == PanelUse::fixed ? of_shop : lengths.gap;
    }

    void note_overlay(const Panel& panel, const std::optional<PanelLengths>& lengths) {
        if (!lengths || panel.fit != PanelFit::overlay) return;
        const auto face = face_of(panel);
        if (!face) return;
        overlays_.push_back({*face, gap_beside(panel, *lengths, out_.shop.panel_gap)});
    }

    std::optional<PlacedPanel> place(Index index, const PanelLengths& lengths) {
        const Panel& panel = frame_.panels[index];
        const auto face = face_of(panel);
        if (!face) return std::nullopt;
        PlacedPanel placed{.stated = index, .face = *face, .pitch = lengths.pitch};
        const bool is_fixed = panel.use == PanelUse::fixed;
        if (panel.fit == PanelFit::overlay) {
            place_overlay(placed, lengths, is_fixed);
        } else if (is_fixed) {
            place_inset(placed, lengths);
        } else {
            hang_inset(placed, lengths);
        }
        if (placed.sheet.outline.corners.empty()) {
            say(panel_no_room(subject_of(panel)));
            return std::nullopt;
        }
        if (placed.sheet.fell_apart) say(panel_in_parts(subject_of(panel)));
        finish(placed);
        return placed;
    }

    void place_overlay(PlacedPanel& placed, const PanelLengths& lengths, bool is_fixed) {
        const PanelFace& face = placed.face;
        const Nm gap = is_fixed ? out_.shop.panel_gap : lengths.gap;
        // What is hung stands off, clear of the heads of the rivets on the face.
        placed.from = is_fixed ? 0 : gap;
        placed.to = placed.from + lengths.thickness;
        whole_ = overlay_region(frame_, standing_, face, gap, overlays_);
        taken_ = pieces_in_way(standing_, face, {placed.from, placed.to}, whole_, gap);
        placed.sheet = sheet_without(whole_, taken_);
        if (!is_fixed) placed.opening = way_through(face);
    }

    void place_inset(PlacedPanel& placed, const PanelLengths& lengths) {
        const PanelFace& face = placed.face;
        const InsetDepth depth = inset_depth(standing_, face, lengths.thickness);
        if (!depth.has_rest) say(nothing_behind(subject_of(frame_.panels[placed.stated])));
        placed.to = depth.to;
        placed.from = depth.to - lengths.thickness;
        placed.rests_inside = depth.rests_inside;
        whole_ = face.bay;
        taken_ =
            pieces_in_way(standing_, face, {placed.from, placed.to}, whole_, out_.shop.panel_gap);
        placed.sheet = sheet_without(whole_, taken_);
    }

    // A door or a drawer front between the members: a rectangle, whatever stands there.
    void hang_inset(PlacedPanel& placed, const PanelLengths& lengths) {
        const PanelFace& face = placed.face;
        placed.from = -lengths.thickness;
        const SheetDepth depth{placed.from, placed.to};
        auto in_way = pieces_in_way(standing_, face, depth, face.bay, 0);
        for (const auto& end : fasteners_in_way(catalogue_, out_, number_, face, depth, face.bay)) {
            in_way.push_back(end.seen);
        }
        placed.opening = opening_between(face.bay, in_way);
        whole_ = grown(placed.opening, -lengths.gap);
        taken_.clear();
        placed.sheet = sheet_without(whole_, taken_);
    }

    Region way_through(const PanelFace& face) const {
        return opening_between(face.bay,
                               pieces_in_way(standing_, face, {-way_depth, 0}, face.bay, 0));
    }

    void finish(PlacedPanel& placed) {
        cut_openings(placed);
        clear_fasteners(placed);
    }

    void cut_openings(PlacedPanel& placed) {
        const Panel& panel = frame_.panels[placed.stated];
        std::vector<Region> cut;
        for (const auto& cut_out : panel.cut_outs) {
            const auto region = region_of(cut_out, placed);
            if (!region) continue;
            const auto why = fault_of(*region, placed, cut);
            if (why.empty()) {
                cut.push_back(*region);
            } else {
                say(cut_out_left_out(cut_out, why, subject_of(panel)));
            }
        }
        taken_.insert(taken_.end(), cut.begin(), cut.end());
        placed.sheet = sheet_without(whole_, taken_);
    }

    std::optional<Region> region_of(const CutOut& cut_out, const PlacedPanel& placed) {
        const Subject subject = subject_of(frame_.panels[placed.stated]);
        Region region;
        bool is_known = true;
        for (std::size_t k = 0; k < 2; ++k) {
            const auto what = "cut-out \"" + cut_out.name + "\"";
            const auto least = values_.length(cut_out.least[k], subject, what);
            const auto most = values_.length(cut_out.most[k], subject, what);
            is_known = is_known && least && most;
            region.lo[k] = placed.sheet.bounds.lo[k] + least.value_or(0);
            region.hi[k] = placed.sheet.bounds.lo[k] + most.value_or(0);
        }
        if (!is_known) return std::nullopt;
        return region;
    }

    // The end of a sentence that begins with the cut-out; empty for a good one.
    std::string fault_of(const Region& region,
                         const PlacedPanel& placed,
                         const std::vector<Region>& others) const {
        if (region.lo[0] >= region.hi[0] || region.lo[1] >= region.hi[1]) return "has no size";
        const Region with_land = grown(region, least_land);
        if (!is_inside(with_land, placed.sheet)) return "reaches over the edge of the sheet";
        for (const auto& other : others) {
            if (share_area(with_land, other)) return "overlaps another one";
        }
        if (frame_.panels[placed.stated].use != PanelUse::fixed) return {};
        for (const auto& piece : standing_) {
            for (const auto& plate : piece.walls()) {
                if (!touches(placed, piece, plate)) continue;
                if (!share_area(seen_on(placed.face, plate.box), region)) continue;
                const bool has_name = piece.member != no_index;
                return "lies over " +
                       (has_name ? "\"" + frame_.members[piece.member].name + "\""
                                 : std::string("a member")) +
                       ", which the sheet is fastened to";
            }
        }
        return {};
    }

    // The way to a foot's screw stays open. Round holes where they fit; otherwise a square is cut
    // out, which may spoil another's place.
    void clear_fasteners(PlacedPanel& placed) {
        for (const auto& way : feet_in_way(out_, number_, placed.face, {placed.from, placed.to},
                                           placed.sheet.bounds)) {
            taken_.push_back(grown(way, out_.shop.panel_gap));
        }
        const auto ends = fasteners_in_way(catalogue_, out_, number_, placed.face,
                                           {placed.from, placed.to}, whole_);
        std::vector<bool> is_cut(ends.size(), false);
        const auto cut = [&](std::size_t i) {
            taken_.push_back(grown(ends[i].seen, out_.shop.panel_gap));
            is_cut[i] = true;
        };
        for (std::size_t i = 0; i < ends.size(); ++i) {
            if (!ends[i].is_square_to_sheet && !is_all_gone(ends[i].seen, placed.sheet)) cut(i);
        }
        for (bool is_settled = false; !is_settled;) {
            placed.sheet = sheet_without(whole_, taken_);
            placed.clear_holes.clear();
            std::vector<std::size_t> numbers;  // of the holes, in `ends`
            is_settled = true;
            for (std::size_t i = 0; i < ends.size(); ++i) {
                // What was cut away with another part of the sheet may be back in this one.
                if (is_cut[i] || is_all_gone(ends[i].seen, placed.sheet)) continue;
                if (ends[i].is_square_to_sheet) {
                    placed.clear_holes.push_back(clear_hole(ends[i]));
                    numbers.push_back(i);
                } else {
                    cut(i);
                    is_settled = false;
                }
            }
            for (std::size_t k = numbers.size(); k-- > 0;) {
                if (has_room(placed, k)) continue;
                cut(numbers[k]);
                is_settled = false;
            }
        }
    }

    // Clear all round by half the panel gap, but never by more than a quarter of the radius: two
    // heads may stand close together.
    ClearHole clear_hole(const FastenerInWay& end) const {
        const Nm wanted = 2 * end.radius + std::min(out_.shop.panel_gap, end.radius / 2);
        const Drill* drill = drill_of_at_least(catalogue_, project_.shop, system(), wanted);
        if (drill == nullptr) return {end.fastener, end.at, wanted, no_index};
        return {end.fastener, end.at, drill->diameter.nm(),
                static_cast<Index>(drill - catalogue_.drills.data())};
    }

    // Also as far from every edge as the fastener itself would have to be.
    bool has_room(const PlacedPanel& placed, std::size_t number) const {
        const ClearHole& hole = placed.clear_holes[number];
        const Nm rule =
            edge_distance(project_.shop, nominal_diameter(out_.fasteners[hole.fastener]));
        const Nm edge = std::max(hole.diameter / 2 + least_land, rule);
        if (!is_inside(grown({hole.at, hole.at}, edge), placed.sheet)) return false;
        return std::ranges::none_of(placed.clear_holes, [&](const ClearHole& other) {
            if (&other == &hole) return false;
            const auto du = static_cast<double>(other.at[0] - hole.at[0]);
            const auto dv = static_cast<double>(other.at[1] - hole.at[1]);
            const auto apart = static_cast<double>((hole.diameter + other.diameter) / 2);
            return du * du + dv * dv <= apart * apart;
        });
    }

    Nm nominal_diameter(const Fastener& fastener) const {
        const FastenerSpec& spec = fastener.spec;
        return spec.kind == FastenerSpec::Kind::blind_rivet
                   ? catalogue_.rivets[spec.index].diameter.nm()
                   : catalogue_.screws[spec.index].diameter.nm();
    }

    MeasureSystem system() const {
        const auto unit = engine::bare_unit(project_.shown);
        const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
        return is_inch ? MeasureSystem::inch : MeasureSystem::metric;
    }

    void stand(const PlacedPanel& placed) {
        Piece piece{.kind = PieceKind::panel, .frame = number_, .stated = placed.stated};
        piece.extents = box_of(placed);
        piece.plates[0].box = piece.extents;
        piece.plates[0].normal_axis = static_cast<std::uint8_t>(placed.face.normal);
        piece.plate_count = 1;
        standing_.push_back(piece);
    }

    const Project& project_;
    const Catalogue& catalogue_;
    Values& values_;
    Index number_;
    const Frame& frame_;
    Resolved& out_;
    std::vector<Piece> standing_;  // members, then panels as they are placed
    std::vector<OverlayBeside> overlays_;
    Region whole_;               // of the panel at work
    std::vector<Region> taken_;  // from it
};

}  // namespace

Box box_of(const PlacedPanel& panel) {
    return slab(panel.face, panel.sheet.bounds, panel.from, panel.to);
}

bool touches(const PlacedPanel& panel, const Piece& piece, const Plate& plate) {
    if (!is_flat_on(panel.face, piece, plate)) return false;
    const bool in_contact = panel.rests_inside ? inner_side(panel.face, plate.box) == panel.to
                                               : outer_side(panel.face, plate.box) == panel.from;
    return in_contact && share_area(seen_on(panel.face, plate.box), panel.sheet.bounds);
}

std::vector<PlacedPanel> place_panels(const Project& project,
                                      const Catalogue& catalogue,
                                      Values& values,
                                      Index number,
                                      Resolved& resolved) {
    return FramePanels(project, catalogue, values, number, resolved).place();
}

}  // namespace model
