#include "model/book/corner_pages.h"

#include "model/book/corner_kinds.h"
#include "model/book/corner_section.h"
#include "model/schedule/wrapped_lines.h"

namespace model {
namespace {

using engine::LetterWeight;

constexpr double picture_height = 72.0;  // mm
constexpr double words_size = 3.3;
constexpr double line = words_size * 1.28;

std::vector<std::string> lines_of(const CornerKind& kind, const std::string& scale, double width) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < kind.words.size(); ++i) {
        const auto words = i == 0 ? kind.words[i] + "; scale " + scale : kind.words[i];
        for (auto& it : wrapped_lines(words, words_size, width)) lines.push_back(std::move(it));
    }
    return lines;
}

}  // namespace

void add_corner_pages(BookPages& book,
                      const Project& project,
                      const Catalogue& catalogue,
                      const Resolved& resolved) {
    const auto kinds = corner_kinds(project, catalogue, resolved);
    if (kinds.empty()) return;
    PageFlow flow = book.flow();
    draw_page_head(
        flow, "Typical corners",
        "Each is cut through the middle of that of its fasteners which is nearest to an "
        "edge that is seen here; the least distance counts the ends too. Joints that are "
        "made alike are drawn once.");
    draw_words(flow, strength_note, words_size);
    flow.skip(3.0);
    flow.use_columns(2);
    int number = 0;
    for (const auto& kind : kinds) {
        const auto titles = wrapped_lines(std::to_string(++number) + ":  " + kind.title, 3.8,
                                          flow.width(), LetterWeight::bold);
        const auto height = lines_of(kind, "1 : 20", flow.width()).size();
        flow.make_room(picture_height + static_cast<double>(titles.size()) * 4.9 +
                       static_cast<double>(height) * line + 4.0);
        for (const auto& title : titles)
            flow.text(title, {.size = 3.8, .weight = LetterWeight::bold}, 4.9);
        const engine::PageBox box{flow.left() + 6.0, flow.y() + 8.0, flow.width() - 12.0,
                                  picture_height - 16.0};
        const auto scale = draw_corner_section(flow.page(), box, project, catalogue, resolved,
                                               kind.joints.front());
        flow.skip(picture_height);
        for (const auto& it : lines_of(kind, scale, flow.width()))
            flow.text(it, {.size = words_size}, line);
        flow.skip(4.0);
    }
    book.begin_chapter("Typical corners");
    book.add(flow.pages());
}

}  // namespace model
