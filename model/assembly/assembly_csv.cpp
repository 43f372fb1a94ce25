#include "model/assembly/assembly_csv.h"

#include "engine/files/csv.h"
#include "model/assembly/joint_names.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

// One line. What stands in no field of it is left empty.
struct Line {
    std::string act;  // "put on", "pin", "measure", "rivet", "screw", "fix"
    std::string pieces;
    std::string members;
    std::string from;
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
        : project_{project},
          catalogue_{catalogue},
          resolved_{resolved},
          order_{order},
          words_{project, catalogue, resolved},
          fasteners_{catalogue, resolved},
          names_{words_, resolved, order},
          lengths_{project.shown} {}

    std::string text() && {
        std::vector<int> last(project_.frames.size(), 0);
        for (const auto& step : order_.steps) write(step, ++last[step.frame]);
        return std::move(text_).take();
    }

private:
    // Steps are counted within their frame.
    void write(const AssemblyStep& step, int number) {
        for (const auto& move : step.moves) line(step, number, put_on(move));
        for (const auto& pins : step.pins) line(step, number, pinned(pins));
        for (const Index row : step.squares) line(step, number, measured(order_.squares[row]));
        for (const auto& setting : step.sets) line(step, number, set(setting));
        for (const Index hole : step.fixing_holes) line(step, number, fixed(resolved_.holes[hole]));
    }

    void line(const AssemblyStep& step, int number, const Line& it) {
        std::string work(name_of(step.work));
        if (!step.face.empty()) work += ": " + step.face;
        text_.row({project_.frames[step.frame].name, std::to_string(number), work,
                   step.assembly == 0 ? "the frame" : "part " + std::to_string(step.assembly),
                   it.act, it.pieces, it.members, it.from, it.joint, it.joins, it.pins,
                   it.fasteners, it.diagonal, it.diagonal_mm, it.note});
    }

    Line put_on(const AssemblyMove& move) {
        Line it{.act = move.along == Travel{} ? "lay down" : "put on",
                .from = words_of(move.along)};
        if (move.along == Travel{}) it.from.clear();
        if (move.made_in != no_index) {
            const auto part = order_.steps[move.made_in].assembly;
            it.members = "part " + std::to_string(part) + ", as a whole";
        }
        std::vector<std::string> marks;
        for (const Index piece : move.pieces) {
            marks.push_back(mark_of(piece));
            if (move.made_in == no_index) it.members = words_.member(piece);
            const auto& lost = order_.pieces_without_way;
            if (std::ranges::binary_search(lost, piece)) it.note = "no_way_into_place";
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

    // "A1", "A1 opposite"
    std::string mark_of(Index piece) const {
        const auto& of = resolved_.pieces[piece];
        if (of.mark >= resolved_.marks.size()) return {};
        const auto& name = resolved_.marks[of.mark].name;
        return of.hand == Hand::opposite ? name + " opposite" : name;
    }

    // The number is the one of paper and window; two joints of the same members differ by it.
    Line at_joint(std::string act, Index joint) const {
        const auto& pieces = resolved_.joints[joint].pieces;
        return {.act = std::move(act),
                .pieces = mark_of(pieces[0]) + " + " + mark_of(pieces[1]),
                .joint = std::to_string(names_.number(joint)),
                .joins = names_.members(joint)};
    }

    Line pinned(const StepPins& pins) const {
        Line it = at_joint("pin", pins.joint);
        if (pins.pin < catalogue_.pins.size()) {
            it.pins = std::to_string(pins.fasteners.size()) + " " + catalogue_.pins[pins.pin].id;
        } else {
            it.act = "clamp";
        }
        return it;
    }

    Line measured(const SquareRow& row) {
        const auto pair = [](const std::array<std::string, 2>& planes) {
            return planes[0] + " to " + planes[1];
        };
        return {.act = "measure",
                .members = row.face + ": " + pair(row.between[0]) + ", " + pair(row.between[1]),
                .diagonal = lengths_(row.diagonal),
                .diagonal_mm = decimal_mm(row.diagonal)};
    }

    Line set(const StepSetting& setting) const {
        const auto& joint = resolved_.joints[setting.joint];
        const bool is_rivet =
            resolved_.fasteners[joint.first_fastener].spec.kind == FastenerSpec::Kind::blind_rivet;
        Line it = at_joint(is_rivet ? "rivet" : "screw", setting.joint);
        it.fasteners =
            std::to_string(joint.fastener_count) + " " + fasteners_.label_of(joint.first_fastener);
        if (setting.long_nose) it.note = "long nose";
        if (std::ranges::binary_search(order_.joints_not_reached, setting.joint)) {
            it.note = "no_order_of_rivets";
        }
        return it;
    }

    Line fixed(const Hole& hole) const {
        return {.act = "fix", .pieces = mark_of(hole.piece), .members = words_.member(hole.piece)};
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    const AssemblyOrder& order_;
    PieceWords words_;
    FastenersInUse fasteners_;
    JointNames names_;
    LengthTexts lengths_;
    engine::CsvText text_{"frame",  "step",      "work",     "builds",      "do",
                          "pieces", "members",   "from",     "joint",       "joins",
                          "pins",   "fasteners", "diagonal", "diagonal_mm", "note"};
};

}  // namespace

std::string assembly_csv(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const AssemblyOrder& order) {
    return Writer(project, catalogue, resolved, order).text();
}

}  // namespace model
