#include "model/assembly/assembly_csv.h"

#include "engine/files/csv.h"
#include "model/assembly/assembly_terms.h"
#include "model/assembly/loose_steps.h"
#include "model/assembly/step_holding.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

// One line. What stands in no field of it is left empty.
struct Line {
    std::string act;  // "put on", "hold", "pin", "measure", "square", "rivet", "screw", "fix"
    std::string pieces;
    std::string members;
    std::string from;
    std::string datum_side;
    std::string joint;
    std::string joins;
    std::string pins;
    std::string fasteners;
    std::string diagonal;
    std::string diagonal_mm;
    std::string note;
};

class Writer {
public:
    Writer(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           const AssemblyOrder& order)
        : terms_{project, catalogue, resolved, order}, lengths_{project.shown} {}

    std::string text() && {
        for (Index step = 0; step < terms_.order.steps.size(); ++step) write(step);
        return std::move(text_).take();
    }

private:
    void write(Index number) {
        const auto& step = terms_.order.steps[number];
        for (const auto& move : step.moves) line(number, put_on(number, move));
        const auto holding = holding_words(terms_.resolved, terms_.order, number);
        if (!holding.empty()) line(number, {.act = "hold", .note = holding});
        for (const auto& pins : step.pins) line(number, pinned(pins));
        for (const Index row : step.squares) line(number, measured(terms_.order.squares[row]));
        for (const Index joint : step.by_try_square) line(number, squared(joint));
        for (const auto& setting : step.sets) line(number, set(setting));
        for (const Index hole : step.fixing_holes) line(number, fixed(terms_.resolved.holes[hole]));
    }

    // Steps are counted and named within their frame.
    void line(Index number, const Line& it) {
        const auto& step = terms_.order.steps[number];
        text_.row({terms_.project.frames[step.frame].name,
                   std::to_string(step_number(terms_.order, number)),
                   terms_.step_name(number, ": "),
                   step.assembly == 0 ? "the frame" : "part " + std::to_string(step.assembly),
                   it.act, it.pieces, it.members, it.from, it.datum_side, it.joint, it.joins,
                   it.pins, it.fasteners, it.diagonal, it.diagonal_mm, it.note});
    }

    Line put_on(Index number, const AssemblyMove& move) {
        Line it{.act = move.along == Travel{} ? "lay down" : "put on",
                .from = words_of(move.along)};
        if (move.along == Travel{}) it.from.clear();
        if (is_put_on_loose(terms_.order.steps, number, move)) it.note = loose_note(move);
        if (move.made_in != no_index) {
            const auto part = terms_.order.steps[move.made_in].assembly;
            it.members = "part " + std::to_string(part) + ", as a whole";
        }
        std::vector<std::string> marks;
        for (const Index piece : move.pieces) {
            marks.push_back(mark_of(piece));
            if (!terms_.has_way(piece)) it.note = "no_way_into_place";
            if (move.made_in != no_index) continue;
            it.members = terms_.words.member(piece);
            it.datum_side = model::datum_side(terms_.resolved.pieces[piece]);
        }
        std::ranges::sort(marks);
        for (std::size_t i = 0; i < marks.size();) {
            const auto same = static_cast<std::size_t>(std::ranges::count(
                marks.begin() + static_cast<std::ptrdiff_t>(i), marks.end(), marks[i]));
            if (!it.pieces.empty()) it.pieces += "; ";
            if (same > 1) it.pieces += std::to_string(same) + " ";
            it.pieces += marks[i];
            i += same;
        }
        return it;
    }

    // "loose until step 5"
    std::string loose_note(const AssemblyMove& move) const {
        if (move.held_in == no_index) return "loose";
        return "loose until step " + std::to_string(step_number(terms_.order, move.held_in));
    }

    // "A1", "A1 opposite"
    std::string mark_of(Index piece) const {
        const auto& of = terms_.resolved.pieces[piece];
        if (of.mark >= terms_.resolved.marks.size()) return {};
        const auto& name = terms_.resolved.marks[of.mark].name;
        return of.hand == Hand::opposite ? name + " opposite" : name;
    }

    // The number is the one of paper and window; two joints of the same members differ by it.
    Line at_joint(std::string act, Index joint) const {
        const auto& pieces = terms_.resolved.joints[joint].pieces;
        return {.act = std::move(act),
                .pieces = mark_of(pieces[0]) + " + " + mark_of(pieces[1]),
                .joint = std::to_string(terms_.names.number(joint)),
                .joins = terms_.names.members(joint)};
    }

    Line pinned(const StepPins& pins) const {
        Line it = at_joint("pin", pins.joint);
        it.pins = terms_.pins(pins);
        if (it.pins.empty()) it.act = "clamp";
        return it;
    }

    Line measured(const SquareRow& row) {
        const auto pair = [](const std::array<std::string, 2>& planes) {
            return planes[0] + " to " + planes[1];
        };
        return {.act = "measure",
                .members = row.face + ": " + pair(row.between[0]) + ", " + pair(row.between[1]),
                .diagonal = lengths_(row.diagonal),
                .diagonal_mm = decimal_mm(row.diagonal),
                .note = row.is_heel_to_heel ? "from heel to heel" : ""};
    }

    Line squared(Index joint) const {
        Line it = at_joint("square", joint);
        it.note = "with a try square";
        return it;
    }

    Line set(const StepSetting& setting) const {
        const auto& joint = terms_.resolved.joints[setting.joint];
        const bool is_rivet = terms_.resolved.fasteners[joint.first_fastener].spec.kind ==
                              FastenerSpec::Kind::blind_rivet;
        Line it = at_joint(is_rivet ? "rivet" : "screw", setting.joint);
        it.fasteners = terms_.fasteners_of(setting.joint);
        if (setting.long_nose) it.note = "long nose";
        if (std::ranges::binary_search(terms_.order.joints_not_reached, setting.joint)) {
            it.note = "no_order_of_rivets";
        }
        return it;
    }

    Line fixed(const Hole& hole) const {
        return {.act = "fix",
                .pieces = mark_of(hole.piece),
                .members = terms_.words.member(hole.piece)};
    }

    AssemblyTerms terms_;
    LengthTexts lengths_;
    engine::CsvText text_{"frame",     "step",     "work",        "builds", "do",    "pieces",
                          "members",   "from",     "datum_side",  "joint",  "joins", "pins",
                          "fasteners", "diagonal", "diagonal_mm", "note"};
};

}  // namespace

std::string assembly_csv(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const AssemblyOrder& order) {
    return Writer(project, catalogue, resolved, order).text();
}

}  // namespace model
