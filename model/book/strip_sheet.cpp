#include "model/book/strip_sheet.h"

#include "engine/drawing/lettering.h"
#include "engine/measure/tape.h"
#include "model/book/fitted_text.h"
#include "model/book/letter_sizes.h"
#include "model/book/name_on_paper.h"
#include "model/schedule/wrapped_lines.h"

#include <array>
#include <cstdio>

namespace model {
namespace {

using engine::LetterWeight;

constexpr double head_title = 3.6;
constexpr double head_line_height = 3.9;
constexpr std::size_t most_held_lines = 2;  // of what it holds

std::string percent(double scale) {
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "%.2f", 100.0 / scale);
    return text.data();
}

std::string correction_words(const Project& project, const PrinterScale& printer) {
    if (printer == PrinterScale{}) {
        auto style = project.shown;
        style.with_unit = true;
        return "Measure both rulers of " + engine::exact_text(measured_ruler(project), style) +
               " with what you cut by. Where they are off, write the strips anew with what "
               "they measure.";
    }
    return "Corrected for a printer: across " + percent(printer.across) + " %, down " +
           percent(printer.down) + " %. The rulers now measure what they say.";
}

class SheetHead {
public:
    SheetHead(engine::Page& page,
              const Project& project,
              const StripWish& wish,
              const StripSheet& sheet)
        : page_{page},
          project_{project},
          wish_{wish},
          sheet_{sheet},
          room_{page.size().width - 2 * strip_margin} {}

    void draw() {
        page_.draw_text({strip_margin, y_}, "Print at 100 %",
                        {.size = 4.6, .weight = LetterWeight::bold});
        const std::string title = "Drill strips: " + name_on_paper(project_) + ", sheet " +
                                  std::to_string(sheet_.number) + " of " +
                                  std::to_string(sheet_.of);
        page_.draw_text(
            {strip_margin + 36.0, y_}, title,
            {.size = size_to_fit(title, head_title, room_ - 36.0, LetterWeight::regular, 0.5)});
        y_ += 0.3;
        write(correction_words(project_, wish_.printer));
        write(
            "Cut out, fold at the chain line over the heel, print outward; lay the edge (under a "
            "tab: heavy line) where it says; punch crosses, not where match-drilled.");
        write_what_it_holds();
        if (wish_.has_errors)
            write("NOT FIT TO CUT FROM: mend what is wrong in the program and print anew.",
                  LetterWeight::bold);
    }

private:
    void write(std::string_view words, LetterWeight weight = LetterWeight::regular) {
        y_ += head_line_height;
        page_.draw_text(
            {strip_margin, y_}, words,
            {.size = size_to_fit(words, strip_letters, room_, weight), .weight = weight});
    }

    // In letters as small as they must be; what still has no room is told by an ellipsis.
    void write_what_it_holds() {
        std::string words = "On this sheet: " + sheet_.holds + ".";
        for (const auto& mark : sheet_.refused) words += " No strip: " + mark + ", too large.";
        double size = strip_letters;
        auto lines = wrapped_lines(words, size, room_, LetterWeight::bold);
        while (lines.size() > most_held_lines && size > 1.6) {
            size -= 0.2;
            lines = wrapped_lines(words, size, room_, LetterWeight::bold);
        }
        if (lines.size() > most_held_lines) {
            lines.resize(most_held_lines);
            lines.back() = shortened(lines.back() + " ...", size, room_, LetterWeight::bold);
        }
        for (const auto& line : lines) {
            y_ += head_line_height;
            page_.draw_text({strip_margin, y_}, line, {.size = size, .weight = LetterWeight::bold});
        }
    }

    engine::Page& page_;
    const Project& project_;
    const StripWish& wish_;
    const StripSheet& sheet_;
    double room_;
    double y_ = strip_margin + 4.0;
};

}  // namespace

StripField strip_field(engine::PaperSize paper) {
    const double left = strip_margin + ruler_room + strip_gap;
    const double top = strip_margin + strip_sheet_head;
    return {left,
            top,
            {paper.width - strip_margin - left,
             paper.height - strip_margin - ruler_room - strip_gap - top}};
}

engine::Page strip_sheet(const Project& project, const StripWish& wish, const StripSheet& sheet) {
    engine::Page page(engine::paper_size(wish.paper));
    SheetHead(page, project, wish, sheet).draw();
    draw_rulers(page, wish.printer);
    page.draw_text({page.size().width - strip_margin, page.size().height - strip_margin - 1.0},
                   "stamp " + sheet.stamp,
                   {.size = small_letters, .anchor = engine::TextAnchor::end});
    return page;
}

}  // namespace model
