#include "model/resolve/open_corners.h"

#include "model/resolve/bay_box.h"
#include "model/resolve/bay_edges.h"
#include "model/resolve/carriers.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace model {
namespace {

// A rail's end on an upright line.
struct EndOnLine {
    Index rail = 0;
    Axis run = Axis::x;
    Nm level = 0;
    bool is_from = true;
};

// None where one of them has no place: then nobody knows what the frame's outside is.
std::optional<std::vector<Box>> boxes_of_bays(const Frame& frame, const ResolvedFrame& placed) {
    std::vector<Box> boxes;
    for (const Bay& bay : frame.bays) {
        const auto box = bay_box(frame, placed, bay);
        if (!box) return std::nullopt;
        boxes.push_back(*box);
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
                std::vector<Box> bays)
        : project_{project},
          catalogue_{catalogue},
          frame_{frame},
          placed_{placed},
          bays_{std::move(bays)},
          carriers_{frame, placed} {}

    std::vector<OpenCorner> find() {
        std::map<std::array<Nm, 2>, std::vector<EndOnLine>> ends;  // by x and y
        for (const StatedLine& line : carriers_.level()) {
            for (const bool is_from : {true, false}) {
                const Point node = line.at(is_from ? line.from : line.to);
                ends[{node[0], node[1]}].push_back({line.member, line.run, node[2], is_from});
            }
        }
        for (const auto& [at, here] : ends) on_line(at[0], at[1], here);
        return std::move(found_);
    }

private:
    void on_line(Nm x, Nm y, const std::vector<EndOnLine>& ends) {
        for (const UprightEdge& edge : upright_edges(bays_, x, y)) {
            const Nm from = std::max(edge.from, carriers_.height().first);
            const Nm to = std::min(edge.to, carriers_.height().second);
            if (from >= to) continue;
            const auto beside = carriers_.beside(x, y, reach_of(ends));
            for (const auto& gap : free_between(from, to, beside)) {
                if (gap.second < to && !has_corner_below(gap, ends)) continue;
                auto rails = hanging(x, y, gap, ends);
                if (!rails.empty()) add(x, y, gap, edge, std::move(rails));
            }
        }
    }

    // Under a post that ends there the frame may step back, whatever its bays say: only where rails
    // end further down, too, has it a corner there.
    static bool has_corner_below(const Stretch& gap, const std::vector<EndOnLine>& ends) {
        return std::ranges::any_of(ends, [&](const EndOnLine& end) {
            return gap.first <= end.level && end.level < gap.second;
        });
    }

    // As far as a lap may begin from an end that it holds.
    Nm reach_of(const std::vector<EndOnLine>& ends) const {
        Nm width = 0;
        for (const EndOnLine& end : ends) {
            const auto stock =
                std::ranges::find(project_.stock, frame_.members[end.rail].stock, &Stock::name);
            const auto* section =
                stock == project_.stock.end() ? nullptr : find_section(catalogue_, stock->section);
            if (section != nullptr) width = std::max({width, section->a.nm(), section->b.nm()});
        }
        return width + width / 2;
    }

    // What ends at the lower end of the gap stands on what is below, or lies on the floor.
    std::vector<Index> hanging(Nm x,
                               Nm y,
                               const Stretch& gap,
                               const std::vector<EndOnLine>& ends) const {
        std::vector<Index> rails;
        for (const EndOnLine& end : ends) {
            if (end.level <= gap.first || end.level > gap.second) continue;
            if (is_carried_at(x, y, end.level, ends)) continue;
            rails.push_back(end.rail);
        }
        std::sort(rails.begin(), rails.end());
        return rails;
    }

    // An end that no other laps is loose, which is told elsewhere.
    bool is_carried_at(Nm x, Nm y, Nm level, const std::vector<EndOnLine>& ends) const {
        std::array<bool, 2> along{};
        for (const EndOnLine& end : ends) {
            if (end.level != level) continue;
            const Member& rail = frame_.members[end.rail];
            if (end.is_from ? rail.foot_from : rail.foot_to) return true;
            along[index_of(end.run)] = true;
        }
        return !along[0] || !along[1] || carriers_.holds({x, y, level});
    }

    std::string plane_name(Axis axis, Nm at) const {
        for (std::size_t i = 0; i < frame_.planes.size() && i < placed_.planes.size(); ++i) {
            const auto& plane = placed_.planes[i];
            if (plane.axis == axis && plane.position == at) return frame_.planes[i].name;
        }
        return {};
    }

    void add(Nm x, Nm y, const Stretch& gap, const UprightEdge& edge, std::vector<Index> rails) {
        found_.push_back({.on = {plane_name(Axis::x, x), plane_name(Axis::y, y)},
                          .from = plane_name(Axis::z, gap.first),
                          .to = plane_name(Axis::z, gap.second),
                          .seat = edge.seat,
                          .legs = edge.legs,
                          .length = gap.second - gap.first,
                          .rails = std::move(rails)});
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Frame& frame_;
    const ResolvedFrame& placed_;
    std::vector<Box> bays_;
    Carriers carriers_;
    std::vector<OpenCorner> found_;
};

}  // namespace

std::vector<OpenCorner> open_corners(const Project& project,
                                     const Catalogue& catalogue,
                                     const Frame& frame,
                                     const ResolvedFrame& placed) {
    if (frame.bays.empty()) return {};
    auto bays = boxes_of_bays(frame, placed);
    if (!bays) return {};
    return OpenCorners(project, catalogue, frame, placed, std::move(*bays)).find();
}

Finding corner_not_carried(const Frame& frame, const OpenCorner& corner) {
    Finding finding{
        .code = "corner_not_carried",
        .severity = Severity::warning,
        .numbers = {{"length", Length::from_nm(corner.length)}},
        .what = "nothing carries the corner of \"" + corner.on[1] + "\" and \"" + corner.on[0] +
                "\" from \"" + corner.from + "\" to \"" + corner.to +
                "\": the rails that end there hold only each other",
        .mend =
            "put a post there, or a brace or a leaning member that ends there; where a wall "
            "carries it, give a rail a foot at that end"};
    for (const Index rail : corner.rails) {
        finding.concerns.push_back({SubjectKind::member, frame.name, frame.members[rail].name});
    }
    return finding;
}

void report_open_corners(const Project& project, const Catalogue& catalogue, Resolved& resolved) {
    for (std::size_t f = 0; f < resolved.frames.size(); ++f) {
        const Frame& frame = project.frames[f];
        for (const auto& corner : open_corners(project, catalogue, frame, resolved.frames[f])) {
            resolved.findings.push_back(corner_not_carried(frame, corner));
        }
    }
}

}  // namespace model
