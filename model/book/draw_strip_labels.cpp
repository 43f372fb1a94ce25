#include "model/book/draw_strip_labels.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

using engine::Page;
using engine::PagePoint;

constexpr double clear_of_fold = 0.3;  // of the size of letters: what hangs below their line
constexpr engine::Pen arrow_pen{.width = engine::narrow_width};

// From its tail to its head, which lies above or below.
void draw_arrow(Page& page, PagePoint tail, PagePoint head) {
    const double back = head.y < tail.y ? 1.6 : -1.6;
    page.draw_line(tail, head, arrow_pen);
    page.draw_polyline({{head.x - 0.9, head.y + back}, head, {head.x + 0.9, head.y + back}},
                       arrow_pen);
}

double indent_of(const StripLabel& label) {
    return label.arrow == LabelArrow::none ? 0.0 : label_arrow_room;
}

void draw_level(Page& page, PagePoint at, const StripLabel& label) {
    const double indent = indent_of(label);
    double base = at.y + engine::capital_height(label.size, label.weight);
    for (const auto& line : label.lines) {
        page.draw_text({at.x + indent, base}, line, {.size = label.size, .weight = label.weight});
        base += label_pitch * label.size;
    }
    if (label.arrow == LabelArrow::none) return;
    PagePoint head{at.x + 1.0, at.y};
    PagePoint tail{at.x + 1.0, at.y + label.box.height};
    if (label.arrow == LabelArrow::down) std::swap(head, tail);
    draw_arrow(page, tail, head);
}

void draw_turned(Page& page, PagePoint at, const StripLabel& label) {
    double base = at.x + engine::capital_height(label.size, label.weight);
    for (const auto& line : label.lines) {
        page.draw_text({base, at.y + label.box.height}, line,
                       {.size = label.size, .weight = label.weight, .turned_deg = 90.0});
        base += label_pitch * label.size;
    }
    if (label.arrow == LabelArrow::none) return;
    const double middle = at.x + label.box.width / 2;
    draw_arrow(page, {middle, at.y + label_arrow}, {middle, at.y});
}

}  // namespace

std::vector<std::array<double, 2>> words_across(const StripLabels& labels, double fold) {
    std::vector<std::array<double, 2>> stretches;
    for (const auto& label : labels.labels) {
        if (label.is_turned || label.box.top < 0.0) continue;  // the fold ends below a tab
        const double left = label.box.left + indent_of(label);
        double top = label.box.top;
        for (const auto& line : label.lines) {
            const double right = left + engine::text_width(line, label.size, label.weight);
            const double height = engine::capital_height(label.size, label.weight);
            if (left < fold && fold < right) {
                stretches.push_back(
                    {top - clear_of_fold * label.size, top + height + clear_of_fold * label.size});
            }
            top += label_pitch * label.size;
        }
    }
    std::ranges::sort(stretches);
    return stretches;
}

void draw_strip_labels(Page& page, PagePoint at, const StripLabels& labels) {
    for (const auto& number : labels.numbers) {
        page.draw_text({at.x + number.at.x, at.y + number.at.y}, number.words,
                       {.size = number.size});
        if (!number.lead) continue;
        const auto& [from, to] = *number.lead;
        page.draw_line({at.x + from.x, at.y + from.y}, {at.x + to.x, at.y + to.y},
                       {.width = engine::hair_width});
    }
    for (const auto& label : labels.labels) {
        const PagePoint corner{at.x + label.box.left, at.y + label.box.top};
        if (label.is_turned) {
            draw_turned(page, corner, label);
        } else {
            draw_level(page, corner, label);
        }
    }
}

}  // namespace model
