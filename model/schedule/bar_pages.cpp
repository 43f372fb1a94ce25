#include "model/schedule/bar_pages.h"

#include "model/schedule/bar_block.h"
#include "model/schedule/cautions.h"
#include "model/schedule/page_flow.h"

#include <algorithm>

namespace model {
namespace {

using engine::LetterWeight;
using engine::Page;
using engine::TextAnchor;

constexpr double title_size = 6.0;   // mm
constexpr double text_size = 3.6;    // readable at arm's length on the bench
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
    for (const auto& bar : bars) {
        const BarBlock block(project, bar, scale);
        flow.make_room(block.height());
        block.draw(flow.page(), {flow.left(), flow.y()});
        flow.skip(block.height());
    }
}

void draw_stop(PageFlow& flow, const Resolved& resolved, const StopRow& row) {
    const double y = flow.y() + stop_height - 2.5;
    auto& page = flow.page();
    page.draw_rectangle({flow.left(), y - 4.2, 4.5, 4.5});
    const std::string mark = row.mark == no_index ? "" : resolved.marks[row.mark].name;
    const std::string hand = row.hand == Hand::opposite ? " opp." : "";
    page.draw_text({flow.left() + 8.0, y}, std::to_string(row.pieces) + " x " + mark + hand,
                   {.size = 4.5, .weight = LetterWeight::bold});
    page.draw_text({flow.left() + 44.0, y}, "from bar " + std::to_string(row.bar), {.size = 4.0});
    flow.skip(stop_height);
    if (row.ends != "square") flow.wrapped(row.ends, 3.2);
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
    int setting = 0;
    for (const auto& row : stops) {
        if (row.setting != setting) {
            flow.make_room(2 * stop_height + 4.0);
            flow.skip(3.0);
            flow.text(length_on_paper(project, row.length),
                      {.size = 6.0, .weight = LetterWeight::bold}, 0.0);
            flow.page().draw_text({flow.left() + 42.0, flow.y() + 6.0},
                                  "stop " + std::to_string(row.setting) + ", " + row.section,
                                  {.size = text_size});
            flow.skip(8.0);
            setting = row.setting;
        }
        flow.make_room(stop_height);
        draw_stop(flow, resolved, row);
    }
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
