#include "model/project/step_over_bays.h"

#include "model/project/named_list.h"

#include <algorithm>
#include <set>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

constexpr const char* side_words[3][2] = {{"left", "right"}, {"front", "back"}, {"below", "above"}};

using Order = std::array<std::size_t, 3>;

// Part of a bay beside the notch.
struct Part {
    Bay bay;
    Box box;
};

std::array<std::string, 2>& planes_of(Bay& bay, std::size_t axis) {
    return axis == 0 ? bay.x : axis == 1 ? bay.y : bay.z;
}

double volume(const Box& box) {
    double product = 1.0;
    for (std::size_t k = 0; k < 3; ++k)
        product *= static_cast<double>(box.hi[k] - box.lo[k]) * 1e-6;
    return product;
}

// Slices the notch off, axis by axis; the largest part first.
std::vector<Part> parts_of(const Bay& bay, const Box& box, const Notch& notch, const Order& order) {
    std::vector<Part> parts;
    Part rest{bay, box};
    for (const std::size_t axis : order) {
        for (std::size_t side = 0; side < 2; ++side) {
            const Nm at = notch.at(axis, side);
            if (at <= rest.box.lo[axis] || at >= rest.box.hi[axis]) continue;
            Part part = rest;
            planes_of(part.bay, axis)[1 - side] = notch.plane[axis][side];
            (side == 0 ? part.box.hi : part.box.lo)[axis] = at;
            part.bay.name += std::string(" ") + side_words[axis][side];
            parts.push_back(std::move(part));
            planes_of(rest.bay, axis)[side] = notch.plane[axis][side];
            (side == 0 ? rest.box.lo : rest.box.hi)[axis] = at;
        }
    }
    std::ranges::stable_sort(parts, std::ranges::greater{},
                             [](const Part& part) { return volume(part.box); });
    return parts;
}

// The part that has all of a face of the bay; none where the notch or a seam is in it.
const Part* part_with_face(const std::vector<Part>& parts, const Box& bay, const Panel& panel) {
    for (const Part& part : parts) {
        bool has_it = true;
        for (std::size_t k = 0; k < 3; ++k) {
            const bool is_face_axis = k == index_of(panel.face_axis);
            const bool wants_least = !is_face_axis || panel.face_side == Sense::minus;
            const bool wants_most = !is_face_axis || panel.face_side == Sense::plus;
            if (wants_least && part.box.lo[k] != bay.lo[k]) has_it = false;
            if (wants_most && part.box.hi[k] != bay.hi[k]) has_it = false;
        }
        if (has_it) return &part;
    }
    return nullptr;
}

class Parting {
public:
    Parting(Frame& frame, const Stepping& it) : frame_{frame}, it_{it} {
        for (const Bay& bay : frame.bays) taken_.insert(bay.name);
    }

    Changed part() {
        std::vector<Bay> bays;
        for (std::size_t b = 0; b < it_.frame.bays.size(); ++b) {
            const Bay& bay = it_.frame.bays[b];
            const Box& box = it_.layout.bays[b];
            if (!engine::overlaps(box, it_.notch.box)) {
                bays.push_back(bay);
                continue;
            }
            if (auto parted = part(bay, box, bays); !parted) return parted;
        }
        frame_.bays = std::move(bays);
        return Done{};
    }

private:
    Changed part(const Bay& bay, const Box& box, std::vector<Bay>& bays) {
        const std::vector<const Panel*> panels = panels_of(bay);
        // Levels first, as a shelf lies over the notch; another order where a panel wants it.
        constexpr Order orders[] = {{2, 1, 0}, {2, 0, 1}, {1, 2, 0},
                                    {1, 0, 2}, {0, 2, 1}, {0, 1, 2}};
        for (const Order& order : orders) {
            auto parts = parts_of(bay, box, it_.notch, order);
            if (parts.empty()) return check_empty(bay);
            const bool all = std::ranges::all_of(panels, [&](const Panel* panel) {
                return part_with_face(parts, box, *panel) != nullptr;
            });
            if (!all) continue;
            name_parts(bay, parts);
            for (const Panel* panel : panels) {
                const Part* part = part_with_face(parts, box, *panel);
                find_named(frame_.panels, panel->name)->bay = part->bay.name;
            }
            for (Part& one : parts) bays.push_back(std::move(one.bay));
            return Done{};
        }
        return cut_panel(box, panels);
    }

    std::vector<const Panel*> panels_of(const Bay& bay) const {
        std::vector<const Panel*> panels;
        for (const Panel& panel : it_.frame.panels) {
            if (panel.bay == bay.name) panels.push_back(&panel);
        }
        return panels;
    }

    // What was said of the whole is said of the part that keeps its name.
    void name_parts(const Bay& bay, std::vector<Part>& parts) {
        parts.front().bay.name = bay.name;
        for (std::size_t i = 1; i < parts.size(); ++i) {
            Bay& part = parts[i].bay;
            part.use = BayUse::open;
            part.note.clear();
            const std::string wanted = part.name;
            for (int n = 2; !taken_.insert(part.name).second; ++n) {
                part.name = wanted + " " + std::to_string(n);
            }
        }
    }

    Changed check_empty(const Bay& bay) const {
        for (const Panel& panel : it_.frame.panels) {
            if (panel.bay == bay.name) return in_bay_that_goes(panel, bay);
        }
        for (const Load& load : it_.frame.loads) {
            const auto* where = std::get_if<std::string>(&load.where);
            if (where != nullptr && *where == bay.name) return in_bay_that_goes(load, bay);
        }
        return Done{};
    }

    Error in_bay_that_goes(const auto& thing, const Bay& bay) const {
        return {ErrorCode::invalid_value, inside(described(it_.frame), described(thing)),
                "nothing would remain of its bay \"" + bay.name +
                    "\"; move it to another bay or remove it first"};
    }

    // The panel that is in the way whatever the order, or the first one of those that want
    // different orders.
    Error cut_panel(const Box& box, const std::vector<const Panel*>& panels) const {
        const Panel* named = panels.front();
        for (const Panel* panel : panels) {
            Box face = box;
            const std::size_t axis = index_of(panel->face_axis);
            const bool is_least = panel->face_side == Sense::minus;
            (is_least ? face.hi : face.lo)[axis] = is_least ? face.lo[axis] + 1 : face.hi[axis] - 1;
            if (engine::overlaps(face, it_.notch.box)) {
                named = panel;
                break;
            }
        }
        return {ErrorCode::invalid_value, inside(described(it_.frame), described(*named)),
                "the step would cut it, or part the bay that it is on; remove it first, and put "
                "panels on what remains"};
    }

    Frame& frame_;
    const Stepping& it_;
    std::set<std::string> taken_;
};

// ---- what else is in the way --------------------------------------------------------------------

// Whether a straight line between two points runs through the inside of the box.
bool runs_through(const engine::Point& from, const engine::Point& to, const Box& box) {
    double first = 0.0;
    double last = 1.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto start = static_cast<double>(from[k]);
        const auto way = static_cast<double>(to[k] - from[k]);
        const auto lo = static_cast<double>(box.lo[k]);
        const auto hi = static_cast<double>(box.hi[k]);
        if (from[k] == to[k]) {
            if (from[k] <= box.lo[k] || from[k] >= box.hi[k]) return false;
            continue;
        }
        first = std::max(first, std::min((lo - start) / way, (hi - start) / way));
        last = std::min(last, std::max((lo - start) / way, (hi - start) / way));
    }
    return last - first > 1e-9;
}

// Diagonals and leaning members.
template <class T>
Changed check_between_nodes(const std::vector<T>& bars, const Stepping& it) {
    for (const T& bar : bars) {
        const std::string where = inside(described(it.frame), described(bar));
        const auto face = std::ranges::find(it.frame.planes, bar.face, &Plane::name);
        if (face == it.frame.planes.end()) continue;  // it has a finding, and no place
        const auto axes = across(face->axis);
        engine::Point from{};
        engine::Point to{};
        from[index_of(face->axis)] = to[index_of(face->axis)] = it.layout.at(bar.face);
        bool has_place = true;
        for (std::size_t i = 0; i < 2; ++i) {
            if (!it.layout.planes.contains(bar.from[i]) || !it.layout.planes.contains(bar.to[i])) {
                has_place = false;
                continue;
            }
            from[index_of(axes[i])] = it.layout.at(bar.from[i]);
            to[index_of(axes[i])] = it.layout.at(bar.to[i]);
        }
        if (!has_place || !runs_through(from, to, it.notch.box)) continue;
        return Error{ErrorCode::invalid_value, where,
                     "it runs through what the step takes out; move or remove it first"};
    }
    return Done{};
}

Changed check_point_loads(const Stepping& it, const DimensionValues& values) {
    for (const Load& load : it.frame.loads) {
        const auto* place = std::get_if<Place>(&load.where);
        if (place == nullptr) continue;
        const std::string where = inside(described(it.frame), described(load));
        bool is_inside = true;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto at = values.length((*place)[k], where);
            if (!at) return at.error();
            is_inside = is_inside && *at > it.notch.box.lo[k] && *at < it.notch.box.hi[k];
        }
        if (!is_inside) continue;
        return Error{ErrorCode::invalid_value, where,
                     "it lies in what the step takes out; move or remove it first"};
    }
    return Done{};
}

}  // namespace

Changed part_bays(Frame& frame, const Stepping& it, const DimensionValues& values) {
    if (auto clear = check_between_nodes(it.frame.diagonals, it); !clear) return clear;
    if (auto clear = check_between_nodes(it.frame.leaning, it); !clear) return clear;
    if (auto clear = check_point_loads(it, values); !clear) return clear;
    return Parting(frame, it).part();
}

}  // namespace model
