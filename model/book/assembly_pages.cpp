#include "model/book/assembly_pages.h"

#include "model/assembly/step_words.h"
#include "model/book/step_picture.h"
#include "model/book/works_in.h"
#include "model/schedule/page_table.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <map>

namespace model {
namespace {

using engine::LetterWeight;

constexpr double step_size = 3.5;  // mm
constexpr double step_line = step_size * 1.28;
constexpr double step_title_size = 4.2;
constexpr double step_title_line = step_title_size * 1.28;
constexpr double below_title = 1.2;
constexpr engine::PageBox usual_picture{.width = 92.0, .height = 74.0};
constexpr engine::PageBox crowded_picture{.width = 112.0, .height = 94.0};
constexpr std::size_t crowd = 10;  // joints
constexpr double box_room = 7.0;   // of a box to tick, beside what is ticked
constexpr double behind = 5.0;     // a step

class FrameSteps {
public:
    FrameSteps(PageFlow& flow,
               const BookOf& of,
               const AssemblyOrder& order,
               const StepWording& words)
        : flow_{flow}, of_{of}, order_{order}, words_{words} {}

    void draw(Index number) {
        const auto& step = order_.steps[number];
        auto& stands = standing_[step.assembly];
        std::vector<bool> is_new(of_.resolved.pieces.size(), false);
        for (const auto& move : step.moves) {
            for (const Index piece : move.pieces) {
                stands.push_back(piece);
                is_new[piece] = true;
            }
        }
        const auto joints = words_.joints(number);
        picture_ = joints.size() > crowd ? crowded_picture : usual_picture;
        // Where nothing is put on, pinned or set there is nothing to see.
        if (stands.empty() || (step.moves.empty() && joints.empty())) picture_ = {};
        flow_.make_room(std::max(picture_.height, step_title_line + below_title + 3 * step_line) +
                        behind);
        const double top = flow_.y();
        const auto page = flow_.pages().size();
        picture_.left = flow_.left() + flow_.width() - picture_.width;
        picture_.top = top;
        if (picture_.width > 0.0)
            draw_step_picture(flow_.page(), picture_, of_.resolved, stands, is_new, joints);
        draw_lines(number);
        const bool is_beside = flow_.pages().size() == page;
        if (is_beside) flow_.skip(std::max(0.0, top + picture_.height - flow_.y()));
        draw_joints(joints);
        flow_.skip(behind / 2);
        flow_.page().draw_line({flow_.left(), flow_.y()}, {flow_.left() + flow_.width(), flow_.y()},
                               {.width = engine::narrow_width});
        flow_.skip(behind / 2);
    }

    // The last two: what needs no picture is not left alone on a page, where there is a way.
    void draw_last(Index before, Index last) {
        const PageFlow flow = flow_;
        const auto standing = standing_;
        draw(before);
        const auto page = flow_.pages().size();
        draw(last);
        if (flow_.pages().size() == page || picture_.width > 0.0) return;
        const PageFlow first = flow_;
        flow_ = flow;
        standing_ = standing;
        flow_.new_page();
        draw(before);
        draw(last);
        if (flow_.pages().size() > first.pages().size()) flow_ = first;
    }

private:
    void draw_lines(Index number) {
        for (const auto& it : wrapped_lines(words_.title(number), step_title_size, beside_picture(),
                                            LetterWeight::bold))
            flow_.text(it, {.size = step_title_size, .weight = LetterWeight::bold},
                       step_title_line);
        flow_.skip(below_title);
        for (const auto& it : words_.lines(number)) {
            const bool is_signed = it.work == StepWork::measure;
            draw_ticked(it.text + (is_signed ? ".  One:_________  other:_________" : ""));
        }
    }

    double beside_picture() const { return flow_.width() - picture_.width - 6.0; }

    // What is longer than a few lines may begin on one page and end on the next.
    void draw_ticked(const std::string& text) {
        const auto lines = wrapped_lines(text, step_size, beside_picture() - box_room);
        constexpr std::size_t together = 6;
        flow_.make_room(static_cast<double>(std::min(lines.size(), together)) * step_line + 1.5);
        flow_.page().draw_rectangle({flow_.left(), flow_.y() + 0.2, 4.0, 4.0});
        for (const auto& it : lines) {
            flow_.make_room(step_line);
            flow_.page().draw_text({flow_.left() + box_room, flow_.y() + step_size}, it,
                                   {.size = step_size});
            flow_.skip(step_line);
        }
        flow_.skip(1.5);
    }

    void draw_joints(const std::vector<StepJoint>& joints) {
        if (joints.empty()) return;
        std::vector<TableColumn> columns{
            {.head = "Joint", .anchor = engine::TextAnchor::end, .weight = LetterWeight::bold},
            {.head = "Marks"},
            {.head = "Where"},
            {.head = "Pin", .is_box = true, .box_needs_text = true},
            {.head = "Set", .is_box = true, .box_needs_text = true},
            {.head = "Note"}};
        std::vector<TableCells> rows;
        for (const auto& it : joints) {
            rows.push_back(
                {std::to_string(it.number), it.marks, it.members, it.pins, it.fasteners, it.note});
        }
        leave_out_empty(columns, rows);
        draw_table(flow_, columns, rows, 3.2);
    }

    static void leave_out_empty(std::vector<TableColumn>& columns, std::vector<TableCells>& rows) {
        for (std::size_t k = columns.size(); k-- > 0;) {
            if (!std::ranges::all_of(rows, [k](const TableCells& row) { return row[k].empty(); }))
                continue;
            const auto at = static_cast<std::ptrdiff_t>(k);
            columns.erase(columns.begin() + at);
            for (auto& row : rows) row.erase(row.begin() + at);
        }
    }

    PageFlow& flow_;
    const BookOf& of_;
    const AssemblyOrder& order_;
    const StepWording& words_;
    engine::PageBox picture_;                       // of the step
    std::map<Index, std::vector<Index>> standing_;  // by assembly of the frame
};

void draw_problems(PageFlow& flow, const AssemblyOrder& order) {
    for (const auto& problem : order.problems) {
        draw_words(flow,
                   where_text(problem) + ": " + problem.what + ". Mend: " + problem.mend + ".",
                   step_size, LetterWeight::bold);
        flow.skip(2.0);
    }
}

void draw_frame_head(PageFlow& flow, const std::string& frame) {
    draw_page_head(
        flow, frame + ": order of assembly",
        "What is new in a step is drawn bold, dashed where other pieces hide it; round "
        "numbers are those of its joints, in the order in which they are set. Work down "
        "the boxes: put on, pin, measure, set; tick each when it is done. \"Long nose\": "
        "only the tool's nose has room there, not its housing. \"Put on loose\": it is "
        "laid in its place and nothing holds it yet; keep it there with a clamp or a "
        "strap.");
}

void draw_directions(PageFlow& flow) {
    draw_words(flow,
               "Directions are those of the cabinet as it stands in the van, seen from before its "
               "front; the pictures show it standing, too. What is laid down on the bench lies on "
               "the side that its step tells: on its left side, what comes \"from the right\" "
               "comes down from above.");
    flow.skip(3.0);
}

std::vector<Index> steps_of(const AssemblyOrder& order, Index frame) {
    std::vector<Index> steps;
    for (Index i = 0; i < order.steps.size(); ++i) {
        if (order.steps[i].frame == frame) steps.push_back(i);
    }
    return steps;
}

void draw_steps(FrameSteps& drawn, const std::vector<Index>& steps) {
    for (std::size_t i = 0; i + 2 < steps.size(); ++i) drawn.draw(steps[i]);
    if (steps.size() == 1) return drawn.draw(steps.front());
    drawn.draw_last(steps[steps.size() - 2], steps.back());
}

}  // namespace

void add_assembly(BookPages& book, const BookOf& of, const AssemblyOrder& order) {
    if (order.steps.empty() && order.problems.empty()) return;
    book.begin_chapter("Order of assembly");
    const StepWording words(of.project, of.catalogue, of.resolved, order);
    const auto before = book.count();
    for (Index f = 0; f < of.project.frames.size(); ++f) {
        const auto numbers = steps_of(order, f);
        if (numbers.empty()) continue;
        PageFlow flow = book.flow();
        draw_frame_head(flow, of.project.frames[f].name);
        draw_directions(flow);
        if (book.count() == before) {
            draw_cautions(flow, of.resolved, {Work::riveting, Work::into_the_van});
            draw_problems(flow, order);
        }
        FrameSteps steps(flow, of, order, words);
        draw_steps(steps, numbers);
        book.begin_part(of.project.frames[f].name + ": steps");
        book.add(flow.pages());
    }
}

}  // namespace model
