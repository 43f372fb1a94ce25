#include "model/book/assembly_pages.h"

#include "model/assembly/step_words.h"
#include "model/book/leader_labels.h"
#include "model/book/line_drawing.h"
#include "model/book/view_pages.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <map>

namespace model {
namespace {

using engine::LetterWeight;

constexpr double size = 3.5;  // mm
constexpr double line = size * 1.28;
constexpr double picture_width = 92.0;
constexpr double picture_height = 74.0;
constexpr double behind = 5.0;  // a step

class FrameSteps {
public:
    FrameSteps(PageFlow& flow, const BookOf& of, const AssemblyOrder& order)
        : flow_{flow}, of_{of}, order_{order} {}

    void draw(Index step_index, const AssemblyStep& step) {
        auto& stands = standing_[step.assembly];
        std::vector<bool> is_new(of_.resolved.pieces.size(), false);
        for (const auto& move : step.moves) {
            for (const Index piece : move.pieces) {
                stands.push_back(piece);
                is_new[piece] = true;
            }
        }
        const std::string title = step_title(order_, step_index);
        const double width = flow_.width() - picture_width - 6.0;
        const auto lines = step_words(of_.project, of_.catalogue, of_.resolved, order_, step_index);
        std::vector<std::vector<std::string>> broken;
        double height = 6.5;
        for (const auto& it : lines) {
            const bool is_signed = it.work == StepWork::measure;
            broken.push_back(
                wrapped_lines(it.text + (is_signed ? ".  One:_________  other:_________" : ""),
                              size, width - 7.0));
            height += static_cast<double>(broken.back().size()) * line + 1.5;
        }
        const double most =
            flow_.page().size().height - 2 * PageFlow::margin - PageFlow::foot - 1.0;
        flow_.make_room(std::min(most, std::max(height, picture_height + 4.0) + behind));
        const double top = flow_.y();
        const auto first_page = flow_.pages().size();
        draw_picture(stands, is_new);
        flow_.text(title, {.size = 4.2, .weight = LetterWeight::bold}, 6.5);
        for (const auto& it : broken) draw_line(it);
        if (flow_.pages().size() == first_page && flow_.y() < top + picture_height + 4.0)
            flow_.skip(top + picture_height + 4.0 - flow_.y());
        flow_.page().draw_line({flow_.left(), flow_.y()}, {flow_.left() + flow_.width(), flow_.y()},
                               {.width = engine::hair_width, .ink = engine::Ink::grey_50});
        flow_.skip(behind);
    }

private:
    void draw_line(const std::vector<std::string>& lines) {
        flow_.make_room(static_cast<double>(lines.size()) * line + 1.5);
        flow_.page().draw_rectangle({flow_.left(), flow_.y() + 0.2, 4.0, 4.0});
        for (const auto& it : lines) {
            flow_.page().draw_text({flow_.left() + 7.0, flow_.y() + size}, it, {.size = size});
            flow_.skip(line);
        }
        flow_.skip(1.5);
    }

    void draw_picture(const std::vector<Index>& stands, const std::vector<bool>& is_new) {
        std::vector<BodyOfPiece> bodies;
        for (const Index piece : stands) append_piece_bodies(bodies, of_.resolved, piece);
        if (bodies.empty()) return;
        const auto seen = seen_bodies(bodies, corner_sight());
        std::vector<LeaderLabel> labels;
        for (const Index piece : stands) {
            if (is_new[piece])
                labels.push_back({{}, mark_on_drawing(of_.resolved, of_.resolved.pieces[piece])});
        }
        const double beside = leader_room_beside(labels);
        labels.clear();
        const engine::PageBox inner{flow_.left() + flow_.width() - picture_width + beside,
                                    flow_.y() + 3.0, picture_width - 2 * beside,
                                    picture_height - 6.0};
        const auto bounds = bounds_of(seen);
        const auto place = fitted(bounds, inner);
        draw_seen(flow_.page(), seen, place, is_new);
        for (const Index piece : stands) {
            if (!is_new[piece]) continue;
            const auto text = mark_on_drawing(of_.resolved, of_.resolved.pieces[piece]);
            std::vector<engine::PagePoint> to;
            for (const auto& at : places_to_point_at(seen, piece)) to.push_back(place(at));
            if (!to.empty() && !text.empty()) labels.push_back({std::move(to), text});
        }
        draw_leader_labels(flow_.page(), labels, inner,
                           {.left = true, .right = true, .top = false});
    }

    PageFlow& flow_;
    const BookOf& of_;
    const AssemblyOrder& order_;
    std::map<Index, std::vector<Index>> standing_;  // by assembly of the frame
};

void draw_problems(PageFlow& flow, const AssemblyOrder& order) {
    for (const auto& problem : order.problems) {
        draw_words(flow,
                   where_text(problem) + ": " + problem.what + ". Mend: " + problem.mend + ".",
                   size, LetterWeight::bold);
        flow.skip(2.0);
    }
}

}  // namespace

void add_assembly(BookPages& book, const BookOf& of, const AssemblyOrder& order) {
    if (order.steps.empty() && order.problems.empty()) return;
    book.begin_chapter("Order of assembly");
    const auto before = book.count();
    for (Index f = 0; f < of.project.frames.size(); ++f) {
        PageFlow flow = book.flow();
        draw_page_head(flow, of.project.frames[f].name + ": order of assembly",
                       "What is new in a step is drawn bold. Work down its boxes: put on, pin, "
                       "measure, set; tick each when it is done.");
        if (book.count() == before) {
            draw_caution(flow, Work::riveting);
            draw_problems(flow, order);
        }
        FrameSteps steps(flow, of, order);
        int number = 0;
        for (Index i = 0; i < order.steps.size(); ++i) {
            if (order.steps[i].frame != f) continue;
            steps.draw(i, order.steps[i]);
            ++number;
        }
        if (number == 0) continue;
        book.begin_part(of.project.frames[f].name + ": steps");
        book.add(flow.pages());
    }
}

}  // namespace model
