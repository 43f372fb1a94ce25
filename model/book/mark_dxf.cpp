#include "model/book/mark_dxf.h"

#include "model/schedule/decimal_mm.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <utility>

namespace model {
namespace {

using engine::DxfLayer;
using engine::PagePoint;

constexpr double dxf_word_height = 4.0;

// Closed loops of what is cut from sheet or flat bar; of a bar with legs, edges without its folds.
class Shapes {
public:
    explicit Shapes(const UnrolledPiece& flat) : flat_{flat} {}

    engine::DxfDrawing drawing() && {
        if (flat_.walls.size() > 1) {
            for (const auto& [from, to] : cut_edges(flat_))
                made_.lines.push_back({DxfLayer::outline, place(from), place(to)});
        } else if (flat_.loops.empty()) {
            add_rectangle();
        } else {
            for (const auto& loop : flat_.loops) add_loop(loop);
        }
        for (std::size_t i = 0; i + 1 < flat_.walls.size(); ++i) {
            const double fold = flat_.walls[i].right();
            made_.lines.push_back(
                {DxfLayer::fold, place({fold, 0.0}), place({fold, flat_.length})});
        }
        for (const auto& hole : flat_.holes) {
            made_.circles.push_back(
                {DxfLayer::hole, place({hole.across, hole.down}), hole.diameter / 2});
        }
        return std::move(made_);
    }

private:
    // Inner faces up and the datum end below: the drawing turned by half a turn.
    PagePoint place(const std::array<double, 2>& at) const { return {flat_.width - at[0], at[1]}; }

    void add_rectangle() {
        add_loop(
            {{0.0, 0.0}, {flat_.width, 0.0}, {flat_.width, flat_.length}, {0.0, flat_.length}});
    }

    // What lies within another one is cut out of it.
    void add_loop(const UnrolledLoop& loop) {
        const bool is_within =
            std::any_of(flat_.loops.begin(), flat_.loops.end(),
                        [&](const UnrolledLoop& other) { return lies_within(loop, other); });
        engine::DxfLoop shape{is_within ? DxfLayer::cut_out : DxfLayer::outline, {}};
        for (const auto& corner : loop) shape.corners.push_back(place(corner));
        made_.loops.push_back(std::move(shape));
    }

    // As far as their least rectangles tell: what is cut out keeps off the edges.
    static bool lies_within(const UnrolledLoop& loop, const UnrolledLoop& other) {
        for (const std::size_t axis : {0U, 1U}) {
            const auto by_axis = [axis](const auto& a, const auto& b) { return a[axis] < b[axis]; };
            const auto [least, most] = std::minmax_element(loop.begin(), loop.end(), by_axis);
            const auto [from, to] = std::minmax_element(other.begin(), other.end(), by_axis);
            if ((*least)[axis] <= (*from)[axis] || (*most)[axis] >= (*to)[axis]) return false;
        }
        return true;
    }

    const UnrolledPiece& flat_;
    engine::DxfDrawing made_;
};

std::string file_name(const Resolved& resolved, const MarkFacts& facts) {
    std::string name = resolved.marks[facts.cut.mark].name;
    if (facts.cut.hand == Hand::opposite) name += "_opposite";
    return name + ".dxf";
}

}  // namespace

engine::DxfDrawing mark_dxf(const Project& project,
                            const Resolved& resolved,
                            const MarkFacts& facts) {
    auto drawing = Shapes(facts.flat).drawing();
    const auto& cut = facts.cut;
    const auto write = [&](double below, std::string words) {
        drawing.texts.push_back({{0.0, -below}, dxf_word_height, std::move(words)});
    };
    write(8.0, name_of_mark(resolved, facts) + ", " + std::to_string(cut.quantity) +
                   (cut.quantity == 1 ? " piece" : " pieces"));
    write(14.0, cut.section + (cut.alloy.empty() ? "" : ", " + cut.alloy));
    write(20.0, decimal_mm(cut.length) + " mm long, 1:1 in millimetres, inner faces up");
    write(26.0, project.name);
    return drawing;
}

engine::Result<std::vector<ScheduleFile>> dxf_files(const Project& project,
                                                    const Catalogue& catalogue,
                                                    const Resolved& resolved) {
    std::vector<ScheduleFile> files;
    for (const auto& facts : mark_facts(project, catalogue, resolved)) {
        auto text = engine::dxf_text(mark_dxf(project, resolved, facts));
        const std::string name = file_name(resolved, facts);
        if (!text) {
            auto error = text.error();
            error.where = name;
            return error;
        }
        files.push_back({name, std::move(text).value()});
    }
    return files;
}

}  // namespace model
