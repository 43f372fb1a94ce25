#include "model/book/view_pages.h"

#include "model/book/book_pages.h"
#include "model/book/leader_labels.h"
#include "model/book/line_drawing.h"
#include "model/book/plane_scale.h"
#include "model/resolve/piece_place.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace model {
namespace {

using engine::PaperTurn;
using engine::Vector;

struct View {
    std::string name;
    std::string words;
    Sight sight;
    Axis across = Axis::x;  // that runs across the sheet
    Axis up = Axis::z;
    Axis away = Axis::y;
};

std::vector<View> views() {
    return {
        {"front", "Seen from the front, its left on the left", front_sight, Axis::x, Axis::z,
         Axis::y},
        {"left", "Seen from its left, its front on the right", left_sight, Axis::y, Axis::z,
         Axis::x},
        {"top", "Seen from above, its front at the bottom", top_sight, Axis::x, Axis::y, Axis::z}};
}

engine::PageBox below_head(const PageFlow& flow) {
    const auto size = flow.pages().back().size();
    return {PageFlow::margin, flow.y(), size.width - 2 * PageFlow::margin,
            size.height - flow.y() - PageFlow::margin - PageFlow::foot};
}

engine::PageBox inset(engine::PageBox box, double left, double top, double right, double bottom) {
    return {box.left + left, box.top + top, std::max(10.0, box.width - left - right),
            std::max(10.0, box.height - top - bottom)};
}

engine::PageBox on_page(const SeenBounds& bounds, const OnPage& place) {
    const auto corner = place({bounds.lo[0], bounds.hi[1]});
    return {corner.x, corner.y, bounds.width() * place.scale, bounds.height() * place.scale};
}

std::string over_all(const Project& project, const std::vector<BodyOfPiece>& bodies) {
    engine::Bounds all;
    for (const auto& it : bodies) engine::put_in(all, it.body.bounds);
    std::string words = "Over all pieces: ";
    constexpr std::array<std::string_view, 3> names{" wide, ", " deep, ", " high."};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto size = Length::from_nm(std::llround((all.hi[i] - all.lo[i]) * 1e6));
        words += length_on_paper(project, size) + std::string(names[i]);
    }
    return words;
}

// Pieces that are seen, but not end-on; those that no earlier view has named come first.
std::vector<LeaderLabel> labels_of(const Resolved& resolved,
                                   const std::vector<SeenBody>& seen,
                                   const OnPage& place,
                                   std::optional<Axis> end_on,
                                   std::set<Index>& named) {
    std::set<Index> pieces;
    for (const auto& body : seen) pieces.insert(body.piece);
    std::vector<LeaderLabel> fresh;
    std::vector<LeaderLabel> again;
    for (const Index piece : pieces) {
        const auto& it = resolved.pieces[piece];
        const auto text = mark_on_drawing(resolved, it);
        if (text.empty() || (it.run == end_on && it.lean == no_index)) continue;
        std::vector<engine::PagePoint> to;
        for (const auto& at : places_to_point_at(seen, piece)) to.push_back(place(at));
        if (to.empty()) continue;
        (named.insert(piece).second ? fresh : again).push_back({std::move(to), text});
    }
    fresh.insert(fresh.end(), again.begin(), again.end());
    return fresh;
}

double place_on(Axis axis, const View& view, const OnPage& place, Nm at) {
    Vector point{};
    point[index_of(axis)] = in_mm(at);
    const auto there = place(seen_point(point, view.sight));
    return axis == view.across ? there.x : there.y;
}

std::vector<PlaneOnPage> planes_on(Axis axis,
                                   const View& view,
                                   const OnPage& place,
                                   const std::vector<PlanePlace>& places) {
    std::vector<PlaneOnPage> planes;
    for (const auto& it : places) planes.push_back({&it, place_on(axis, view, place, it.at)});
    return planes;
}

class FramePages {
public:
    FramePages(const Project& project, const Resolved& resolved, Index frame, engine::Paper paper)
        : project_{project},
          resolved_{resolved},
          frame_{frame},
          paper_{paper},
          bodies_{frame_bodies(resolved, frame)} {}

    std::vector<FramePage> made() {
        std::vector<FramePage> pages;
        if (bodies_.empty()) return pages;
        for (const auto& view : views())
            pages.push_back({"From the " + view.name, seen_from(view)});
        pages[2].title = "From above";
        pages.push_back({"Pulled apart", pulled_apart()});
        return pages;
    }

private:
    const std::string& name() const { return project_.frames[frame_].name; }

    // The sheet lies so that the picture is as large as it can be.
    PageFlow flow_for(const SeenBounds& bounds) const {
        const bool is_wide = bounds.width() > bounds.height();
        return PageFlow(
            engine::paper_size(paper_, is_wide ? PaperTurn::landscape : PaperTurn::portrait));
    }

    engine::Page seen_from(const View& view) {
        const auto seen = seen_bodies(bodies_, view.sight);
        const auto bounds = bounds_of(seen);
        PageFlow flow = flow_for(bounds);
        draw_page_head(
            flow, name() + ": " + (view.name == "top" ? "from above" : "from the " + view.name),
            view.words + ". " + over_all(project_, bodies_) + panels_left_out() +
                " Places are measured from the first plane, the bold one is the last.");
        const auto across = plane_places(project_, resolved_, frame_, view.across);
        const auto up = plane_places(project_, resolved_, frame_, view.up);
        const auto room = inset(below_head(flow), plane_scale_room(up) + 2.0, leader_room_above,
                                leader_room_beside(all_marks()) + 1.0, plane_scale_room(across));
        const auto place = fitted(bounds, room);
        draw_seen(flow.page(), seen, place);
        const auto picture = on_page(bounds, place);
        draw_plane_scale_below(flow.page(), planes_on(view.across, view, place, across), picture);
        draw_plane_scale_beside(flow.page(), planes_on(view.up, view, place, up), picture);
        draw_leader_labels(flow.page(), labels_of(resolved_, seen, place, view.away, named_),
                           picture, {.left = false, .right = true, .top = true});
        return flow.page();
    }

    engine::Page pulled_apart() const {
        const auto apart = moved_apart();
        const auto seen = seen_bodies(apart, corner_sight());
        const auto bounds = bounds_of(seen);
        PageFlow flow = flow_for(bounds);
        draw_page_head(flow, name() + ": pulled apart",
                       "Each piece is drawn away from the middle of the frame, in the place to "
                       "which it goes." +
                           panels_left_out());
        const double beside = leader_room_beside(all_marks()) + 1.0;
        const auto room = inset(below_head(flow), beside, leader_room_above, beside, 2.0);
        const auto place = fitted(bounds, room);
        draw_seen(flow.page(), seen, place);
        std::set<Index> named;
        const auto labels = labels_of(resolved_, seen, place, std::nullopt, named);
        draw_leader_labels(flow.page(), labels, on_page(bounds, place));
        return flow.page();
    }

    std::vector<BodyOfPiece> moved_apart() const {
        engine::Bounds all;
        for (const auto& it : bodies_) engine::put_in(all, it.body.bounds);
        std::vector<BodyOfPiece> apart;
        for (const auto& it : bodies_) {
            const auto& box = resolved_.pieces[it.piece].extents;
            Vector by{};
            for (std::size_t i = 0; i < 3; ++i) {
                const double middle = in_mm(box.lo[i] + (box.hi[i] - box.lo[i]) / 2);
                by[i] = 0.45 * (middle - (all.lo[i] + all.hi[i]) / 2);
            }
            apart.push_back({it.piece, engine::moved(it.body, by)});
        }
        return apart;
    }

    std::vector<LeaderLabel> all_marks() const {
        std::vector<LeaderLabel> labels;
        for (const auto& it : bodies_)
            labels.push_back({{}, mark_on_drawing(resolved_, resolved_.pieces[it.piece])});
        return labels;
    }

    std::string panels_left_out() const {
        const auto& frame = resolved_.frames[frame_];
        std::set<std::string> marks;
        for (Index i = frame.first_piece; i < frame.first_piece + frame.piece_count; ++i) {
            const auto& piece = resolved_.pieces[i];
            if (piece.kind == PieceKind::panel && piece.mark != no_index)
                marks.insert(resolved_.marks[piece.mark].name);
        }
        std::string words;
        for (const auto& mark : marks) words += (words.empty() ? "" : ", ") + mark;
        return words.empty() ? "" : " Panels are left out: " + words + ".";
    }

    const Project& project_;
    const Resolved& resolved_;
    Index frame_;
    engine::Paper paper_;
    std::vector<BodyOfPiece> bodies_;
    std::set<Index> named_;
};

}  // namespace

std::vector<FramePage> view_pages(const Project& project,
                                  const Resolved& resolved,
                                  Index frame,
                                  engine::Paper paper) {
    return FramePages(project, resolved, frame, paper).made();
}

}  // namespace model
