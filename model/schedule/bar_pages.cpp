#include "model/schedule/bar_pages.h"

#include "engine/drawing/lettering.h"
#include "engine/measure/tape.h"
#include "model/schedule/balanced_rows.h"
#include "model/schedule/bar_block.h"
#include "model/schedule/cautions.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/told_text.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

using engine::LetterWeight;
using engine::Page;
using engine::TextAnchor;

constexpr double title_size = 6.0;  // mm
constexpr double text_size = 3.6;   // readable at arm's length on the bench
constexpr double ends_size = 3.2;
constexpr double stop_height = 8.0;  // a line of the stop's settings, with room for a thumb

void draw_head(PageFlow& flow, const BarPageWords& words) {
    flow.make_room(26.0);
    flow.text(words.title, {.size = title_size, .weight = LetterWeight::bold}, title_size + 2.0);
    flow.wrapped(words.verdict, text_size);
    const auto& caution = caution_of(Work::cutting);
    std::string further(caution.line);
    for (const auto sentence : caution.further) further += " " + std::string(sentence);
    flow.wrapped(further, 3.0);
    flow.wrapped(
        "Numbers above a bar: where a piece ends, from the bar's left end, end trim and kerfs "
        "counted.",
        3.0);
    flow.skip(3.0);
}

engine::Length longest_of(const std::vector<SawBar>& bars) {
    engine::Length longest;
    for (const auto& bar : bars) longest = std::max(longest, bar.length);
    return longest;
}

void draw_bars(PageFlow& flow,
               const Project& project,
               const Resolved& resolved,
               const std::vector<SawBar>& bars) {
    const BarScale scale{longest_of(bars), flow.width(),
                         engine::Length::from_nm(resolved.shop.least_offcut)};
    draw_balanced(flow, bars.size(), [&](std::size_t bar, bool) {
        const BarBlock block(project, bars[bar], scale);
        flow.make_room(block.height());
        block.draw(flow.page(), {flow.left(), flow.y()});
        flow.skip(block.height());
    });
}

// "2 x A3", "2 x A3 opp.": where both hands are cut alike, and all are of one.
std::string pieces_of(const Resolved& resolved, const StopRow& row) {
    const std::string mark = row.mark == no_index ? "" : resolved.marks[row.mark].name;
    return std::to_string(row.pieces) + " x " + mark + (row.opposite == row.pieces ? " opp." : "");
}

// "from bar 1, 1 of them opp."
std::string origin_of(const StopRow& row) {
    std::string words = "from bar " + std::to_string(row.bar);
    if (row.opposite > 0 && row.opposite < row.pieces)
        words += ", " + std::to_string(row.opposite) + " of them opp.";
    return words;
}

double height_of(const PageFlow& flow, const StopRow& row) {
    if (row.ends == "square") return stop_height;
    const auto lines = wrapped_lines(row.ends, ends_size, flow.width()).size();
    return stop_height + static_cast<double>(lines) * (ends_size + 1.2);
}

void draw_stop(PageFlow& flow, const Resolved& resolved, const StopRow& row) {
    const double y = flow.y() + stop_height - 2.5;
    auto& page = flow.page();
    page.draw_rectangle({flow.left(), y - 4.2, 4.5, 4.5});
    page.draw_text({flow.left() + 8.0, y}, pieces_of(resolved, row),
                   {.size = 4.5, .weight = LetterWeight::bold});
    page.draw_text({flow.left() + 44.0, y}, origin_of(row), {.size = 4.0});
    flow.skip(stop_height);
    if (row.ends != "square") flow.wrapped(row.ends, ends_size);
}

// What stands above the pieces of one setting: "~595 mm" in large letters, its exact millimetres
// where the tape does not have them, and which setting of which section it is.
class SettingHead {
public:
    SettingHead(const Project& project, const StopRow& row, bool goes_on, double width)
        : length_{length_on_paper(project, row.length) + (goes_on ? ", continued" : "")} {
        std::string words = "stop " + std::to_string(row.setting) + ", " + row.section;
        if (!engine::is_on_mark(row.length, project.shown) && !shows_hundredths(project.shown))
            words = told_mm(row.length) + " mm; " + words;
        after_ = std::max(42.0, engine::text_width(length_, large.size, large.weight) + 3.0);
        const bool is_beside = after_ + engine::text_width(words, text_size) <= width;
        (is_beside ? beside_ : below_) = std::move(words);
        if (!is_beside) lines_below_ = wrapped_lines(below_, text_size, width).size();
    }

    double height() const {
        return above + line + static_cast<double>(lines_below_) * (text_size + 1.2);
    }

    void draw(PageFlow& flow) const {
        flow.skip(above);
        flow.page().draw_text({flow.left() + after_, flow.y() + large.size}, beside_,
                              {.size = text_size});
        flow.text(length_, large, line);
        flow.wrapped(below_, text_size);
    }

private:
    static constexpr double above = 3.0;
    static constexpr double line = 8.0;
    static constexpr engine::Lettering large{.size = 6.0, .weight = LetterWeight::bold};

    std::string length_;
    std::string beside_;
    std::string below_;
    double after_ = 0.0;
    std::size_t lines_below_ = 0;
};

// A setting begins with its head, and has it again where it goes on in the next column.
void draw_rows(PageFlow& flow,
               const Project& project,
               const Resolved& resolved,
               const std::vector<StopRow>& stops) {
    draw_balanced(flow, stops.size(), [&](std::size_t at, bool is_top) {
        const auto& row = stops[at];
        const bool goes_on = at > 0 && row.setting == stops[at - 1].setting;
        const SettingHead head(project, row, goes_on, flow.width());
        const std::pair before{flow.pages().size(), flow.left()};
        flow.make_room(height_of(flow, row) + (goes_on ? 0.0 : head.height()));
        const bool is_moved = before != std::pair{flow.pages().size(), flow.left()};
        if (!goes_on || is_moved || is_top) head.draw(flow);
        draw_stop(flow, resolved, row);
    });
}

void draw_stops(PageFlow& flow,
                const Project& project,
                const Resolved& resolved,
                const std::vector<StopRow>& stops) {
    if (stops.empty()) return;
    flow.new_page();
    flow.text("Settings of the stop", {.size = title_size, .weight = LetterWeight::bold},
              title_size + 2.0);
    flow.wrapped(
        "Of each section the longest first, over all its bars: a piece cut wrong can still become "
        "a shorter one.",
        text_size);
    flow.use_columns(2);
    draw_rows(flow, project, resolved, stops);
}

}  // namespace

engine::Document bar_pages(const Project& project,
                           const Resolved& resolved,
                           const std::vector<SawBar>& bars,
                           const std::vector<StopRow>& stops,
                           const BarPageWords& words,
                           engine::Paper paper) {
    PageFlow flow(engine::paper_size(paper, engine::PaperTurn::landscape));
    draw_head(flow, words);
    draw_bars(flow, project, resolved, bars);
    engine::Document document{.title = words.title};
    document.bookmarks.push_back({.title = "Bars", .page = 0});
    const auto first_of_stops = flow.pages().size();
    draw_stops(flow, project, resolved, stops);
    if (flow.pages().size() > first_of_stops) {
        document.bookmarks.push_back({.title = "Settings of the stop", .page = first_of_stops});
    }
    document.pages = flow.pages();
    return document;
}

engine::Page bar_picture(const Project& project,
                         const Resolved& resolved,
                         const std::vector<SawBar>& bars,
                         const BarPageWords& words) {
    constexpr double width = 297.0;
    const auto drawn = [&](double height) {
        PageFlow flow({width, height});
        draw_head(flow, words);
        draw_bars(flow, project, resolved, bars);
        return flow;
    };
    // Once on a page that is high enough for anything, to know how high it must be.
    constexpr double very_high = 1e6;
    const double height = drawn(very_high).y() + PageFlow::margin;
    return drawn(height + PageFlow::margin).pages().front();
}

}  // namespace model
