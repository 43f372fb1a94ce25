#include "model/book/mark_dxf.h"

#include "model/book/stamp.h"
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
constexpr double dxf_row_height = 4.5;

// Closed loops of what is cut from sheet or flat bar; of a bar with legs, edges without its folds.
class Shapes {
public:
    explicit Shapes(const MarkFacts& facts) : facts_{facts}, flat_{facts.flat} {}

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
                {layer_of(hole.hole), place({hole.across, hole.down}), hole.diameter / 2});
        }
        return std::move(made_);
    }

private:
    // What is drilled later is left to that time, even if it is tapped then.
    DxfLayer layer_of(Index hole) const {
        const auto has = [&](HoleOperation work) {
            return std::ranges::any_of(facts_.drills, [&](const DrillRow& row) {
                return row.pattern_hole == hole && row.operation == work;
            });
        };
        if (has(HoleOperation::match_drill)) return DxfLayer::matched;
        const bool is_tapped = has(HoleOperation::tap) || has(HoleOperation::tap_drill);
        return is_tapped ? DxfLayer::tapped : DxfLayer::hole;
    }

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

    const MarkFacts& facts_;
    const UnrolledPiece& flat_;
    engine::DxfDrawing made_;
};

// Round the shapes: what each leg and end is, what is done at each hole, and below them what the
// piece is.
class Words {
public:
    Words(engine::DxfDrawing& drawing, const MarkFacts& facts)
        : drawing_{drawing}, facts_{facts}, flat_{facts.flat} {}

    void write_ends_and_legs() {
        for (const auto& wall : flat_.walls) {
            const double left = flat_.width - wall.right();
            const double letters = static_cast<double>(wall.name.size());
            const double height = std::min(3.0, (wall.right() - wall.left()) / letters);
            write({left + 0.5, -1.0 - height}, height, wall.name);
        }
        write({0.0, -10.0}, dxf_word_height, "DATUM END");
        write({0.0, flat_.length + 3.0}, dxf_word_height, "far end");
    }

    // A line for each thing that is done at a hole, beside the piece, from its datum end up.
    void write_holes() {
        for (std::size_t i = 0; i < flat_.holes.size(); ++i) {
            const auto& hole = flat_.holes[i];
            write({flat_.width - hole.across + hole.diameter / 2 + 0.5, hole.down + 0.5}, 1.8,
                  "h" + std::to_string(facts_.numbers[i]));
        }
        double up = dxf_row_height * static_cast<double>(facts_.drills.size());
        for (const auto& row : facts_.drills) {
            up -= dxf_row_height;
            write({flat_.width + 8.0, up}, 2.5,
                  "h" + std::to_string(row.hole) + " " + row.leg + ": " + work_words(row) + ", " +
                      decimal_mm(row.diameter) + " mm; " + decimal_mm(row.from_datum) +
                      " from datum end, gauge " + decimal_mm(row.gauge));
        }
    }

    void write_below(std::string words) {
        write({0.0, below_}, dxf_word_height, std::move(words));
        below_ -= 6.0;
    }

private:
    void write(PagePoint at, double height, std::string words) {
        drawing_.texts.push_back({at, height, std::move(words)});
    }

    engine::DxfDrawing& drawing_;
    const MarkFacts& facts_;
    const UnrolledPiece& flat_;
    double below_ = -18.0;
};

std::string file_name(const Resolved& resolved, const MarkFacts& facts) {
    std::string name = resolved.marks[facts.cut.mark].name;
    if (facts.cut.hand == Hand::opposite) name += "_opposite";
    return name + ".dxf";
}

}  // namespace

engine::DxfDrawing mark_dxf(const Project& project,
                            const Resolved& resolved,
                            const MarkFacts& facts,
                            const DxfWish& wish) {
    auto drawing = Shapes(facts).drawing();
    const auto& cut = facts.cut;
    Words words(drawing, facts);
    words.write_ends_and_legs();
    words.write_holes();
    words.write_below(name_of_mark(resolved, facts) + ", " + std::to_string(cut.quantity) +
                      (cut.quantity == 1 ? " piece" : " pieces"));
    words.write_below(cut.section + (cut.alloy.empty() ? "" : ", " + cut.alloy));
    words.write_below(decimal_mm(cut.length) + " mm long, 1:1 in millimetres, inner faces up");
    words.write_below(ends_sentence(facts));
    words.write_below(project.name);
    words.write_below("stamp " + wish.stamp);
    if (wish.has_errors)
        words.write_below("NOT FIT TO CUT FROM: mend what is wrong in the program first");
    return drawing;
}

engine::Result<std::vector<ScheduleFile>> dxf_files(const Project& project,
                                                    const Catalogue& catalogue,
                                                    const Resolved& resolved,
                                                    bool has_errors) {
    const DxfWish wish{project_stamp(project), has_errors};
    std::vector<ScheduleFile> files;
    for (const auto& facts : mark_facts(project, catalogue, resolved)) {
        auto text = engine::dxf_text(mark_dxf(project, resolved, facts, wish));
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
