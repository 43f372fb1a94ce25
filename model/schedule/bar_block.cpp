#include "model/schedule/bar_block.h"

#include "engine/drawing/lettering.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace model {
namespace {

using engine::Ink;
using engine::Length;
using engine::LetterWeight;
using engine::PagePoint;
using engine::TextAnchor;

// mm from the top of a block.
constexpr double words_base = 4.5;
constexpr double positions_base = 9.0;
constexpr double bar_top = 10.0;
constexpr double bar_height = 7.0;
constexpr double ticks_top = 19.0;
constexpr double tick_line = 6.5;
constexpr double behind = 5.0;  // between two blocks
constexpr double tick_size = 3.8;
constexpr double box_size = 4.0;
constexpr double small_size = 2.9;

}  // namespace

BarBlock::BarBlock(const Project& project, const SawBar& bar, const BarScale& scale)
    : project_{project}, bar_{bar}, scale_{scale} {
    lay_ticks();
}

std::string BarBlock::where_from() const {
    return with_half(from_words(bar_.from), bar_.halved_from, project_.shown);
}

double BarBlock::height() const { return ticks_top + lines_ * tick_line + behind; }

void BarBlock::draw(engine::Page& page, PagePoint at) const {
    draw_words(page, at);
    draw_bar(page, at);
    draw_positions(page, at);
    draw_ticks(page, at);
}

double BarBlock::mm_of(Length length) const {
    if (scale_.longest.nm() <= 0) return 0.0;
    return scale_.width * (length.mm() / scale_.longest.mm());
}

// One behind the other, on as many lines as they need.
void BarBlock::lay_ticks() {
    double x = 0.0;
    lines_ = 1;
    for (const auto& cut : bar_.cuts) {
        Tick tick{.is_made = cut.state == CutState::cut,
                  .has_box = cut.state != CutState::spoiled,
                  .text = cut.mark + (cut.hand == Hand::opposite ? " opp." : "") + "  " +
                          length_text(project_, cut.length) +
                          (cut.state == CutState::spoiled ? " spoiled" : "")};
        const double width =
            box_size + 1.5 + engine::text_width(tick.text, tick_size, LetterWeight::bold) + 7.0;
        if (x > 0.0 && x + width > scale_.width) {
            x = 0.0;
            ++lines_;
        }
        tick.x = x;
        tick.line = lines_ - 1;
        x += width;
        ticks_.push_back(std::move(tick));
    }
}

void BarBlock::draw_words(engine::Page& page, PagePoint at) const {
    const std::string head =
        "Bar " + std::to_string(bar_.number) + "   " + bar_length_text(bar_.length, project_.shown);
    page.draw_text({at.x, at.y + words_base}, head, {.size = 4.6, .weight = LetterWeight::bold});
    const double behind_head = engine::text_width(head, 4.6, LetterWeight::bold) + 5.0;
    page.draw_text({at.x + behind_head, at.y + words_base}, bar_.section + ", " + where_from(),
                   {.size = 3.8});
}

void BarBlock::draw_bar(engine::Page& page, PagePoint at) const {
    const double top = at.y + bar_top;
    double rest = at.x;
    for (const auto& cut : bar_.cuts) {
        const double left = at.x + mm_of(cut.start);
        const double width = mm_of(cut.taken);
        const engine::PageBox box{left, top, width, bar_height};
        page.draw_rectangle(box, {.pen = engine::Pen{.width = engine::wide_width / 2},
                                  .fill = cut.state == CutState::cut ? Ink::grey_25 : Ink::white});
        if (cut.state == CutState::spoiled) {
            page.draw_line({left, top}, {left + width, top + bar_height});
            page.draw_line({left, top + bar_height}, {left + width, top});
        }
        if (engine::text_width(cut.mark, 4.0, LetterWeight::bold) + 1.0 < width) {
            page.draw_text(
                {left + width / 2, top + bar_height - 2.1}, cut.mark,
                {.size = 4.0, .weight = LetterWeight::bold, .anchor = TextAnchor::middle});
        }
        rest = left + width;
    }
    const double end = at.x + mm_of(bar_.length);
    const bool has_rest = bar_.offcut > Length{} && end > rest;
    const double from = has_rest ? end - mm_of(bar_.offcut) : end;
    if (has_rest) {
        page.draw_hatch(engine::PageBox{from, top, end - from, bar_height});
        const std::string words = length_text(project_, bar_.offcut) +
                                  (bar_.offcut >= scale_.least_offcut ? " offcut, keep" : " scrap");
        if (engine::text_width(words, small_size) + 3.0 < end - from) {
            page.draw_text({(from + end) / 2, top + bar_height - 2.5}, words,
                           {.size = small_size, .anchor = TextAnchor::middle, .has_ground = true});
        }
    }
    page.draw_rectangle({at.x, top, end - at.x, bar_height},
                        {.pen = engine::Pen{.width = engine::wide_width}, .fill = std::nullopt});
}

// Where each piece ends, from the bar's datum end, as far as the numbers have room.
void BarBlock::draw_positions(engine::Page& page, PagePoint at) const {
    double free_from = at.x;
    for (const auto& cut : bar_.cuts) {
        const double x = at.x + mm_of(end_of(cut));
        page.draw_line({x, at.y + bar_top - 1.0}, {x, at.y + bar_top},
                       {.width = engine::thin_width});
        const std::string words = length_text(project_, end_of(cut));
        const double width = engine::text_width(words, small_size);
        if (x - width < free_from) continue;
        page.draw_text({x, at.y + positions_base - 0.4}, words,
                       {.size = small_size, .anchor = TextAnchor::end});
        free_from = x + 1.5;
    }
}

void BarBlock::draw_ticks(engine::Page& page, PagePoint at) const {
    for (const auto& tick : ticks_) {
        const double x = at.x + tick.x;
        const double base = at.y + ticks_top + (tick.line + 1) * tick_line - 2.0;
        const engine::PageBox box{x, base - box_size + 0.4, box_size, box_size};
        if (tick.has_box) page.draw_rectangle(box);
        if (tick.is_made) {
            page.draw_polyline(
                {{x + 0.7, base - 1.6}, {x + 1.6, base - 0.4}, {x + 3.5, base - 3.2}},
                {.width = 0.6});
        }
        page.draw_text({x + box_size + 1.5, base}, tick.text,
                       {.size = tick_size, .weight = LetterWeight::bold});
    }
}

}  // namespace model
