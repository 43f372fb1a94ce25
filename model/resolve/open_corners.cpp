#include "model/resolve/open_corners.h"

#include "model/resolve/bay_box.h"
#include "model/resolve/bay_edges.h"
#include "model/resolve/carriers.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <set>
#include <utility>

namespace model {
namespace {

// A rail's end near an upright line.
struct RailEnd {
    Index rail = 0;
    Axis run = Axis::x;
    Point at{};
    bool is_from = true;
    Nm reach = 0;

    Nm level() const { return at[2]; }
};

// One that its planes leave nothing of takes up nothing. None where a plane has no place: then
// nobody knows what the frame's outside is.
std::optional<std::vector<Box>> boxes_of_bays(const Frame& frame, const ResolvedFrame& placed) {
    std::vector<Box> boxes;
    for (const Bay& bay : frame.bays) {
        const std::array<const std::array<std::string, 2>*, 3> sides{&bay.x, &bay.y, &bay.z};
        for (std::size_t k = 0; k < 3; ++k) {
            for (const std::string& plane : *sides[k]) {
                if (!plane_position(frame, placed, plane, static_cast<Axis>(k)))
                    return std::nullopt;
            }
        }
        if (const auto box = bay_box(frame, placed, bay)) boxes.push_back(*box);
    }
    return boxes;
}

// What the stretches, rising, leave free between two levels.
std::vector<Stretch> free_between(Nm from, Nm to, const std::vector<Stretch>& stretches) {
    std::vector<Stretch> gaps;
    for (const auto& [lo, hi] : stretches) {
        if (lo > from) gaps.emplace_back(from, std::min(lo, to));
        from = std::max(from, hi);
        if (from >= to) return gaps;
    }
    gaps.emplace_back(from, to);
    return gaps;
}

class OpenCorners {
public:
    OpenCorners(const Project& project,
                const Catalogue& catalogue,
                const Frame& frame,
                const ResolvedFrame& placed,
                const NamedValues& values,
                std::vector<Box> bays)
        : project_{project},
          catalogue_{catalogue},
          frame_{frame},
          placed_{placed},
          bays_{std::move(bays)},
          carriers_{frame, placed, values} {
        for (const StatedLine& line : carriers_.level()) {
            const Nm reach = reach_of(frame_.members[line.member]);
            ends_.push_back({line.member, line.run, line.at(line.from), true, reach});
            ends_.push_back({line.member, line.run, line.at(line.to), false, reach});
        }
    }

    std::vector<OpenCorner> find() {
        std::set<std::array<Nm, 2>> lines;
        for (const Box& bay : bays_) {
            for (const Nm x : {bay.lo[0], bay.hi[0]}) {
                for (const Nm y : {bay.lo[1], bay.hi[1]}) lines.insert({x, y});
            }
        }
        for (const auto& at : lines) on_line(at[0], at[1]);
        return std::move(found_);
    }

private:
    // As far as a lap may begin from an end that it holds.
    Nm reach_of(const Member& rail) const {
        const auto stock = std::ranges::find(project_.stock, rail.stock, &Stock::name);
        const auto* section =
            stock == project_.stock.end() ? nullptr : find_section(catalogue_, stock->section);
        if (section == nullptr) return 0;
        const Nm width = std::max(section->a.nm(), section->b.nm());
        return width + width / 2;
    }

    void on_line(Nm x, Nm y) {
        std::vector<RailEnd> ends;
        Nm reach = 0;
        for (const RailEnd& end : ends_) {
            if (std::abs(end.at[0] - x) > end.reach || std::abs(end.at[1] - y) > end.reach)
                continue;
            ends.push_back(end);
            reach = std::max(reach, end.reach);
        }
        if (ends.empty()) return;
        for (const UprightEdge& edge : upright_edges(bays_, x, y)) {
            const Nm from = std::max(edge.from, carriers_.height().first);
            const Nm to = std::min(edge.to, carriers_.height().second);
            if (from >= to) continue;
            for (const auto& gap : free_between(from, to, carriers_.beside(x, y, reach))) {
                // What stands below laps what ends no further up; else its own end is loose.
                const bool is_bridged = gap.first > from && gap.second - gap.first <= reach;
                if (is_bridged || (gap.second < to && !has_corner_below(gap, ends))) continue;
                in_gap(x, y, gap, edge, ends);
            }
        }
    }

    // Under a post that ends there the frame may step back, whatever its bays say: only where rails
    // end further down, too, has it a corner there.
    static bool has_corner_below(const Stretch& gap, const std::vector<RailEnd>& ends) {
        return std::ranges::any_of(ends, [&](const RailEnd& end) {
            return gap.first <= end.level() && end.level() < gap.second;
        });
    }

    // What ends at the lower end of the gap stands on what is below, or lies on the floor.
    void in_gap(
        Nm x, Nm y, const Stretch& gap, const UprightEdge& edge, const std::vector<RailEnd>& ends) {
        std::vector<Index> hanging;
        std::vector<Index> braced;
        for (const RailEnd& end : ends) {
            if (end.level() <= gap.first || end.level() > gap.second) continue;
            if (is_carried_at(x, y, end, ends)) continue;
            const bool is_braced = carriers_.is_braced({x, y, end.level()}, end.reach);
            (is_braced ? braced : hanging).push_back(end.rail);
        }
        if (!hanging.empty()) {
            add(x, y, gap, edge, std::move(hanging), false);
        } else if (!braced.empty()) {
            add(x, y, gap, edge, std::move(braced), true);
        }
    }

    // An end that no other laps is loose, which is told elsewhere.
    bool is_carried_at(Nm x, Nm y, const RailEnd& of, const std::vector<RailEnd>& ends) const {
        std::array<bool, 2> along{};
        for (const RailEnd& end : ends) {
            if (std::abs(end.level() - of.level()) > of.reach) continue;
            const Member& rail = frame_.members[end.rail];
            if (end.is_from ? rail.foot_from : rail.foot_to) return true;
            along[index_of(end.run)] = true;
        }
        return !along[0] || !along[1] || carriers_.is_passed({x, y, of.level()}, of.reach);
    }

    std::string plane_name(Axis axis, Nm at) const {
        for (std::size_t i = 0; i < frame_.planes.size() && i < placed_.planes.size(); ++i) {
            const auto& plane = placed_.planes[i];
            if (plane.axis == axis && plane.position == at) return frame_.planes[i].name;
        }
        return {};
    }

    // The level of the plane there, or of the next one beyond; the level itself without any.
    Nm plane_beyond(Nm level, Sense beyond) const {
        std::optional<Nm> nearest;
        for (const auto& plane : placed_.planes) {
            if (plane.axis != Axis::z || !plane.position) continue;
            const Nm at = *plane.position;
            if (beyond == Sense::plus ? at < level : at > level) continue;
            if (!nearest || std::abs(at - level) < std::abs(*nearest - level)) nearest = at;
        }
        return nearest.value_or(level);
    }

    void add(Nm x,
             Nm y,
             const Stretch& gap,
             const UprightEdge& edge,
             std::vector<Index> rails,
             bool is_braced) {
        std::sort(rails.begin(), rails.end());
        rails.erase(std::unique(rails.begin(), rails.end()), rails.end());
        const Nm from = plane_beyond(gap.first, Sense::minus);
        const Nm to = plane_beyond(gap.second, Sense::plus);
        found_.push_back({.on = {plane_name(Axis::x, x), plane_name(Axis::y, y)},
                          .from = plane_name(Axis::z, from),
                          .to = plane_name(Axis::z, to),
                          .is_short = {from != gap.first, to != gap.second},
                          .seat = edge.seat,
                          .legs = edge.legs,
                          .length = gap.second - gap.first,
                          .rails = std::move(rails),
                          .is_braced = is_braced});
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Frame& frame_;
    const ResolvedFrame& placed_;
    std::vector<Box> bays_;
    Carriers carriers_;
    std::vector<RailEnd> ends_;
    std::vector<OpenCorner> found_;
};

}  // namespace

std::vector<OpenCorner> open_corners(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     Index frame) {
    const Frame& stated = project.frames[frame];
    const ResolvedFrame& placed = resolved.frames[frame];
    if (stated.bays.empty()) return {};
    auto bays = boxes_of_bays(stated, placed);
    if (!bays) return {};
    const NamedValues values(project, resolved);
    return OpenCorners(project, catalogue, stated, placed, values, std::move(*bays)).find();
}

void report_open_corners(const Project& project, const Catalogue& catalogue, Resolved& resolved) {
    for (Index f = 0; f < resolved.frames.size(); ++f) {
        for (const auto& corner : open_corners(project, catalogue, resolved, f)) {
            resolved.findings.push_back(finding_of(project.frames[f], corner));
        }
    }
}

}  // namespace model
