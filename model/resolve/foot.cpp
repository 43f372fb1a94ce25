#include "model/resolve/foot.h"

#include "model/resolve/bar_cuts.h"
#include "model/resolve/bay_box.h"
#include "model/resolve/drills_at_hand.h"
#include "model/resolve/foot_findings.h"
#include "model/resolve/foot_place.h"
#include "model/resolve/layout_rules.h"
#include "model/resolve/piece_holes.h"
#include "model/resolve/recipe_row.h"
#include "model/resolve/room_boxes.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

// ---- what a foot must know ----------------------------------------------------------------------

bool has_feet(const Member& member) { return member.foot_from || member.foot_to; }

std::vector<Box> bays_of(const ResolvedFrame& placed, const Frame& frame) {
    std::vector<Box> bays;
    for (const auto& bay : frame.bays) {
        if (const auto box = bay_box(frame, placed, bay)) bays.push_back(*box);
    }
    return bays;
}

// The lap, both its walls, and so much on either side.
Box about_lap(const FrameSkeleton& s, const Lap& lap, Nm reach) {
    Box box = lap.rect;
    const std::size_t n = lap.normal_axis;
    for (const Box& wall : {s.pieces[lap.upper].plates[lap.upper_wall].box,
                            s.pieces[lap.lower].plates[lap.lower_wall].box}) {
        box.lo[n] = std::min(box.lo[n], wall.lo[n]);
        box.hi[n] = std::max(box.hi[n], wall.hi[n]);
    }
    box.lo[n] -= reach;
    box.hi[n] += reach;
    return box;
}

// A set fastener stands out by about its diameter at most; the rivets that are chosen by
// themselves are no thicker than 5/32 in where a driver has room beside them.
Nm reach_of_fasteners(const PartRoom& room) {
    Nm reach = Length::nm_per_inch * 5 / 32;
    for (const auto& id : {room.project.shop.fastener, room.project.shop.screw}) {
        if (const auto* rivet = find_rivet(room.catalogue, id)) {
            reach = std::max(reach, rivet->diameter.nm());
        }
        if (const auto* screw = find_screw(room.catalogue, id)) {
            reach = std::max(reach, screw->diameter.nm());
        }
    }
    return reach;
}

// The usual screw is common practice for floors of vans: 1/4 in, or M6 for metric stock.
const MachineScrew* screw_of_feet(const PartRoom& room, const Section& section) {
    if (const auto* own = find_screw(room.catalogue, room.project.shop.foot_screw)) return own;
    const bool is_inch = section.system == MeasureSystem::inch;
    return find_screw(room.catalogue, is_inch ? "machine screw 1/4-20" : "machine screw M6");
}

// Free fit, or what is at hand between the screw and its loose fit.
const Drill* drill_of_feet(const PartRoom& room, const MachineScrew& screw) {
    const auto& shop = room.project.shop;
    if (is_at_hand(shop, screw.free_drill)) return find_drill(room.catalogue, screw.free_drill);
    const auto* loose = find_drill(room.catalogue, screw.loose_drill);
    return nearest_at_hand(room.catalogue, shop, screw.free_drill, [&](const Drill& drill) {
        return drill.diameter > screw.diameter && loose != nullptr &&
               drill.diameter <= loose->diameter;
    });
}

FootScrew foot_screw(const PartRoom& room, const MachineScrew& screw, const Drill& drill) {
    const Nm head = screw.head_diameter_most.nm() / 2;
    return {.drill = static_cast<Index>(&drill - room.catalogue.drills.data()),
            .hole = drill.diameter.nm(),
            .edge = edge_distance(room.project.shop, drill.diameter.nm()),
            .driver_radius = head + Length::nm_per_inch / 32,
            .head_radius = head};
}

// ---- one frame ----------------------------------------------------------------------------------

class Feet {
public:
    Feet(const PartRoom& room,
         const Resolved& resolved,
         FrameSkeleton& s,
         const Frame& frame,
         std::vector<Outline>& outlines,
         std::vector<Lap>& laps,
         std::vector<FixingHole>& holes,
         std::vector<Finding>& findings)
        : room_{room},
          s_{s},
          frame_{frame},
          holes_{holes},
          findings_{findings},
          maker_{room, s, outlines, laps},
          bays_{bays_of(resolved.frames[s.frame], frame)},
          walls_{room_boxes(room.project, resolved, resolved.frames[s.frame])} {
        maker_.begin({.recipe = recipe_made_by_itself("foot")});
        for (const auto& piece : s.pieces) {
            hull_ = &piece == s.pieces.data() ? piece.extents : engine::hull(hull_, piece.extents);
        }
        for (const auto& lap : laps) {
            setting_.push_back(about_lap(s, lap, room.shop.nose_reach));
            set_.push_back(about_lap(s, lap, reach_of_fasteners(room)));
        }
    }

    void add_to(const Bar& bar) {
        const Member& member = frame_.members[bar.member];
        if (bar.piece_count == 0) return;
        const Index last = bar.first_piece + bar.piece_count - 1;
        if (member.foot_from) add_at(bar.first_piece, 1, bar, member.from);
        if (member.foot_to) add_at(last, -1, bar, member.to);
    }

    void tell() {
        if (count_ == 0) return;
        findings_.push_back(feet_to_fix(std::move(footed_), count_, *told_screw_, *told_drill_));
    }

private:
    void add_at(Index piece, int into, const Bar& bar, const std::string& plane) {
        const FootAsked asked{member_subject(frame_, bar.member), plane};
        if (auto fault = put_in(piece, into, asked)) findings_.push_back(std::move(*fault));
    }

    std::optional<Finding> put_in(Index index, int into, const FootAsked& asked) {
        const Piece& piece = s_.pieces[index];
        const std::size_t run = index_of(piece.run);
        const FootSite site{index, run, into,
                            into > 0 ? piece.extents.lo[run] : piece.extents.hi[run]};
        if (piece.ends[into > 0 ? 0 : 1] != PieceEnd{}) return foot_not_square(asked);
        const FootRoom about{bays_, hull_, setting_, set_, walls_};
        if (!is_at_outside(maker_, site, about)) return foot_not_outside(asked);
        const auto shapes = angles_for(index);
        if (shapes.empty()) return foot_lacks_angle(asked);
        const auto* screw = screw_of_feet(room_, room_.catalogue.sections[piece.section]);
        if (screw == nullptr) return std::nullopt;  // not with the tables that are shipped
        const auto* drill = drill_of_feet(room_, *screw);
        if (drill == nullptr) return foot_lacks_drill(asked, *screw);
        for (const auto* shape : shapes) {
            const auto place =
                foot_place(maker_, site, *shape, foot_screw(room_, *screw, *drill), about);
            if (!place) continue;
            fasten(index, *place);
            note(asked, *screw, *drill);
            return std::nullopt;
        }
        return foot_has_no_room(asked, *screw);
    }

    // The member's own first.
    std::vector<const StockShape*> angles_for(Index piece) const {
        std::vector<const StockShape*> found;
        const auto add = [&](const StockShape& shape) {
            if (shape.section == no_index) return;
            if (room_.catalogue.sections[shape.section].form != SectionForm::angle) return;
            if (std::ranges::find(found, &shape) == found.end()) found.push_back(&shape);
        };
        add(*maker_.bar(piece).shape);
        for (const auto& shape : room_.shapes) add(shape);
        return found;
    }

    void fasten(Index member, const FootPlace& place) {
        const Index foot = maker_.add(place.foot);
        const Plate on_member = place.foot.plates[place.on_member];
        if (place.is_outside) {
            maker_.add_lap(foot, on_member, member, place.member_wall, on_member.box);
        } else {
            maker_.add_lap(member, place.member_wall, foot, on_member, on_member.box);
        }
        holes_.push_back(place.hole);
    }

    void note(const FootAsked& asked, const MachineScrew& screw, const Drill& drill) {
        ++count_;
        told_screw_ = &screw;
        told_drill_ = &drill;
        if (footed_.empty() || footed_.back() != asked.member) footed_.push_back(asked.member);
    }

    const PartRoom& room_;
    FrameSkeleton& s_;
    const Frame& frame_;
    std::vector<FixingHole>& holes_;
    std::vector<Finding>& findings_;
    PartMaker maker_;
    std::vector<Box> bays_;
    std::vector<Box> walls_;
    Box hull_;
    std::vector<Box> setting_;
    std::vector<Box> set_;
    std::vector<Subject> footed_;
    std::size_t count_ = 0;
    const MachineScrew* told_screw_ = nullptr;
    const Drill* told_drill_ = nullptr;
};

}  // namespace

void add_feet(const PartRoom& room,
              const Resolved& resolved,
              FrameSkeleton& s,
              const Frame& frame,
              std::vector<Outline>& outlines,
              std::vector<Lap>& laps,
              std::vector<FixingHole>& holes,
              std::vector<Finding>& findings) {
    if (std::ranges::none_of(frame.members, has_feet)) return;
    Feet feet(room, resolved, s, frame, outlines, laps, holes, findings);
    for (const auto& bar : s.bars) {
        if (has_feet(frame.members[bar.member])) feet.add_to(bar);
    }
    feet.tell();
}

void drill_feet(std::span<const FixingHole> holes, Resolved& out) {
    if (holes.empty()) return;
    auto next = holes.begin();
    for (Index i = 0; i < out.pieces.size() && next != holes.end(); ++i) {
        if (out.pieces[i].kind != PieceKind::foot) continue;
        out.holes.push_back({.piece = i,
                             .wall = next->wall,
                             .from_datum = next->from_datum,
                             .gauge = next->gauge,
                             .diameter = next->diameter,
                             .drill = next->drill,
                             .operation = HoleOperation::clearance,
                             .fastener = no_index,
                             .mate = no_index});
        ++next;
    }
    sort_holes(out);
}

RecipeRow foot() {
    return {
        .told = {"foot", "a short angle at a member's end, for fixing it to floor or wall", false}};
}

}  // namespace model
