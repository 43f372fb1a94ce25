#include "model/book/corner_kinds.h"

#include "model/book/corner_view.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/recipe.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace model {
namespace {

// An edge further away than this is another end of the piece, not an edge distance.
constexpr Nm far_edge = 60 * Length::nm_per_mm;

std::string thing_of(const Project& project,
                     const PieceWords& words,
                     const Resolved& resolved,
                     Index piece) {
    const auto& it = resolved.pieces[piece];
    if (it.kind != PieceKind::panel || it.plate_count == 0) return words.section(piece);
    // How wide a panel is makes no difference to its edge.
    const auto& plate = it.plates[0];
    const auto thick =
        Length::from_nm(plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis]);
    return "panel of " + length_on_paper(project, thick) + " " + std::string(words.alloy(piece));
}

// Through its first fastener.
CornerCut plane_across(const Resolved& resolved, Index joint) {
    const auto& it = resolved.joints[joint];
    const auto& outer = resolved.pieces[corner_sides(resolved, joint)[0].piece];
    CornerCut cut{.fastener = it.first_fastener};
    cut.drive = resolved.fasteners[it.first_fastener].axis;
    cut.away = index_of(outer.run);
    if (cut.away == cut.drive) cut.away = cut.drive == 0 ? 1 : 0;
    cut.across = 3 - cut.drive - cut.away;
    return cut;
}

// Along one axis of the frame. None for a wall that is notched, coped or sloped: its box reaches to
// metal that is cut away.
EdgeDistances edge_distances(const Resolved& resolved,
                             Index joint,
                             std::size_t axis,
                             Index fastener) {
    const auto sides = corner_sides(resolved, joint);
    const Nm at = resolved.fasteners[fastener].at[axis];
    EdgeDistances distances;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto& piece = resolved.pieces[sides[k].piece];
        if (piece.lean != no_index) continue;
        for (const auto& plate : piece.walls()) {
            const bool is_its = !plate.is_root_fillet && plate.wall == sides[k].wall;
            if (!is_its || plate.outline != no_index) continue;
            const Nm nearer = std::min(at - plate.box.lo[axis], plate.box.hi[axis] - at);
            if (nearer > 0 && nearer < far_edge) distances[k] = Length::from_nm(nearer);
        }
    }
    return distances;
}

class Kinds {
public:
    Kinds(const Project& project, const Catalogue& catalogue, const Resolved& resolved)
        : project_{project},
          catalogue_{catalogue},
          resolved_{resolved},
          words_{project, catalogue, resolved},
          fasteners_{catalogue, resolved} {}

    std::vector<CornerKind> all() const {
        std::vector<CornerKind> kinds;
        std::map<std::vector<std::string>, std::size_t> known;
        for (Index i = 0; i < resolved_.joints.size(); ++i) {
            if (resolved_.joints[i].fastener_count == 0) continue;
            auto words = words_of(i);
            const auto title = title_of(i);
            auto key = words;
            key.push_back(title);
            const auto [found, is_new] = known.emplace(std::move(key), kinds.size());
            if (is_new) kinds.push_back({.title = title, .words = std::move(words)});
            kinds[found->second].joints.push_back(i);
        }
        std::ranges::stable_sort(kinds, std::greater<>{},
                                 [](const CornerKind& kind) { return kind.joints.size(); });
        for (auto& kind : kinds) kind.words.push_back(places_of(kind));
        return kinds;
    }

private:
    std::string title_of(Index joint) const {
        const auto sides = corner_sides(resolved_, joint);
        return thing_of(project_, words_, resolved_, sides[0].piece) + " on " +
               thing_of(project_, words_, resolved_, sides[1].piece);
    }

    std::vector<std::string> words_of(Index joint) const {
        const auto& it = resolved_.joints[joint];
        std::vector<std::string> words;
        const bool is_of_panel = resolved_.pieces[it.pieces[0]].kind == PieceKind::panel ||
                                 resolved_.pieces[it.pieces[1]].kind == PieceKind::panel;
        if (it.recipe < recipes().size() && !is_of_panel)
            words.emplace_back("How they meet: " + std::string(recipes()[it.recipe].name));
        words.push_back(fasteners_in(joint));
        const auto& first = resolved_.fasteners[it.first_fastener];
        std::string stack = "Stack " + on_paper(first.grip) + ": ";
        for (std::size_t k = 0; k < first.stack_count; ++k)
            stack += (k == 0 ? "" : " + ") + on_paper(first.stack[k].thickness);
        words.push_back(stack + ", head side first");
        const auto edges = least_edge_distances(resolved_, joint);
        const auto least = distances_in_words(edges);
        if (least.empty()) return words;
        words.push_back((it.fastener_count > 1 ? "Least edge distance " : "Edge distance ") +
                        least);
        words.back() += drawn_otherwise(joint, edges);
        return words;
    }

    // What the section shows where that is not the least.
    std::string drawn_otherwise(Index joint, const EdgeDistances& least) const {
        if (edge_distances_drawn(resolved_, joint) == least) return {};
        const auto shown = edge_distances_shown(catalogue_, resolved_, joint);
        bool is_other = false;
        for (std::size_t k = 0; k < 2; ++k) is_other |= shown[k] && shown[k] != least[k];
        return is_other ? "; as drawn here " + distances_in_words(shown) : std::string();
    }

    // "1/2 in outer, 3/8 in inner piece"
    std::string distances_in_words(const EdgeDistances& edges) const {
        std::string words;
        for (std::size_t k = 0; k < 2; ++k) {
            if (!edges[k]) continue;
            words += (words.empty() ? "" : ", ") + length_on_paper(project_, *edges[k]) +
                     (k == 0 ? " outer" : " inner");
        }
        return words.empty() ? words : words + " piece";
    }

    std::string fasteners_in(Index joint) const {
        std::map<std::string, int> counts;
        const auto& it = resolved_.joints[joint];
        for (Index f = it.first_fastener; f < it.first_fastener + it.fastener_count; ++f)
            ++counts[fasteners_.label_of(f)];
        std::string words;
        for (const auto& [label, count] : counts)
            words += (words.empty() ? "" : "; ") + std::to_string(count) + " x " + label;
        return words;
    }

    // Which marks meet so, each pair once.
    std::string places_of(const CornerKind& kind) const {
        std::vector<std::string> pairs;
        for (const Index joint : kind.joints) {
            const auto sides = corner_sides(resolved_, joint);
            auto pair = mark_of(sides[0].piece) + " on " + mark_of(sides[1].piece);
            if (std::ranges::find(pairs, pair) == pairs.end()) pairs.push_back(std::move(pair));
        }
        constexpr std::size_t most = 6;
        std::string words = std::to_string(kind.joints.size()) +
                            (kind.joints.size() == 1 ? " joint: " : " joints: ");
        for (std::size_t i = 0; i < pairs.size() && i < most; ++i)
            words += (i == 0 ? "" : ", ") + pairs[i];
        if (pairs.size() > most) words += " and " + std::to_string(pairs.size() - most) + " more";
        return words;
    }

    std::string mark_of(Index piece) const {
        const auto mark = resolved_.pieces[piece].mark;
        return mark < resolved_.marks.size() ? resolved_.marks[mark].name : words_.member(piece);
    }

    std::string on_paper(Nm length) const {
        return length_on_paper(project_, Length::from_nm(length));
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    PieceWords words_;
    FastenersInUse fasteners_;
};

}  // namespace

std::array<CornerSide, 2> corner_sides(const Resolved& resolved, Index joint) {
    const auto& it = resolved.joints[joint];
    std::array<CornerSide, 2> sides{{{it.pieces[0], it.walls[0]}, {it.pieces[1], it.walls[1]}}};
    if (it.fastener_count == 0) return sides;
    const auto& fastener = resolved.fasteners[it.first_fastener];
    const auto from_head = [&](const CornerSide& side) {
        std::size_t k = 0;
        while (k < fastener.stack_count && fastener.stack[k].piece != side.piece) ++k;
        return k;
    };
    if (from_head(sides[1]) < from_head(sides[0])) std::swap(sides[0], sides[1]);
    return sides;
}

std::vector<CornerKind> corner_kinds(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved) {
    return Kinds(project, catalogue, resolved).all();
}

CornerCut corner_cut(const Resolved& resolved, Index joint) {
    const auto& it = resolved.joints[joint];
    CornerCut cut = plane_across(resolved, joint);
    std::optional<Length> nearest;
    for (Index f = it.first_fastener; f < it.first_fastener + it.fastener_count; ++f) {
        for (const auto& distance : edge_distances(resolved, joint, cut.across, f)) {
            if (!distance || (nearest && *distance >= *nearest)) continue;
            nearest = distance;
            cut.fastener = f;
        }
    }
    const auto& at = resolved.fasteners[cut.fastener].at;
    for (std::size_t i = 0; i < 3; ++i) cut.at[i] = in_mm(at[i]);
    return cut;
}

EdgeDistances edge_distances_drawn(const Resolved& resolved, Index joint) {
    const auto cut = corner_cut(resolved, joint);
    return edge_distances(resolved, joint, cut.across, cut.fastener);
}

EdgeDistances least_edge_distances(const Resolved& resolved, Index joint) {
    const auto& it = resolved.joints[joint];
    const auto cut = plane_across(resolved, joint);
    EdgeDistances least;
    for (Index f = it.first_fastener; f < it.first_fastener + it.fastener_count; ++f) {
        for (const std::size_t axis : {cut.across, cut.away}) {
            const auto here = edge_distances(resolved, joint, axis, f);
            for (std::size_t k = 0; k < 2; ++k) {
                if (here[k] && (!least[k] || *here[k] < *least[k])) least[k] = here[k];
            }
        }
    }
    return least;
}

}  // namespace model
