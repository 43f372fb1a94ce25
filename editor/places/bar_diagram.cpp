#include "editor/places/bar_diagram.h"

#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

float pixels(engine::Length length, engine::Length longest, float width) {
    if (longest.nm() <= 0) return 0.0F;
    return width * static_cast<float>(length.mm() / longest.mm());
}

void hatch(ImDrawList& on, ImVec2 from, ImVec2 to) {
    on.PushClipRect(from, to, true);
    for (float x = from.x; x < to.x + (to.y - from.y); x += scaled(7)) {
        on.AddLine({x, from.y}, {x - (to.y - from.y), to.y}, colour::edge, 1);
    }
    on.PopClipRect();
}

}  // namespace

void draw_bar(ImDrawList& on,
              ImVec2 at,
              ImVec2 size,
              const Derived& derived,
              const BarRun& bar,
              engine::Length longest,
              const std::string& behind) {
    const float end = at.x + pixels(derived.bars[bar.first].bar_length, longest, size.x);
    on.AddRectFilled(at, {end, at.y + size.y}, colour::field);
    float x = at.x;
    for (std::size_t i = bar.first; i < bar.first + bar.count; ++i) {
        const auto& row = derived.bars[i];
        const float left = at.x + pixels(row.start, longest, size.x);
        x = left + pixels(row.length, longest, size.x);
        on.AddRectFilled({left, at.y}, {x, at.y + size.y}, colour::metal);
        on.AddRect({left, at.y}, {x, at.y + size.y}, colour::metal_edge);
        const auto& marks = derived.resolved.marks;
        const std::string mark = row.mark < marks.size() ? marks[row.mark].name : "";
        if (size_of_text(mark, Type::small).x + scaled(4) > x - left) continue;
        draw_text_at(on, {(left + x) / 2, at.y + size.y / 2 - scaled(7.5F)}, mark, Type::small,
                     colour::ink, Align::middle);
    }
    hatch(on, {x, at.y}, {end, at.y + size.y});
    on.AddRect(at, {end, at.y + size.y}, colour::edge);
    draw_text_at(on, {end + scaled(8), at.y + size.y / 2 - scaled(7.5F)},
                 bar_text(derived.bars[bar.first].bar_length, derived.project->shown) + behind,
                 Type::small, colour::quiet);
}

void draw_saw_bar(ImDrawList& on, ImVec2 at, ImVec2 size, const model::SawBar& bar) {
    const float end = at.x + size.x;
    on.AddRectFilled(at, {end, at.y + size.y}, colour::field);
    float x = at.x;
    for (const auto& cut : bar.cuts) {
        const float left = at.x + pixels(cut.start, bar.length, size.x);
        x = left + pixels(cut.taken, bar.length, size.x);
        const ImVec2 from{left, at.y};
        const ImVec2 to{x, at.y + size.y};
        const bool is_made = cut.state == model::CutState::cut;
        on.AddRectFilled(from, to, is_made ? colour::dye_wash : colour::metal);
        on.AddRect(from, to, is_made ? colour::dye : colour::metal_edge);
        if (cut.state == model::CutState::spoiled) {
            on.AddLine(from, to, colour::red);
            on.AddLine({from.x, to.y}, {to.x, from.y}, colour::red);
        }
        if (size_of_text(cut.mark, Type::small).x + scaled(4) > x - left) continue;
        draw_text_at(on, {(left + x) / 2, at.y + size.y / 2 - scaled(7.5F)}, cut.mark, Type::small,
                     colour::ink, Align::middle);
    }
    hatch(on, {x, at.y}, {end, at.y + size.y});
    on.AddRect(at, {end, at.y + size.y}, colour::edge);
}

}  // namespace editor
