#include "model/buying/sheet_pages.h"

#include "engine/drawing/lettering.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;
using engine::LetterWeight;
using engine::Nm;
using engine::TextAnchor;

constexpr double title_size = 5.5;  // mm
constexpr double text_size = 3.6;
constexpr double head_height = 30.0;

double mm_of(Nm length) { return Length::from_nm(length).mm(); }

// A sheet as it lies on the page: its long side along the page's.
struct Scale {
    double factor = 1.0;
    bool is_turned = false;

    engine::PageBox box(const PageFlow& flow, std::array<Nm, 2> at, std::array<Nm, 2> size) const {
        const auto across = is_turned ? 1U : 0U;
        const auto down = 1U - across;
        return {flow.left() + mm_of(at[across]) * factor, flow.y() + mm_of(at[down]) * factor,
                mm_of(size[across]) * factor, mm_of(size[down]) * factor};
    }
};

Scale scale_of(const LaidSheet& sheet, double width, double height) {
    Scale scale;
    scale.is_turned = (sheet.size[0] > sheet.size[1]) != (width > height);
    const double across = mm_of(sheet.size[scale.is_turned ? 1 : 0]);
    const double down = mm_of(sheet.size[scale.is_turned ? 0 : 1]);
    if (across > 0.0 && down > 0.0) scale.factor = std::min(width / across, height / down);
    return scale;
}

std::string mark_of(const Resolved& resolved, const SheetRow& row) {
    return row.mark == no_index ? row.part : resolved.marks[row.mark].name;
}

void draw_part(engine::Page& page,
               const engine::PageBox& box,
               const std::string& mark,
               const std::string& size) {
    page.draw_rectangle(
        box, {.pen = engine::Pen{.width = engine::wide_width}, .fill = engine::Ink::white});
    const double x = box.left + box.width / 2;
    const double y = box.top + box.height / 2;
    const bool has_room = box.height > 12.0 && engine::text_width(size, text_size) < box.width;
    if (box.height < 5.0 || engine::text_width(mark, 4.5, LetterWeight::bold) > box.width) return;
    page.draw_text({x, has_room ? y - 0.5 : y + 1.6}, mark,
                   {.size = 4.5, .weight = LetterWeight::bold, .anchor = TextAnchor::middle});
    if (!has_room) return;
    page.draw_text({x, y + 4.5}, size, {.size = text_size, .anchor = TextAnchor::middle});
}

}  // namespace

void add_sheet_pages(engine::Document& document,
                     const Project& project,
                     const Resolved& resolved,
                     const std::vector<SheetPlan>& plans,
                     const std::vector<SheetRow>& rows,
                     engine::Paper paper) {
    const auto size = engine::paper_size(paper, engine::PaperTurn::landscape);
    const auto first = document.pages.size();
    for (const auto& plan : plans) {
        for (std::size_t i = 0; i < plan.sheets.size(); ++i) {
            const auto& sheet = plan.sheets[i];
            PageFlow flow(size);
            const std::string name = "Sheet " + std::to_string(i + 1) + " of " +
                                     std::to_string(plan.sheets.size()) + ": " + plan.material +
                                     ", " + length_on_paper(project, plan.thickness);
            flow.text(name, {.size = title_size, .weight = LetterWeight::bold}, title_size + 2.0);
            flow.text(length_text(project, Length::from_nm(sheet.size[0])) + " x " +
                          length_text(project, Length::from_nm(sheet.size[1])) +
                          (plan.is_size_assumed && !sheet.is_paid ? ", a size that was assumed"
                                                                  : ", usable") +
                          (sheet.is_paid ? ", paid for already" : "") +
                          (sheet.has_grain ? "; the grain runs along the second" : ""),
                      {.size = text_size}, text_size + 1.5);
            flow.text(
                "Laid out so that cuts from edge to edge part it; not proven to need the "
                "fewest sheets.",
                {.size = text_size}, text_size + 3.0);
            const Scale scale =
                scale_of(sheet, flow.width(), size.height - head_height - 2 * PageFlow::margin);
            const auto whole = scale.box(flow, {0, 0}, sheet.size);
            flow.page().draw_hatch(whole);
            flow.page().draw_rectangle(
                whole, {.pen = engine::Pen{.width = engine::wide_width}, .fill = std::nullopt});
            for (const auto& part : sheet.parts) {
                const auto& row = rows[part.row];
                draw_part(
                    flow.page(), scale.box(flow, part.at, part.size), mark_of(resolved, row),
                    length_text(project, row.width) + " x " + length_text(project, row.length));
            }
            document.pages.push_back(flow.page());
        }
    }
    if (document.pages.size() > first) {
        document.bookmarks.push_back({.title = "Sheets", .page = first});
    }
}

}  // namespace model
