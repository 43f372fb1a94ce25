#include "model/book/cover.h"

#include "model/book/line_drawing.h"
#include "model/book/works_in.h"
#include "model/schedule/tally.h"
#include "model/schedule/weight.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>

namespace model {
namespace {

using engine::LetterWeight;

constexpr double cover_height = 122.0;  // mm, on A4 and Letter
constexpr double below_picture = 5.0;
constexpr double least_picture = 0.5;  // of its usual height, from trying
constexpr std::size_t most_errors = 4;

// Frames are drawn from the corner before them where all stand the same way round, else from the
// room's.
Sight sight_of(const Resolved& resolved) {
    Sight sight = corner_sight();
    if (resolved.frames.empty()) return sight;
    const int turns = resolved.frames.front().quarter_turns & 3;
    const bool are_alike = std::ranges::all_of(resolved.frames, [&](const ResolvedFrame& frame) {
        return (frame.quarter_turns & 3) == turns;
    });
    for (int i = 0; are_alike && i < turns; ++i) {
        for (auto* direction : {&sight.right, &sight.up, &sight.towards})
            *direction = {-(*direction)[1], (*direction)[0], (*direction)[2]};
    }
    return sight;
}

// `room`: what is left for it on the page, mm. Where that would make it too small the words go on
// with the next page.
void draw_picture(PageFlow& flow, const Resolved& resolved, double room) {
    std::vector<BodyOfPiece> bodies;
    for (Index f = 0; f < resolved.frames.size(); ++f) {
        const auto place = frame_placement(resolved.frames[f]);
        for (const auto& it : frame_bodies(resolved, f))
            bodies.push_back({it.piece, engine::moved(it.body, place)});
    }
    if (bodies.empty()) {
        draw_words(flow, "There is no piece to draw yet.");
        return;
    }
    const auto seen = seen_bodies(bodies, sight_of(resolved));
    const double share = flow.page().size().height / 297.0;
    const double usual = cover_height * share;
    const double height = room < least_picture * usual ? usual : std::min(room, usual);
    draw_seen(flow.page(), seen,
              fitted(bounds_of(seen), {flow.left(), flow.y(), flow.width(), height}));
    flow.skip(height + below_picture);
}

struct Total {
    std::string what;
    std::string value;
};

std::string bars_words(const Project& project, const std::vector<BarPlan>& plans) {
    int bought = 0;
    int others = 0;
    Nm length = 0;
    for (const auto& plan : plans) {
        for (const auto& bar : plan.bars) {
            if (bar.cuts.empty()) continue;
            ++(bar.from == BarFrom::shop ? bought : others);
            length += bar.length;
        }
    }
    std::string words = std::to_string(bought + others);
    if (others > 0) words += ", of which " + std::to_string(bought) + " to buy";
    return words + "; together " + length_on_paper(project, Length::from_nm(length));
}

std::string pieces_length(const Project& project, const Resolved& resolved) {
    Nm length = 0;
    for (const auto& piece : resolved.pieces)
        if (!is_of_sheet(piece.kind)) length += piece.length;
    return length_on_paper(project, Length::from_nm(length));
}

std::vector<Total> totals_of(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const BookSupply& supply) {
    const auto tally =
        tally_of(project, catalogue, resolved, piece_weights_kg(project, catalogue, resolved));
    const auto& shown = project.shown;
    std::vector<Total> totals{
        {"Pieces", std::to_string(piece_count(tally)) + ", with " +
                       std::to_string(resolved.marks.size()) + " marks"},
        {"Bars to cut from", bars_words(project, supply.plans)},
        {"Length of all pieces of bar", pieces_length(project, resolved)},
        {"Holes", std::to_string(tally.holes)},
        {"Fasteners", std::to_string(fastener_count(tally))},
        {"Weight of what is built, without fasteners",
         weight_text(supply.estimate.built_kg, shown)},
        {"Weight of what is " + std::string(bought_word(supply.estimate)) + ", without fasteners",
         weight_text(supply.estimate.bought_kg, shown)},
        {supply.estimate.paid.empty() ? "Price" : "Still to pay",
         supply.estimate.lines.empty()
             ? std::string(supply.estimate.paid.empty() ? "nothing to buy" : "nothing")
             : total_in_words(supply.estimate)}};
    if (!supply.estimate.paid.empty())
        totals.push_back({"Paid so far", sum_in_words(supply.estimate.paid)});
    return totals;
}

void draw_totals(PageFlow& flow, const std::vector<Total>& totals) {
    constexpr double size = 3.6;
    double column = 0.0;
    for (const auto& total : totals)
        column = std::max(column, engine::text_width(total.what, size) + 6.0);
    for (const auto& total : totals) {
        const auto lines =
            wrapped_lines(total.value, size, flow.width() - column, LetterWeight::bold);
        flow.make_room(static_cast<double>(lines.size()) * 4.9);
        flow.text(total.what, {.size = size}, 0.0);
        for (const auto& line : lines) {
            flow.page().draw_text({flow.left() + column, flow.y() + size}, line,
                                  {.size = size, .weight = LetterWeight::bold});
            flow.skip(4.9);
        }
    }
}

void draw_findings(PageFlow& flow, const std::vector<Finding>& findings) {
    const auto errors =
        static_cast<std::size_t>(std::ranges::count(findings, Severity::error, &Finding::severity));
    const auto warnings = std::ranges::count(findings, Severity::warning, &Finding::severity);
    if (errors > 0) {
        draw_words(flow,
                   "NOT FIT TO CUT FROM: " + std::to_string(errors) +
                       (errors == 1 ? " thing is wrong." : " things are wrong.") +
                       " Mend these in the program and print the book anew.",
                   4.4, LetterWeight::bold);
        std::size_t told = 0;
        for (const auto& it : findings) {
            if (it.severity != Severity::error || told == most_errors) continue;
            ++told;
            draw_words(flow, where_text(it) + ": " + it.what, 3.3);
        }
        if (errors > told) draw_words(flow, "and " + std::to_string(errors - told) + " more", 3.3);
        flow.skip(2.0);
    }
    if (warnings > 0) {
        draw_words(flow, std::to_string(warnings) + (warnings == 1 ? " warning" : " warnings") +
                             ": read them in the program before you cut.");
        flow.skip(2.0);
    }
}

// A line of each kind of work that there is.
void draw_reminders(PageFlow& flow, const Resolved& resolved) {
    for (const Work work : all_works) {
        if (!has_work(resolved, work)) continue;
        draw_words(flow, "Before " + std::string(name_of(work)) + ": " +
                             std::string(caution_of(work).line));
    }
}

// All that stands below the picture.
void draw_told(PageFlow& flow,
               const Resolved& resolved,
               const BookSupply& supply,
               const std::vector<Total>& totals) {
    draw_findings(flow, supply.findings);
    draw_totals(flow, totals);
    flow.skip(4.0);
    draw_words(flow, strength_note, 3.6, LetterWeight::bold);
    flow.skip(2.0);
    draw_words(flow,
               "The chapter of each kind of work begins with its cautions. The instructions of the "
               "makers of your tools, of the van and of what you fit into it go before all that "
               "stands here, and so do local codes; gas, mains wiring, high voltage, seats and "
               "belts are for those who are licensed for them.");
    flow.skip(2.0);
    draw_reminders(flow, resolved);
}

}  // namespace

void add_cover(BookPages& book,
               const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               const BookSupply& supply) {
    PageFlow flow = book.flow();
    const std::string name = project.name.empty() ? "A project without a name" : project.name;
    draw_words(flow, shortened(name, 10.0, 1.9 * flow.width(), LetterWeight::bold), 10.0,
               LetterWeight::bold);
    draw_words(flow,
               "Shop book. Every page carries a stamp at its foot: it changes when the "
               "project does.");
    flow.skip(4.0);
    const auto totals = totals_of(project, catalogue, resolved, supply);
    PageFlow words = flow.blank();
    draw_told(words, resolved, supply, totals);
    const double below = words.pages().size() > 1 ? flow.room() : words.y() - flow.y();
    draw_picture(flow, resolved, flow.room() - below - below_picture);
    draw_told(flow, resolved, supply, totals);
    book.begin_chapter("Cover");
    book.add(flow.pages());
}

}  // namespace model
